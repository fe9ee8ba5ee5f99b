"""What is stated of a thing and may hurt: how heavy, what pressure or voltage, how high; told where it counts."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.phrases import aside
from authoring.booklet.plan import Volume
from authoring.booklet.step_parts import Aside
from authoring.booklet.wording import Wording
from authoring.model.procedure import Action, Step
from authoring.model.things import Item

_LABELS = {
    "mass": ("Mass", ""),
    "pressure": ("Pressure", ""),
    "voltage": ("Voltage", ", direct"),
    "voltage-ac": ("Voltage", ", alternating"),
    "height": ("Height", " above the floor"),
}
_BEARS = frozenset({"raise", "lower", "support", "release", "hold", "trial-fit"})
_PROVES = frozenset({"prove-dead", "measure"})


def facts(step: Step, volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield what is stated of each thing that a step takes in hand, opens, touches or comes near to."""
    told: set[tuple[str, str]] = set()
    for name, action in _met(step):
        item = volume.scope.things[name].thing
        for key, fact in item.facts.items() if isinstance(item, Item) else ():
            if fact.value is not None and (name, key) not in told and _counts(key, action):
                told.add((name, key))
                label, after = _LABELS[key]
                yield aside(label, f"{volume.scope.things[name].words}: ", wording.amount(fact.value), after)


def _met(step: Step) -> Iterator[tuple[str, Action | None]]:
    yield from ((name, None) for name in step.near)
    for action in step.actions:
        yield from ((name, action) for _, name in action.names())


def _counts(key: str, action: Action | None) -> bool:
    if key == "mass":
        return action is not None and (action.kind.handles or action.kind.name in _BEARS)
    if key == "pressure":
        return action is not None and (action.kind.parts_off or action.kind.name in _PROVES)
    return True
