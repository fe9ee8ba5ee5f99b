"""The lists of what must be at hand: a box to tick at the end of each row."""

from __future__ import annotations

from collections.abc import Iterable
from itertools import zip_longest

from authoring.booklet.blocks import Cell, Table
from authoring.booklet.words import Text


def pairs(anchor: str, title: str, head: str, names: Iterable[Text], empty: str, *, box: str) -> Table:
    """Return a list of single names, each with its box, two of them in a row."""
    cells = [(Cell(name), Cell(tick=True)) for name in names]
    blank = (Cell(), Cell())
    rows = tuple((*left, *right) for left, right in zip_longest(cells[::2], cells[1::2], fillvalue=blank))
    return Table(anchor, title, (head, box, head, box), rows, (40, 10, 40, 10), empty)


def ready(  # noqa: PLR0913  # these are the parts of a table, and none of them goes with another
    anchor: str,
    title: str,
    heads: tuple[str, ...],
    widths: tuple[int, ...],
    rows: Iterable[tuple[Text, ...]],
    empty: str = "None.",
    *,
    box: str = "Ready",
) -> Table:
    """Return a list whose last column holds the boxes, under the head `box`; `widths` leave it 10 of 100."""
    ticked = tuple((*(Cell(text) for text in row), Cell(tick=True)) for row in rows)
    return Table(anchor, title, (*heads, box), ticked, (*widths, 10), empty)
