"""The course of a job: its actions and outcomes, each with the place of its step, looked at in the order written."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from msgspec import Struct

from authoring.model.fitments import together
from authoring.model.library import Library
from authoring.model.procedure import Action, Outcome, Procedure, Section, Step
from authoring.model.space import possible
from authoring.model.specification import When
from authoring.source.document import Where

MOST_ACTS = 10_000
DEEPEST = 100
"""How many actions a job may come to with all that it carries out, and how deep, for it to be followed into that."""


class Act(Struct, frozen=True, eq=False):
    """One action: the job's own step, the number of that step from 0, and for which fitments it is done.

    `doing` is the step that holds the action, which is `step` where it is the job's own.
    `within` are the steps that carry out the procedure that holds it, outermost first; there is none for the job's own.
    `sections` are the sections of those steps and of `doing`.
    `when` is what all the steps and sections on the way say together.
    """

    place: int
    section: Section
    step: Step
    action: Action
    when: When
    doing: Step
    within: tuple[Step, ...]
    sections: tuple[Section, ...]

    @property
    def own(self) -> bool:
        """Whether the job does it itself, and no procedure that it carries out."""
        return not self.within

    @property
    def steps(self) -> tuple[Step, ...]:
        """The steps that must be done for this action to be done, outermost first."""
        return (*self.within, self.doing)

    @property
    def optional(self) -> bool:
        """Whether it may be left out, alone or with a step or section on the way to it."""
        steps = any(one.optional is not None for one in self.steps)
        return steps or any(one.optional is not None for one in self.sections)

    @property
    def repeated(self) -> bool:
        """Whether it is done more than once, alone or with a step or section on the way to it."""
        return any(one.repeat is not None for one in self.steps) or any(one.repeat is not None for one in self.sections)


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


def acts(procedure: Procedure, library: Library) -> tuple[Act, ...]:
    """Return every action of a job in order; those of a procedure it carries out follow the action that does so.

    What such a procedure carries out in its turn follows in the same way, but no procedure follows inside itself.
    Of a job that is too long to follow only its own actions are returned; ask `too_long` to tell.
    """
    followed = _followed(procedure, library)
    return tuple(_of_steps(procedure, None)) if followed is None else followed


def too_long(procedure: Procedure, library: Library) -> bool:
    """Tell whether a job comes to so much with what it carries out that it is not followed into that."""
    return _followed(procedure, library) is None


@lru_cache(maxsize=64)
def _followed(procedure: Procedure, library: Library) -> tuple[Act, ...] | None:
    course: list[Act] = []
    for act in _acts((procedure,), None, library):
        course.append(act)
        if len(course) > MOST_ACTS or len(act.within) > DEEPEST:
            return None
    return tuple(course)


def _acts(chain: tuple[Procedure, ...], by: Act | None, library: Library) -> Iterator[Act]:
    """Yield the actions of the last procedure of a chain, of which each carries out the next."""
    for act in _of_steps(chain[-1], by):
        yield act
        for called in called_by(act.action, chain[-1], library):
            if called not in chain:
                yield from _acts((*chain, called), act, library)


def _of_steps(procedure: Procedure, by: Act | None) -> Iterator[Act]:
    """Yield the actions that stand in a procedure, which an action carries out; None for the job itself."""
    for place, (section, step) in enumerate(procedure.steps()):
        if by is None:
            when = together(procedure.covers, section.when, step.when)
            yield from (Act(place, section, step, one, when, step, (), (section,)) for one in step.actions)
        else:
            when = together(by.when, section.when, step.when)
            sections = (*by.sections, section)
            for one in step.actions:
                yield Act(by.place, by.section, by.step, one, when, step, by.steps, sections)


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
