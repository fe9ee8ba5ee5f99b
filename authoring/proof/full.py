"""Where a stated amount of a fluid is poured in though the machine is full of it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TypeAlias

from msgspec import Struct

from authoring.model.fluid import Fluid, apart
from authoring.model.procedure import Action, Step
from authoring.model.space import Cells, Space
from authoring.model.specification import When
from authoring.model.things import Equipment
from authoring.proof.housing import LEVEL, level_of, mates
from authoring.proof.job import Job
from authoring.proof.settings import Setting
from authoring.proof.story import Held, Story
from authoring.proof.track import Point

Filling: TypeAlias = tuple[Action, tuple[Step, ...]]
"""An action that pours, and the steps that lead to its procedure, as they tell a point of the track."""


class Full(Struct, frozen=True, eq=False):
    """A pouring that finds the fluid full, since when, the state that shows it, and on which machines and ways."""

    point: Point
    since: Setting
    held: Held
    cells: Cells


def pourings(fluid: Fluid, job: Job) -> list[Point]:
    """Return where a stated amount of a fluid is poured in."""
    named = job.track.naming.get(fluid.id, ())
    return [one for one in named if one.action is not None and one.does == "fill" and fluid.id in one.action.what]


def story_of_level(fluid: Fluid, equipment: Equipment, job: Job, more: Sequence[When] = ()) -> Story | None:
    """Return how the level of a fluid stands wherever an amount is poured in; None where nothing can be said."""
    whens = [fluid.when, *_beside(fluid, equipment), *more]
    return job.story([(fluid.id, LEVEL)], pourings(fluid, job), whens, level_of(fluid, equipment))


def poured_when_full(fluid: Fluid, equipment: Equipment, job: Job, story: Story) -> Iterator[Full]:
    """Yield each state in which an amount is poured into what nothing drained, or whose level was set since.

    What may come to another fluid, or is another kind, finds nothing full where only that one may be in.
    """
    there = story.space.where(fluid.when)
    for point in pourings(fluid, job):
        for held in story.before(point):
            since = held.settings[fluid.id, LEVEL]
            if since.state != "drained":
                other = 0 if isinstance(since.by, Point) else story.space.either(_beside(fluid, equipment))
                yield Full(point, since, held, held.cells & there & ~other)


def not_full(fluid: Fluid, job: Job | None, filling: Filling | None, asked: tuple[Cells, Space]) -> tuple[Cells, Space]:
    """Return those of the machines and ways asked about on which a filling does not find the fluid full, and over what.

    What is asked is the answer where it is about no filling, and where nothing can be said.
    """
    equipment = job.scope.equipment if job is not None else None
    if job is None or equipment is None or filling is None:
        return asked
    cells, space = asked
    whens = list(space.groups(cells))
    story = story_of_level(fluid, equipment, job, whens)
    if story is None:
        return asked
    left = story.space.either(whens)
    for one in poured_when_full(fluid, equipment, job, story):
        if (one.point.action, one.point.within) == filling:
            left &= ~one.cells
    return left, story.space


def _beside(fluid: Fluid, equipment: Equipment) -> list[When]:
    """Return which machines may have something else in the item: another kind, or what this fluid may come to."""
    return [one.when for one in mates(fluid, equipment) if apart(fluid, one) or one.id in fluid.mixes_with]
