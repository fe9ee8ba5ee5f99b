"""A bolt pattern: each fastener a circle with its turn, the first one black, 12 o'clock marked above."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from authoring.booklet.shapes import BoltPattern
from authoring.render.drawings.svg import INK, LINE, PAPER, THIN, circle, line, shape, text

_TOP = 1.2  # mm from the upper edge to the middle of "12"
_CENTRE_LINE = "6 1.2 1 1.2"  # of ISO 128: long dash, dot
_CROSS = 3.0
_LARGEST = 4.4
_ONE_DIGIT, _TWO_DIGITS = 1.7, 1.3
"""Size of the type to the radius of its circle."""


def bolt_pattern(shown: BoltPattern) -> Iterator[str]:
    """Yield the lines of a pattern."""
    yield from _middle(shown)
    yield text(shown.x, _TOP + 0.2, "12", anchor="middle", size=3.5)
    yield shape((shown.x - 1.1, 3.6), (shown.x + 1.1, 3.6), (shown.x, 5.6))
    for disc in shown.discs:
        first = disc.turn == 1
        yield circle(disc.x, disc.y, shown.radius, fill=INK if first else PAPER, width=LINE)
        size = min(_LARGEST, shown.radius * (_TWO_DIGITS if len(str(disc.turn)) > 1 else _ONE_DIGIT))
        tone = "reversed" if first else "bold"
        yield text(disc.x, disc.y, str(disc.turn), anchor="middle", size=size, tone=tone)


def _middle(shown: BoltPattern) -> Iterator[str]:
    if shown.outline:
        for (x1, y1), (x2, y2) in pairwise([*shown.outline, shown.outline[0]]):
            yield line(x1, y1, x2, y2, width=THIN, dashes=_CENTRE_LINE)
    if shown.circle:
        yield circle(shown.x, shown.y, shown.circle, width=THIN, dashes=_CENTRE_LINE)
        yield line(shown.x - _CROSS, shown.y, shown.x + _CROSS, shown.y, width=THIN)
        yield line(shown.x, shown.y - _CROSS, shown.x, shown.y + _CROSS, width=THIN)
