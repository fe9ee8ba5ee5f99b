"""What a step or section asks beside its actions: states, hands, repetition and time."""

from __future__ import annotations

from msgspec import Struct

from authoring.source.document import Where


class Need(Struct, frozen=True, eq=False):
    """A thing and the state it must be in, or is left in.

    `state` is one of the language's states, a position of the item, or the name of a value.
    `where` is the group it stands in; its key there is the thing.
    """

    thing: str
    state: str
    where: Where


class Holding(Struct, frozen=True, eq=False):
    """What is kept as it is while the step is done; `by` is other-hand or helper."""

    hold: tuple[str, ...]
    how: str | None
    by: str
    where: Where


class Repeat(Struct, frozen=True, eq=False):
    """How often a step or section is done: until something is so, or a number of times; the bound; what then."""

    until: str | None
    times: int | None
    at_most: int | None
    otherwise: str | None
    where: Where


class Deadline(Struct, frozen=True, eq=False):
    """The step from which time runs, the name of the time there is, and what to do when it is too late."""

    start: str
    within: str
    otherwise: str
    where: Where


class Method(Struct, frozen=True):
    """One of several methods that come to the same: its letter, how many there are, and why there are several."""

    letter: str
    count: int
    why: str | None

    @property
    def is_first(self) -> bool:
        """Whether it is the first of them, as the author wrote them; each has its own letter from a on."""
        return self.letter == "a"
