"""When another text comes to the same job: our own criteria, which no rule and no booklet knows.

They are narrow on purpose: what they do not decide counts as a fault.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from typing import TypeAlias

from authoring.model.in_force import in_force
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Section, Step
from tests.seeded.edits import Path

Criterion: TypeAlias = Callable[[Library, Library], str]
"""From the library as it stands and that of a variant to why the two come to the same, or to an empty text."""

_ONLY_LOOKS = frozenset({"inspect", "compare", "count", "mark", "tell", "ask"})

_SAME_AGAIN = _ONLY_LOOKS | {"clean", "isolate", "measure", "prove-dead", "set", "stop", "support", "wait"}
"""Whoever has done one of these finds nothing left to do the second time."""


def commute(file: str, one: Path, other: Path) -> Criterion:
    """Return the criterion for two steps that change places.

    Either the author says that the order of their section is free, or both only look at, mark or tell of things,
    none of them a thing of the other, on no condition, and no outcome leads to another step or procedure.
    """

    def criterion(known: Library, _: Library) -> str:
        found = [(section, step) for section, step in _steps(file, known) if step.where.path in {one, other}]
        if len(found) != 2:
            return ""
        (section, first), (_section, second) = found
        if section.free:
            return "the author states a free order"
        alone = not _names(first) & _names(second) and _plain(first) and _plain(second)
        return "both steps only look, each at other things" if alone else ""

    return criterion


def again(file: str, path: Path) -> Criterion:
    """Return the criterion for a step that stands there twice: each of its actions finds itself done already."""

    def criterion(known: Library, _: Library) -> str:
        steps = [step for _, step in _steps(file, known) if step.where.path == path]
        same = all(action.kind.name in _SAME_AGAIN for step in steps for action in step.actions)
        return "the second time finds nothing left to do" if steps and same else ""

    return criterion


def same_messages(file: str) -> Criterion:
    """Return the criterion for a message that is not called: it is in force at each step all the same."""

    def criterion(known: Library, library: Library) -> str:
        return "the same messages are in force" if _in_force(file, known) == _in_force(file, library) else ""

    return criterion


def _in_force(file: str, library: Library) -> list[frozenset[str]]:
    return [
        frozenset(f"{one.id} {one.when}" for one in in_force(procedure, section, step, library))
        for procedure in _procedures(file, library)
        for section, step in procedure.steps()
    ]


def _procedures(file: str, library: Library) -> Iterator[Procedure]:
    return (one for one in library.procedures.values() if one.where.document.file == file)


def _steps(file: str, library: Library) -> Iterator[tuple[Section, Step]]:
    for procedure in _procedures(file, library):
        yield from procedure.steps()


def _plain(step: Step) -> bool:
    bound = step.needs or step.leaves or step.if_done or step.unless_done or step.deadline or step.repeat
    looks = all(action.kind.name in _ONLY_LOOKS for action in step.actions)
    leads = {outcome.then for action in step.actions for outcome in action.outcomes}
    return looks and not bound and not leads & {"go-to", "do"} and step.id.startswith("step.")


def _names(step: Step) -> set[str]:
    return {name for action in step.actions for _, name in action.names()} | set(step.near) | set(step.leave)
