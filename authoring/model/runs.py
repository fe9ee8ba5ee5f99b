"""What is done on all machines at once, told apart only where it differs.

Each thing that may be done is marked with the cells, the machines and ways, on which it is done.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import TypeVar

from authoring.model.fitments import Fitment
from authoring.model.space import Cells, Space
from authoring.model.specification import When

T = TypeVar("T")

MOST_RUNS = 4096
"""How many different runs are gone through one by one; of a space of more than 65,536 cells fewer."""

_MOST_CELLS = 2**28


def runs(marked: Iterable[tuple[T, Cells]], every: Cells) -> list[tuple[tuple[T, ...], Cells]]:
    """Split cells by what is done on them: each different choice of the marked things in order, and its cells.

    The one that has the first cell comes first.
    It is empty where more than MOST_RUNS differ: nothing can be said then.
    """
    most = min(MOST_RUNS, _MOST_CELLS // max(every.bit_length(), 1))
    things = list(marked)
    parts = [every] if every else []
    for mask in dict.fromkeys(cells & every for _, cells in things):
        parts = [part for cells in parts for part in (cells & mask, cells & ~mask) if part]
        if len(parts) > most:
            return []
    parts.sort(key=lambda part: part & -part)
    return [(tuple(thing for thing, cells in things if cells & part), part) for part in parts]


def one_of_each(whens: Iterable[When], cells: Cells, space: Space) -> list[tuple[Fitment, Cells]]:
    """Split cells by which of these conditions hold: one fitment of each kind, and all the cells of that kind.

    It is empty where nothing can be said, as `runs` is.
    """
    return [(space.one_of(alike), alike) for _, alike in runs(((when, space.where(when)) for when in whens), cells)]


def last_done(marked: Sequence[tuple[T, Cells]], every: Cells) -> Iterator[tuple[T | None, Cells]]:
    """Yield each marked thing that is the last done on some cells, latest first, with these; then None for the rest."""
    rest = every
    for thing, cells in reversed(marked):
        if cells & rest:
            yield thing, cells & rest
            rest &= ~cells
    if rest:
        yield None, rest
