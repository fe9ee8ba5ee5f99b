"""Where a fluid is let out or put in while every plug through which it could go is shut."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import TypeAlias

from msgspec import Struct

from authoring.model.ends import Side
from authoring.model.fluid import Fluid
from authoring.model.library import Scope
from authoring.model.on_and_off import wholes
from authoring.model.space import Cells
from authoring.model.things import FastenerGroup, Item
from authoring.proof.brought import brought
from authoring.proof.covers import OFF
from authoring.proof.job import Job
from authoring.proof.plugs import sides_of_plug
from authoring.proof.settings import Setting
from authoring.proof.story import Held, Story
from authoring.proof.track import Point

Plug: TypeAlias = Item | FastenerGroup

_SHUT = frozenset({"tight", "fitted", "closed"})
_ASKED_OPEN = frozenset({"removed", "open"})


class Shut(Struct, frozen=True, eq=False):
    """Where all plugs of a fluid are shut: which, how each stands, a state that shows it, and on which machines."""

    point: Point
    plugs: tuple[str, ...]
    settings: tuple[Setting, ...]
    held: Held
    cells: Cells


def story_of_plugs(fluid: Fluid, plugs: Sequence[Plug], points: Sequence[Point], job: Job) -> Story | None:
    """Return how the plugs of a fluid stand at some points; None where nothing can be said."""
    sides = [side for plug in plugs for side in _sides(plug, fluid, job.scope)]
    whens = [when for plug in plugs for when in (plug.when, *brought(plug, job))]
    return job.story(sides, points, [fluid.when, *whens])


def all_shut(fluid: Fluid, plugs: Sequence[Plug], points: Sequence[Point], told: tuple[Job, Story]) -> Iterator[Shut]:
    """Yield each state in which all plugs of a fluid that a machine has are shut at one of these points.

    A lever or tap that has positions may be open though nothing says so, and so is what the step asks to be off or
    open. Where what a plug sits on is off, or what the fluid is in, it may be poured.
    """
    job, story = told
    for point in points:
        asked = _asked_open(point)
        for held in story.before(point):
            cells, some, shut = held.cells & story.space.where(fluid.when), 0, []
            for plug in plugs:
                there = story.space.where(plug.when)
                closed = plug.id not in asked and _is_shut(plug, fluid, job.scope, held.settings)
                if closed and held.settings[plug.id, "where"].by is None:
                    # What a modification adds is not there before it was put on.
                    cells &= ~story.space.either(brought(plug, job))
                if closed:
                    shut.append((plug.id, there))
                    some |= there
                else:
                    cells &= ~there
            bad = cells & some
            names = tuple(name for name, there in shut if there & bad)
            yield Shut(point, names, tuple(held.settings[one, "where"] for one in names), held, bad)


def _asked_open(point: Point) -> set[str]:
    """Return what the step, its section, or a procedure that it is carried out in asks to be off or open."""
    needs = [need for one in point.chain[1:] for need in one.needs]
    needs += point.section.needs if point.section is not None else ()
    needs += point.step.needs if point.step is not None else ()
    return {need.thing for need in needs if need.state in _ASKED_OPEN}


def _around(plug: Plug, fluid: Fluid, scope: Scope) -> Iterator[str]:
    """Yield what must be on the machine so that only the plug lets the fluid through."""
    holds = (plug.on if isinstance(plug, FastenerGroup) else None, fluid.held_in)
    for one in holds:
        if one is not None and one in scope.things:
            yield from wholes(one, scope.things)
    yield from wholes(plug.id, scope.things)[1:]


def _sides(plug: Plug, fluid: Fluid, scope: Scope) -> Iterator[Side]:
    yield from sides_of_plug(plug.id, scope)
    yield from ((one, "where") for one in _around(plug, fluid, scope))


def _is_shut(plug: Plug, fluid: Fluid, scope: Scope, now: Mapping[Side, Setting]) -> bool:
    """Tell whether nothing can get past a plug; of where it is and its lid the last change counts."""
    if isinstance(plug, Item) and plug.positions:
        return False
    if any(now[one, "where"].state in OFF for one in _around(plug, fluid, scope)):
        return False
    last = max((now[plug.id, "where"], now[plug.id, "lid"]), key=lambda one: (one.number, one.state == "open"))
    return last.state in _SHUT
