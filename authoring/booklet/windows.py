"""Values with several windows: what speaks for each, and why one is closed to other vehicles."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.drawings.level_windows import level_windows
from authoring.booklet.levels import why_closed
from authoring.booklet.plan import Volume
from authoring.booklet.step_parts import Aside, Drawing
from authoring.booklet.wording import Wording
from authoring.booklet.words import Bullets, Inline, Text, Words
from authoring.model.action_kind import Kind
from authoring.model.fluid import Fluid
from authoring.model.levels import closed_by, readings
from authoring.model.procedure import Step
from authoring.model.things import Value, Window


def windows(step: Step, volume: Volume, wording: Wording, shown: set[str]) -> Iterator[Aside | Drawing]:
    """Yield the reasons of the windows that a step relies on, and their drawing, where the value is first named."""
    for name in dict.fromkeys(_named(step)):
        thing = volume.scope.things.get(name)
        value = thing.thing if thing is not None and thing.kind is Kind.VALUE else None
        if isinstance(value, Value) and len(value.windows) > 1 and name not in shown:
            shown.add(name)
            levels = _levels(value, volume)
            told = [text for one in value.windows if (text := _reason(one, levels, volume, wording))]
            if told:
                yield Aside("Window", (Bullets(tuple(told)),))
            yield from level_windows(value, volume, wording)


def names_value(step: Step, name: str) -> bool:
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


def _levels(value: Value, volume: Volume) -> tuple[Fluid, ...]:
    """Return the fluids of which the level goes by a value."""
    found = readings(volume.procedure, volume.scope.library)
    return tuple(dict.fromkeys(one.fluid for one in found if one.value is value))


def _reason(window: Window, levels: tuple[Fluid, ...], volume: Volume, wording: Wording) -> Text:
    """Return what speaks for a window, and why it is closed to others; the amount is named as the step gave it."""
    quantity = window.specification.value
    if quantity is None:
        return ()
    amount = Words(wording.amount(quantity).first)
    closed = _otherwise(window, levels, volume, wording)
    if not wording.holds(window.when):
        return (Words("Not "), amount, Words(": "), *closed) if closed else ()
    told: list[Inline] = [Words(f": {window.why}")] if window.why else []
    if closed and wording.applies(window.when):
        told += [Words(f"{'' if window.why else '.'} Not for the others: "), *closed]
    return (amount, *told) if told else ()


def _otherwise(window: Window, levels: tuple[Fluid, ...], volume: Volume, wording: Wording) -> Text:
    """Return why a window is closed to others: in the author's words, or because a circuit is shut in it."""
    if window.otherwise is not None:
        return (Words(window.otherwise),)
    vehicle = volume.scope.vehicle
    for fluid in levels if vehicle is not None else ():
        circuit = closed_by(window, fluid, vehicle) if vehicle is not None else None
        if circuit is not None:
            return why_closed(circuit, wording)
    return ()
