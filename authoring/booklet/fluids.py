"""What is known of a fluid where it is poured: its kind, where it goes, how much that holds, what it must not meet."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.phrases import all_the, aside
from authoring.booklet.plan import Volume
from authoring.booklet.step_parts import Aside
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Words
from authoring.model.fluid import Fluid, apart
from authoring.model.procedure import Step
from authoring.model.things import FastenerGroup, Item


def fluids(step: Step, volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield a line for each fluid that a step pours, and one for those of another kind that it must not meet.

    Where a fluid is let out or looked at, the line says at which plugs, as far as the machine's file tells.
    """
    things = volume.scope.things
    for action in step.actions:
        for name in action.what:
            fluid = things[name].thing
            if not isinstance(fluid, Fluid):
                continue
            if action.kind.pours:
                held = things.get(fluid.held_in or "")
                words: list[Inline] = [Words(f"{fluid.kind}; in the {held.words}" if held is not None else fluid.kind)]
                if fluid.capacity is not None and fluid.capacity.value is not None:
                    words += [Words("; the dry system holds "), wording.amount(fluid.capacity.value)]
                words += _at("in at", _plugs(fluid, volume, fills=True), wording)
                words += _at("out at", _plugs(fluid, volume, fills=False), wording)
                yield aside("Fluid", *words, close=True)
                others = [one.id for one in _kept_apart(fluid, volume)]
                if others:
                    yield aside("Never on", *all_the(others, wording), ": another kind", close=True)
            else:
                out, seen = action.kind.lets_out, action.kind.checkpoint and "at" not in action.roles
                where = _plugs(fluid, volume, fills=seen) if out or seen else []
                if where:
                    yield aside("Out at" if out else "Seen at", *all_the(where, wording), close=True)


def _at(words: str, plugs: list[str], wording: Wording) -> list[Inline]:
    return [Words(f"; {words} "), *all_the(plugs, wording)] if plugs else []


def _plugs(fluid: Fluid, volume: Volume, *, fills: bool) -> list[str]:
    """Return the things through which a fluid goes in or out, as the machine's file says, by name."""
    equipment = volume.scope.equipment
    if equipment is None:
        return []
    every: list[FastenerGroup | Item] = [*equipment.fasteners.values(), *equipment.items.values()]
    return [one.id for one in every if fluid.id in (one.fills if fills else one.drains)]


def _kept_apart(fluid: Fluid, volume: Volume) -> Iterator[Fluid]:
    equipment = volume.scope.equipment
    for other in equipment.fluids.values() if equipment is not None else ():
        if other.held_in is not None and other.held_in == fluid.held_in and apart(fluid, other):
            yield other
