"""Everything a job does, in the order in which it is written, and for which fitments."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from authoring.model.fitments import together
from authoring.model.library import Library, Named
from authoring.model.procedure import Action, Choice, Procedure
from authoring.model.things import When

TAKES_OFF = frozenset({"remove", "disconnect"})
"""The actions after which a thing is off the machine."""

PUTS_ON = frozenset({"fit", "seat", "hold", "connect", "start", "tighten"})
"""The actions that bring a thing to its place for good; a trial fit is none."""

_ALL: When = {}


class Deed(Struct, frozen=True, eq=False):
    """One action, for which fitments it is done, and the procedure whose file it stands in."""

    action: Action
    when: When
    procedure: Procedure


def deeds(procedure: Procedure, library: Library) -> Iterator[Deed]:
    """Yield every action of a job; those of a procedure it carries out stand where it is carried out.

    A procedure that such a procedure carries out in its turn is not followed.
    """
    for deed in _own(procedure, _ALL):
        yield deed
        if deed.action.kind.name == "carry-out":
            for name in deed.action.what:
                called = library.procedures.get(name)
                if called is not None and called.equipment == procedure.equipment:
                    yield from _own(called, deed.when)


def _own(procedure: Procedure, around: When) -> Iterator[Deed]:
    for section, step in procedure.steps():
        when = together(around, section.when, step.when)
        for action in step.actions:
            yield Deed(action, when, procedure)


def meant(name: str, named: Named | None) -> Iterator[tuple[str, When]]:
    """Yield (name, for which fitments) for what a name stands for: itself and, for a choice, each of its parts."""
    yield name, _ALL
    if named is not None and isinstance(named.thing, Choice):
        for part in named.thing.parts:
            for one in (part.part, *part.equal):
                yield one, part.when
