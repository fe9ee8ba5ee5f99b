"""Which actions put a thing on the machine for good and which take it off, and what a name there stands for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.model.library import Named
from authoring.model.procedure import Choice
from authoring.model.specification import ALWAYS, When
from authoring.model.things import Item

TAKES_OFF = frozenset({"remove", "disconnect"})
"""The actions after which a thing is off the machine."""

PUTS_ON = frozenset({"fit", "seat", "hold", "connect", "start", "tighten"})
"""The actions that bring a thing to its place for good; a trial fit is none."""


def meant(name: str, named: Named | None) -> Iterator[tuple[str, When]]:
    """Yield (name, for which fitments) for what a name stands for: itself and, for a choice, each of its parts."""
    yield name, ALWAYS
    if named is not None and isinstance(named.thing, Choice):
        for part in named.thing.parts:
            for one in (part.part, *part.equal):
                yield one, part.when


def wholes(name: str, things: Mapping[str, Named]) -> list[str]:
    """Return a thing and the larger ones that it is part of, nearest first; it goes where they go."""
    names = [name]
    while (named := things.get(names[-1])) is not None and isinstance(named.thing, Item):
        whole = named.thing.part_of
        if whole is None or whole not in things or whole in names:
            break
        names.append(whole)
    return names
