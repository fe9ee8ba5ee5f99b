"""The face of a clock with an arrow to where the mark stands."""

from __future__ import annotations

import math
from collections.abc import Iterator

from authoring.booklet.shapes import Dial
from authoring.render.drawings.svg import INK, PAPER, THIN, arrow_head, circle, line, text

SIDE = 32.0
_RIM = 11.4
_NUMBERS = 13.9
_TIP = 10.7
_HEAD = 5.4
_QUARTERS = (3, 6, 9, 12)


def dial(shown: Dial) -> Iterator[str]:
    """Yield the lines of a dial."""
    middle = SIDE / 2
    yield circle(middle, middle, _RIM, fill=PAPER)
    for hour in range(1, 13):
        across, down = _towards(hour * 30)
        quarter = hour in _QUARTERS
        inner = _RIM - (2.2 if quarter else 1.4)
        outer = middle + across * _RIM, middle + down * _RIM
        yield line(middle + across * inner, middle + down * inner, *outer, width=0.5 if quarter else THIN)
        if quarter:
            yield text(middle + across * _NUMBERS, middle + down * _NUMBERS, str(hour), anchor="middle")
    across, down = _towards(shown.degrees)
    shaft = _TIP - _HEAD + 0.5
    yield line(middle, middle, middle + across * shaft, middle + down * shaft, width=1.2)
    yield arrow_head(middle + across * _TIP, middle + down * _TIP, shown.degrees, _HEAD)
    yield circle(middle, middle, 1.1, fill=INK)


def _towards(degrees: float) -> tuple[float, float]:
    turn = math.radians(degrees)
    return math.sin(turn), -math.cos(turn)
