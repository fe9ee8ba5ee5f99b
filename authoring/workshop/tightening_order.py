"""In which order are the fasteners of a pattern tightened?

Formula:
    circle of N = 4 m: n, n + N/2, n + N/4, n + 3N/4 for each four
    circle of N = 2 m: n, n + N/2 for each two
    circle of an odd N: each next the nearest to opposite
    row: the middle one, then outwards, right and left in turn
    four corners: crosswise, as on a circle
    outline: the nearest to the middle first; of equally near ones the furthest from the last

Symbols:
    N: how many fasteners
    n: number of a fastener; a circle counts clockwise from the top, a row from its left or upper end

Source: of the circle, the cross pattern of ASME PCC-1, legacy numbering, from memory; US Army TM 5-3805-298-23-2 WP
0176 numbers 1 opposite 2, 3 opposite 4 and so on.
Of the row, the same manual's straight pattern, 9 7 5 3 1 2 4 6 8 from left to right.
Of the outline, the same principle, and RCSC 2004, 8.2.1, which goes from the most rigid part to the free edges; that
the next of the equally near lies furthest off, and that four corners go crosswise whatever their shape, is common
practice.

Assumptions: the fasteners are alike and the joint is most rigid in its middle.

Limits: a maker's order goes before all of these.
"""

from __future__ import annotations

import math
from collections import Counter
from collections.abc import Iterator, Sequence

from msgspec import Struct

from authoring.workshop.bolt_pattern import Pattern, Point, pattern_of, run_of_circle, run_of_row, slack


class OrderFaults(Struct, frozen=True):
    """What is wrong with a stated order: numbers left out, numbers said again, and numbers that no fastener has."""

    missing: tuple[int, ...]
    repeated: tuple[int, ...]
    unknown: tuple[int, ...]

    @property
    def sound(self) -> bool:
        """Whether each fastener is named exactly once."""
        return not (self.missing or self.repeated or self.unknown)


def order_faults(order: Sequence[int], count: int) -> OrderFaults:
    """Return what keeps a stated order from naming each of the fasteners 1 to `count` exactly once."""
    said = Counter(order)
    return OrderFaults(
        tuple(one for one in range(1, count + 1) if one not in said),
        tuple(sorted(one for one, times in said.items() if times > 1)),
        tuple(sorted(one for one in said if not 1 <= one <= count)),
    )


def order_on_circle(count: int) -> tuple[int, ...]:
    """Return the cross order of `count` fasteners evenly spaced on a circle and numbered round it from 1.

    With a multiple of four, each four are a square cross: one, its opposite, a quarter turn on, its opposite.
    With another even number each two are opposite, with an odd one each next is the nearest to opposite.
    The crosses, or pairs, follow one another as far apart as they can.
    """
    if count % 4 == 0:
        quarter = count // 4
        return tuple(start + turn * quarter + 1 for start in _spread(quarter) for turn in (0, 2, 1, 3))
    if count % 2 == 0:
        half = count // 2
        return tuple(start + turn * half + 1 for start in _spread(half) for turn in (0, 1))
    return tuple(one + 1 for one in _spread(count))


def order_in_row(count: int) -> tuple[int, ...]:
    """Return the order of `count` fasteners in a row, numbered from one end: the middle one, then outwards in turn.

    With an even number it starts at the left of the two in the middle.
    """
    middle = (count - 1) // 2
    outwards = [(step, middle + step + 1) for step in range(-middle, count - middle)]
    # To the right before to the left, as in the published row.
    return tuple(number for _, number in sorted(outwards, key=lambda one: (abs(one[0]), one[0] < 0)))


def tightening_order(positions: Sequence[Point]) -> tuple[int, ...]:
    """Return the order in which fasteners at these positions are tightened: fastener n stands at positions[n - 1].

    Positions are (x, y) in one unit of length, x to the right and y up.
    The order depends on where the fasteners are, never on how they are numbered:
    a circle starts at the topmost and runs clockwise, a row counts from its left or upper end.
    A circle whose fasteners are not evenly spaced is treated as an outline.
    """
    pattern = pattern_of(positions)
    if pattern in (Pattern.CIRCLE, Pattern.CORNERS):
        run = run_of_circle(positions)
        return tuple(run[place - 1] + 1 for place in order_on_circle(len(run)))
    if pattern is Pattern.ROW:
        run = run_of_row(positions)
        return tuple(run[place - 1] + 1 for place in order_in_row(len(run)))
    return tuple(one + 1 for one in _outwards(positions))


def _spread(count: int) -> list[int]:
    """Return 0 to count - 1 with successive ones about half the count apart, as the crosses of PCC-1 follow."""
    if count % 2 == 0:
        half = count // 2
        return [one + shift for one in range(half) for shift in (0, half)]
    return [one * (count // 2) % count for one in range(count)] if count > 1 else list(range(count))


def _outwards(positions: Sequence[Point]) -> Iterator[int]:
    """Yield the places from the middle outwards; among those equally near, the one furthest from the last."""
    near = slack(positions)
    middle = (
        (min(x for x, _ in positions) + max(x for x, _ in positions)) / 2,
        (min(y for _, y in positions) + max(y for _, y in positions)) / 2,
    )
    left = sorted(range(len(positions)), key=lambda one: math.dist(positions[one], middle))
    last = middle
    while left:
        nearest = math.dist(positions[left[0]], middle)
        ring = [one for one in left if math.dist(positions[one], middle) <= nearest + near]
        furthest = max(math.dist(positions[one], last) for one in ring)
        fit = [one for one in ring if math.dist(positions[one], last) >= furthest - near]
        chosen = _first(fit, positions, near)
        yield chosen
        last = positions[chosen]
        left.remove(chosen)


def _first(fit: list[int], positions: Sequence[Point], near: float) -> int:
    """Return the topmost of some places, of those equally high the leftmost."""
    top = max(positions[one][1] for one in fit)
    return min((one for one in fit if positions[one][1] >= top - near), key=lambda one: positions[one][0])
