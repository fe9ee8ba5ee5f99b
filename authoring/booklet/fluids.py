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


def fluids(step: Step, volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield a line for each fluid that a step pours, and one for those of another kind that it must not meet."""
    things = volume.scope.things
    for action in step.actions:
        for name in action.what if action.kind.pours else ():
            fluid = things[name].thing
            if isinstance(fluid, Fluid):
                held = things.get(fluid.held_in or "")
                words: list[Inline] = [Words(f"{fluid.kind}; in the {held.words}" if held is not None else fluid.kind)]
                if fluid.capacity is not None and fluid.capacity.value is not None:
                    words += [Words("; the dry system holds "), wording.amount(fluid.capacity.value)]
                yield aside("Fluid", *words, close=True)
                others = [one.id for one in _kept_apart(fluid, volume)]
                if others:
                    yield aside("Never on", *all_the(others, wording), ": another kind", close=True)


def _kept_apart(fluid: Fluid, volume: Volume) -> Iterator[Fluid]:
    equipment = volume.scope.equipment
    for other in equipment.fluids.values() if equipment is not None else ():
        if other.held_in is not None and other.held_in == fluid.held_in and apart(fluid, other):
            yield other
