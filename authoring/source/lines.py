"""Character offsets of a text turned into lines and columns."""

from __future__ import annotations

import re
from bisect import bisect_right

from authoring.diagnostics.diagnostic import Span

_BREAK = re.compile(r"\r\n|\n|\r")


class Lines:
    """The line starts of one text.

    A line ends at LF, CR LF or CR, which is what an editor and the YAML reader agree on.
    """

    __slots__ = ("_file", "_starts", "text")

    def __init__(self, file: str, text: str) -> None:
        self.text = text
        self._file = file
        self._starts = [0, *[found.end() for found in _BREAK.finditer(text)]]

    def at(self, offset: int) -> tuple[int, int]:
        """Return line and column, both from 1, of a character offset; an offset outside is moved inside."""
        offset = min(max(offset, 0), len(self.text))
        line = bisect_right(self._starts, offset)
        return line, offset - self._starts[line - 1] + 1

    def span(self, start: int, end: int) -> Span:
        """Return the stretch from `start` up to, not including, `end`."""
        line, column = self.at(start)
        end_line, end_column = self.at(max(start, end))
        return Span(self._file, line, column, end_line, end_column)

    def end_of_line(self, offset: int) -> int:
        """Return the offset just behind the last visible character of the line that holds `offset`."""
        line = bisect_right(self._starts, offset)
        stop = self._starts[line] if line < len(self._starts) else len(self.text)
        return max(offset, offset + len(self.text[offset:stop].rstrip()))
