"""One line of a file with a mark under the words at fault, measured in the columns of a terminal."""

from __future__ import annotations

import re
import unicodedata
from typing import TYPE_CHECKING

from msgspec import Struct

if TYPE_CHECKING:
    from collections.abc import Sequence

    from authoring.diagnostics.diagnostic import Span

COLUMNS = 100

# Of a longer line only so many characters on either side are looked at; no room is as wide.
_NEAR = 1000

_TAB = " " * 4
_MARK = "~"
_CUT = "…"
_BREAK = re.compile(r"\r\n|\n|\r")
# Controls, format signs, surrogates and line ends only some programs know: shown by code, never sent to a terminal.
_UNSEEN = frozenset({"Cc", "Cf", "Cs", "Zl", "Zp"})
_ABOVE_OTHERS = frozenset({"Mn", "Me"})


class Excerpt(Struct, frozen=True):
    """A line as it is shown and the mark that belongs under it, both without colour and margin."""

    line: str
    mark: str


def split_lines(text: str) -> list[str]:
    """Return the lines of a text without their ends, counted as the YAML reader counts them."""
    return _BREAK.split(text.removeprefix("\ufeff"))


def excerpt(lines: Sequence[str], span: Span, room: int) -> Excerpt | None:
    """Return the first line of a stretch with its mark, at most `room` columns wide; None outside the text.

    A stretch without width gets a mark of one column; one that goes on below says how far behind its mark.
    """
    if not 1 <= span.line <= len(lines):
        return None
    whole = lines[span.line - 1]
    passed = max(0, min(span.column - 1, len(whole)) - _NEAR)
    near = whole[passed : passed + 2 * _NEAR]
    cells = [visible(one) if one != "\t" else _TAB for one in near]
    start = min(span.column - 1 - passed, len(cells))
    stop = min(span.end_column - 1 - passed, len(cells)) if span.end_line == span.line else len(cells)
    more = span.end_line - span.line
    first, last = _window(cells, start, room)
    before = _CUT if passed or first else ""
    after = _CUT if last < len(cells) or passed + len(near) < len(whole) else ""
    line = before + "".join(cells[first:last]) + after
    lead = width(before) + sum(map(width, cells[first:start]))
    length = max(1, sum(map(width, cells[start : min(stop, last)])))
    goes_on = "" if more == 0 else " and 1 line more" if more == 1 else f" and {more} lines more"
    if lead + len(goes_on) < room:
        length = min(length, room - lead - len(goes_on))
    else:
        goes_on = ""
    return Excerpt(line.rstrip(), " " * lead + _MARK * length + goes_on)


def _window(cells: Sequence[str], start: int, room: int) -> tuple[int, int]:
    """Return which cells to show: all if they fit, else from a third of the room in front of `start`."""
    widths = [width(cell) for cell in cells]
    if sum(widths) <= room:
        return 0, len(cells)
    left = room - 2 * len(_CUT)
    first, spent = start, 0
    while first > 0 and spent + widths[first - 1] <= left // 3:
        first -= 1
        spent += widths[first]
    last = first
    spent = 0
    while last < len(cells) and spent + widths[last] <= left:
        spent += widths[last]
        last += 1
    while last == len(cells) and first > 0 and spent + widths[first - 1] <= left:
        first -= 1
        spent += widths[first]
    return first, last


def width(text: str) -> int:
    """Return how many columns a terminal gives to a text that holds no controls.

    After Unicode Standard Annex #11: wide and full-width signs take two, those that sit on others take none.
    """
    return sum(
        0 if unicodedata.category(one) in _ABOVE_OTHERS else 2 if unicodedata.east_asian_width(one) in "WF" else 1
        for one in text
    )


def visible(text: str) -> str:
    """Return a text in which every sign that cannot be seen stands as its code, as `<U+202E>`."""
    if text.isascii() and text.isprintable():
        return text
    return "".join(f"<U+{ord(one):04X}>" if unicodedata.category(one) in _UNSEEN else one for one in text)
