"""Which angle is a position on the face of a clock, and which position is an angle?

Formula:
    angle = 30° hours + 0.5° minutes, less whole turns

Symbols:
    angle: in degrees, clockwise from 12 o'clock at the top, as the one who stands in front sees it

Source: the face of a clock; common practice.

Assumptions: only the hour hand counts: 7:30 is half way from 7 to 8.

Limits: a position is named to a quarter of an hour, 7.5°.
"""

from __future__ import annotations

import re
from fractions import Fraction

from authoring.workshop.impossible import Impossible

_FACE = 360
_HOURS = 12
_DEGREES_AN_HOUR = 30
_MINUTES = 60
_QUARTER = 15
_POSITION = re.compile(r"(1[0-2]|[1-9])(?::([0-5][0-9]))?")


def angle_at(position: str) -> Fraction | Impossible:
    """Return the angle in degrees, from 0 up to but not including 360, of a position such as "7" or "7:30"."""
    match = _POSITION.fullmatch(position)
    if match is None:
        return Impossible(
            "This is no hour on the face of a clock.", 'Write an hour from 1 to 12, such as "7" or "7:30".'
        )
    hours = int(match[1]) + Fraction(int(match[2] or 0), _MINUTES)
    return hours * _DEGREES_AN_HOUR % _FACE


def position_at(angle: Fraction) -> str:
    """Return the position nearest to an angle in degrees, to a quarter of an hour, such as "7" or "7:30".

    Any angle will do, negative ones and those over a turn too; a half goes to the even quarter.
    """
    quarters = round(angle % _FACE / _DEGREES_AN_HOUR * _MINUTES / _QUARTER)
    hour, quarter = divmod(quarters, _MINUTES // _QUARTER)
    name = str((hour - 1) % _HOURS + 1)
    return f"{name}:{quarter * _QUARTER}" if quarter else name
