"""Values with several windows: what speaks for each, and why one is closed to other vehicles."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.drawings.level_windows import level_windows
from authoring.booklet.levels import why_closed
from authoring.booklet.plan import Volume
from authoring.booklet.step_parts import Aside
from authoring.booklet.wording import Wording
from authoring.booklet.words import Bullets, Inline, Text, Words
from authoring.model.action_kind import Kind
from authoring.model.procedure import Step
from authoring.model.things import Value, Window


def windows(step: Step, volume: Volume, wording: Wording, shown: set[str]) -> Iterator[Aside | Drawing]:
    """Yield the reasons of the windows that a step relies on, and their drawing, where the value is first named."""
    for name in dict.fromkeys(_named(step)):
        thing = volume.scope.things.get(name)
        value = thing.thing if thing is not None and thing.kind is Kind.VALUE else None
        if isinstance(value, Value) and len(value.windows) > 1 and name not in shown:
            shown.add(name)
            told = [text for one in value.windows if (text := _reason(one, wording))]
            if told:
                yield Aside("Window", (Bullets(tuple(told)),))


def names_value(step: Step, name: str) -> bool:
            yield from level_windows(value, name, volume, wording)
    """Tell whether the sentence of a step, or what must be so before it, gives a value."""
    return f"[{name}]" in step.text or any(need.state == name for need in step.needs)


def _named(step: Step) -> Iterator[str]:
    """Yield every name at which a value may stand in a step."""
    for need in step.needs:
        yield need.state
    for action in step.actions:
        for _, name in action.names():
            yield name
        if action.manner.force is not None:
            yield action.manner.force
    if step.deadline is not None:
        yield step.deadline.within


def _reason(window: Window, wording: Wording) -> Text:
    """Return what speaks for a window, and why it is closed to others; the amount is named as the step gave it."""
    quantity = window.specification.value
    if quantity is None:
        return ()
    amount = Words(wording.amount(quantity).first)
    if not wording.holds(window.when):
        return (Words("Not "), amount, Words(f": {window.otherwise}")) if window.otherwise else ()
    told: list[Inline] = [Words(f": {window.why}")] if window.why else []
    if window.otherwise and wording.applies(window.when):
        told.append(Words(f"{'' if window.why else '.'} Not for the others: {window.otherwise}"))
    return (amount, *told) if told else ()
