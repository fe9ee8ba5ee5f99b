"""The course of a job: its actions and outcomes, each with the place of its step, looked at in the order written."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from msgspec import Struct

from authoring.model.fitments import possible, together
from authoring.model.library import Library
from authoring.model.procedure import Action, Outcome, Procedure, Section, Step
from authoring.model.specification import When
from authoring.source.document import Where


class Act(Struct, frozen=True, eq=False):
    """One action: its step and the number of that step from 0, and for which fitments it is done.

    An action of a procedure that a step carries out stands in the place of that step; `own` is False for it.
    `doing` is the step that holds the action, which is `step` where it is the job's own.
    """

    place: int
    section: Section
    step: Step
    action: Action
    when: When
    doing: Step
    own: bool = True


class Seen(Struct, frozen=True, eq=False):
    """One outcome: for which fitments it may be found, and the numbers of the first and last step where it may be.

    `action` is the checkpoint that shows it, and `step` that of something noticed; both are None for a section.
    """

    outcome: Outcome
    first: int
    last: int
    when: When
    step: Step | None = None
    action: Action | None = None


class Target(Struct, frozen=True, eq=False):
    """Where an id leads: numbers of its first and last step, for which fitments, and the step; None for a section."""

    first: int
    last: int
    when: When
    step: Step | None
    where: Where


@lru_cache(maxsize=64)
def acts(procedure: Procedure, library: Library) -> tuple[Act, ...]:
    """Return every action of a job in order; those of a procedure it carries out follow the action that does so.

    A procedure that such a procedure carries out in its turn is not followed.
    """
    return tuple(_acts(procedure, library))


def _acts(procedure: Procedure, library: Library) -> Iterator[Act]:
    for place, (section, step) in enumerate(procedure.steps()):
        when = together(procedure.covers, section.when, step.when)
        for action in step.actions:
            yield Act(place, section, step, action, when, step)
            for called in called_by(action, procedure, library):
                for inside, other in called.steps():
                    around = together(when, inside.when, other.when)
                    yield from (Act(place, section, step, one, around, other, own=False) for one in other.actions)


def called_by(action: Action, procedure: Procedure, library: Library) -> Iterator[Procedure]:
    """Yield the procedures that an action of a procedure carries out; one of other equipment is not followed."""
    for name in action.what if action.kind.name == "carry-out" else ():
        called = library.procedures.get(name)
        if called is not None and called.equipment == procedure.equipment:
            yield called


def seen(procedure: Procedure) -> Iterator[Seen]:
    """Yield every outcome of a procedure: of its checkpoints, and of what may be noticed in steps and sections."""
    place = 0
    for section in procedure.sections:
        begin = place
        for step in section.steps:
            when = together(procedure.covers, section.when, step.when)
            for action in step.actions:
                yield from (Seen(one, place, place, together(when, one.when), step, action) for one in action.outcomes)
            yield from (Seen(one, place, place, together(when, one.when), step) for one in step.noticed)
            place += 1
        around = together(procedure.covers, section.when)
        yield from (Seen(one, begin, place - 1, together(around, one.when)) for one in section.noticed)


def targets(procedure: Procedure) -> dict[str, Target]:
    """Return where the id of each step and section leads."""
    found: dict[str, Target] = {}
    place = 0
    for section in procedure.sections:
        around = together(procedure.covers, section.when)
        last = place + len(section.steps) - 1
        found.setdefault(section.id, Target(place, last, around, None, section.where))
        for step in section.steps:
            found.setdefault(step.id, Target(place, place, together(around, step.when), step, step.where))
            place += 1
    return found


def siblings(one: Step, other: Step) -> bool:
    """Tell whether two steps are methods of the same step, of which only one is done."""
    both = one.method is not None and other.method is not None
    return both and one is not other and one.where.path[:-1] == other.where.path[:-1]


def meet(procedure: Procedure, library: Library, *whens: When) -> bool:
    """Tell whether one machine of the job can meet all these conditions."""
    vehicle = library.scope(procedure).vehicle
    return vehicle is None or possible(vehicle, together(*whens))
