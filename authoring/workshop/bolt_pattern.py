"""What pattern does a group of fasteners stand in: a circle, a straight row, four corners, or another outline?

Formula:
    row: every fastener lies within s of the line through the two furthest apart
    circle: all radii from the middle differ by s at most, all angles between neighbours by 2 s / radius at most
    four corners: four of which none lies inside the triangle of the others
    outline: everything else
    s = size / 50

Symbols:
    position: (x, y) in one unit of length, any one; x to the right and y up
    size: the greatest distance between two fasteners, in that unit
    s: the length below which two distances count as equal, in that unit

Source: plain geometry; the fiftieth is common practice, since positions are read off a drawing.

Assumptions: all fasteners lie in one plane.

Limits: fewer than three fasteners are a row; two rings on one flange are an outline.
"""

from __future__ import annotations

import enum
import itertools
import math
from collections.abc import Sequence

Point = tuple[float, float]

_SLACK = 1 / 50
_FEWEST_ON_CIRCLE = 3
_CORNERS = 4


class Pattern(enum.Enum):
    """How fasteners stand to each other."""

    CIRCLE = "circle"
    ROW = "row"
    CORNERS = "four corners"
    OUTLINE = "outline"


def pattern_of(positions: Sequence[Point]) -> Pattern:
    """Return the pattern: a row when all lie on one line, a circle when evenly spaced round one point, or another.

    Two fasteners, or one, are a row; none are too.
    """
    if len(positions) < _FEWEST_ON_CIRCLE or _on_one_line(positions):
        return Pattern.ROW
    if _evenly_round(positions):
        return Pattern.CIRCLE
    return Pattern.CORNERS if len(positions) == _CORNERS and _convex(positions) else Pattern.OUTLINE


def slack(positions: Sequence[Point]) -> float:
    """Return the length below which two distances of this pattern count as equal."""
    return _SLACK * max((math.dist(one, other) for one, other in itertools.combinations(positions, 2)), default=0.0)


def run_of_circle(positions: Sequence[Point]) -> list[int]:
    """Return the places clockwise round the circle from the topmost, of two equally high the left one."""
    centre = _centre(positions)
    run = sorted(range(len(positions)), key=lambda one: -_angle(positions[one], centre))
    off = {one: abs(math.remainder(_angle(positions[one], centre) - math.pi / 2, math.tau)) for one in run}
    # Two that stand left and right of the top are equally far off it, but for how well they were measured.
    highest = [one for one in run if off[one] <= min(off.values()) + math.tau / len(run) / 4]
    place = run.index(min(highest, key=lambda one: positions[one][0]))
    return run[place:] + run[:place]


def run_of_row(positions: Sequence[Point]) -> list[int]:
    """Return the places along the row from its left end, or from its upper end when it stands upright."""
    near = slack(positions)
    width = max((x for x, _ in positions), default=0.0) - min((x for x, _ in positions), default=0.0)
    upright = width <= near
    return sorted(range(len(positions)), key=lambda one: -positions[one][1] if upright else positions[one][0])


def _on_one_line(positions: Sequence[Point]) -> bool:
    (x1, y1), (x2, y2) = max(itertools.combinations(positions, 2), key=lambda pair: math.dist(*pair))
    length, near = math.dist((x1, y1), (x2, y2)), slack(positions)
    return all(abs((x2 - x1) * (y - y1) - (y2 - y1) * (x - x1)) <= near * length for x, y in positions)


def _evenly_round(positions: Sequence[Point]) -> bool:
    centre, near = _centre(positions), slack(positions)
    radii = [math.dist(one, centre) for one in positions]
    if max(radii) - min(radii) > near:
        return False
    angles = sorted(_angle(one, centre) for one in positions)
    gaps = [after - before for before, after in itertools.pairwise([*angles, angles[0] + 2 * math.pi])]
    return max(gaps) - min(gaps) <= 2 * near / max(radii)


def _convex(corners: Sequence[Point]) -> bool:
    """Tell whether places are the corners of a polygon, none inside the triangle of its neighbours and the middle."""
    run = [corners[place] for place in run_of_circle(corners)]
    turns = []
    for place, (x, y) in enumerate(run):
        (x1, y1), (x2, y2) = run[place - 1], run[(place + 1) % len(run)]
        turns.append((x - x1) * (y2 - y) - (y - y1) * (x2 - x) < 0)
    return all(turns)


def _centre(positions: Sequence[Point]) -> Point:
    return math.fsum(x for x, _ in positions) / len(positions), math.fsum(y for _, y in positions) / len(positions)


def _angle(position: Point, centre: Point) -> float:
    return math.atan2(position[1] - centre[1], position[0] - centre[0])
