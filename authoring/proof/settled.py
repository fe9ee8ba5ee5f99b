"""What becomes of a thing that is off, open or loose, where nothing brings it back: said on purpose, or forgotten."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.model.ends import Side
from authoring.model.library import Scope
from authoring.model.on_and_off import wholes
from authoring.model.specification import When
from authoring.proof.job import Job
from authoring.proof.settings import Setting
from authoring.proof.track import Point

SETTLED = frozenset({"discarded", "empty", "replaced"})
"""How a thing is where it need not come back, nor what is part of it."""


def settling_sides(thing: str, scope: Scope) -> Iterator[Side]:
    """Yield the sides that tell whether it is settled what becomes of a thing: where it is, and all it is part of."""
    yield from ((one, "where") for one in wholes(thing, scope.things))


def is_settled(thing: str, scope: Scope, now: Mapping[Side, Setting]) -> bool:
    """Tell whether a thing, or something that it is part of, was thrown away, replaced or left empty on purpose."""
    return any(now[one, "where"].state in SETTLED for one in wholes(thing, scope.things))


def left_out(thing: str, job: Job) -> list[When]:
    """Return for which machines a modification leaves a thing out, or replaces it or something that it is part of."""
    names = set(wholes(thing, job.scope.things))
    changes = [change for one in job.ways.procedures for change in one.modifications.values()]
    return [change.when for change in changes if not names.isdisjoint({*change.leaves_out, *change.replaces})]


def left_so(thing: str, states: frozenset[str], job: Job) -> bool:
    """Tell whether the job says that it leaves a thing in one of these states, or that it finds it so."""
    stated = (*job.procedure.leaves, *job.procedure.needs)
    return any(need.thing == thing and need.state in states for need in stated)


def passed_on(thing: str, states: frozenset[str], by: Point) -> bool:
    """Tell whether a point leaves a thing so to the job: it is the job's own, or each procedure on the way says so.

    Where one of them does not say under `leaves` that the thing stays so, that procedure alone shows what is wrong.
    """
    return all(any(need.thing == thing and need.state in states for need in one.leaves) for one in by.chain[1:])
