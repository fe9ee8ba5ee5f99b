"""The pattern of a group of fasteners, each with its turn in the order of tightening.

What an apprentice looks for is which one comes next, so the numbers in the drawing are turns.
Fasteners carry no numbers on the machine, and a list of such numbers would have to be looked up in a second step.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from fractions import Fraction

from msgspec import Struct

from authoring.booklet.plan import Volume
from authoring.booklet.shapes import BoltPattern, Disc
from authoring.booklet.step_parts import Drawing
from authoring.booklet.wording import Wording
from authoring.booklet.words import Text, Words
from authoring.diagnostics.words import joined
from authoring.model.orders import drawn_order, places_of
from authoring.model.procedure import Action
from authoring.model.things import FastenerGroup
from authoring.quantities.units import Dimension, Unit
from authoring.workshop.bolt_pattern import Pattern, Point, pattern_of, run_of_row
from authoring.workshop.clock import position_at
from authoring.workshop.interval import exactly, quantity_of

_SMALL = 40.0  # mm of paper: what a pattern takes where its discs have room
_WIDEST, _TALLEST = 120.0, 76.0
_RADIUS = 3.6
_LEAST = 2.7  # holds two digits 2.5 mm high
_APART = 10.0  # of two discs where there is room
_GAP = 0.6
_EDGE = 0.6
_HAIR = 0.01  # for the rounding of floats
_MARK = 6.4  # of 12 o'clock, above the pattern
_MILLIMETRE = Unit("mm", Dimension.LENGTH, Fraction(1, 1000))
_SHAPES = {
    Pattern.CIRCLE: "evenly on a circle",
    Pattern.ROW: "in a row",
    Pattern.CORNERS: "at four corners",
    Pattern.OUTLINE: "spread over the part",
}
_RANKS = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth", "tenth")


class _Drawn(Struct, frozen=True):
    """Places on paper, in mm to the right and up from the middle, and the radius of a disc."""

    places: tuple[Point, ...]
    radius: float


def bolt_patterns(action: Action, volume: Volume, wording: Wording) -> Iterator[Drawing]:
    """Yield a drawing for the groups that an action tightens; groups that look alike share one."""
    alike: dict[tuple[BoltPattern, str, Text], list[FastenerGroup]] = {}
    for name in action.what:
        group = volume.scope.things[name].thing
        shape = shape_of(group) if isinstance(group, FastenerGroup) else None
        if isinstance(group, FastenerGroup) and shape is not None:
            alike.setdefault((shape, _seen(group), _size(group, wording)), []).append(group)
    for (shape, _, size), groups in alike.items():
        yield _drawing(shape, size, groups)


def shape_of(group: FastenerGroup) -> BoltPattern | None:
    """Return the pattern of a group on paper; None where it is not known, or too crowded to be read."""
    order, places = drawn_order(group), places_of(group)
    drawn = _on_paper(places) if order is not None else None
    if order is None or drawn is None:
        return None
    turns = {number: turn for turn, number in enumerate(order.numbers, 1)}
    circle = math.hypot(*drawn.places[0]) if pattern_of(places) is Pattern.CIRCLE else 0.0
    reach = drawn.radius + _EDGE
    across = max(circle, *(abs(x) for x, _ in drawn.places)) + reach
    up = max(circle, *(y for _, y in drawn.places)) + reach + _MARK
    down = max(circle, *(-y for _, y in drawn.places)) + reach
    spots = [(round(across + x, 2), round(up - y, 2)) for x, y in drawn.places]
    return BoltPattern(
        width=round(2 * across, 2),
        height=round(up + down, 2),
        x=round(across, 2),
        y=round(up, 2),
        circle=round(circle, 2),
        radius=drawn.radius,
        discs=tuple(Disc(*spot, turns[number]) for number, spot in enumerate(spots, 1)),
        outline=() if circle else tuple(_hull(spots)),
    )


def _on_paper(places: Sequence[Point]) -> _Drawn | None:
    """Return places about the middle of what they span, as small as their numbers can be read."""
    spans = [(min(one), max(one)) for one in zip(*places, strict=True)]
    middle = [(low + high) / 2 for low, high in spans]
    wide, high = (high - low for low, high in spans)
    if pattern_of(places) is Pattern.CIRCLE:
        middle = [math.fsum(one) / len(places) for one in zip(*places, strict=True)]
        wide = high = 2 * math.dist(middle, places[0])
    nearest = min(math.dist(one, other) for one, other in itertools.combinations(places, 2))
    if nearest == 0:
        return None
    most = min(_WIDEST / wide if wide else math.inf, _TALLEST / high if high else math.inf)
    scale = min(max(_SMALL / max(wide, high), _APART / nearest), most)
    radius = min(_RADIUS, (scale * nearest - _GAP) / 2)
    if radius < _LEAST - _HAIR:
        return None
    return _Drawn(tuple(((x - middle[0]) * scale, (y - middle[1]) * scale) for x, y in places), round(radius, 2))


def _hull(spots: Sequence[Point]) -> Iterator[Point]:
    """Yield the corners of the tightest line round some places, in turn: gift wrapping, R. A. Jarvis 1973."""
    here = first = min(spots)
    while True:
        yield here
        ahead = min(one for one in spots if one != here)
        for one in spots:
            side = (ahead[0] - here[0]) * (one[1] - here[1]) - (ahead[1] - here[1]) * (one[0] - here[0])
            further = math.dist(here, one) > math.dist(here, ahead)
            if side < -_HAIR or (abs(side) <= _HAIR and further):
                ahead = one
        here = ahead
        if here == first:
            return


def _seen(group: FastenerGroup) -> str:
    return group.positions.seen_from or "" if group.positions is not None else ""


def _size(group: FastenerGroup, wording: Wording) -> Text:
    """Return how large the pattern is on the machine, by which one sees that it is the right one."""
    stated = group.positions
    if stated is not None and stated.circle is not None:
        return (Words("The circle through their middles measures "), wording.amount(stated.circle), Words("."))
    furthest = max(math.dist(one, other) for one, other in itertools.combinations(places_of(group), 2))
    apart = quantity_of(exactly(Fraction(furthest) / 1000), _MILLIMETRE, 0)
    return (Words("The two that are furthest apart stand "), wording.amount(apart), Words(" from middle to middle."))


def _drawing(shape: BoltPattern, size: Text, groups: Sequence[FastenerGroup]) -> Drawing:
    names = joined([group.name for group in groups])
    seen = f"Seen from {_seen(groups[0])}." if _seen(groups[0]) else ""
    each = f"{groups[0].count} {names}" if len(groups) == 1 else f"{names}, {groups[0].count} each"
    places = places_of(groups[0])
    stand = f"{each}, {_SHAPES[pattern_of(places)]}."
    turns = "; ".join(f"{turn} {where}" for turn, where in _turns(shape, groups[0]))
    by = "" if pattern_of(places) is Pattern.ROW else ", as on the face of a clock"
    turn = f"The numbers say which is tightened first, second and so on.{f' {seen}' if seen else ''}"
    return Drawing(
        title=f"Order of tightening: {names}",
        alt=" ".join(filter(None, ("Drawing:", stand, seen, f"The order of tightening{by}: {turns}."))),
        shape=shape,
        notes=((Words(turn),), size),
    )


def _turns(shape: BoltPattern, group: FastenerGroup) -> Iterator[tuple[int, str]]:
    """Yield each turn and where its fastener stands, in words."""
    places = places_of(group)
    if pattern_of(places) is Pattern.ROW:
        words = {place: f"the {_rank(at)} {_end_of_row(places)}" for at, place in enumerate(run_of_row(places), 1)}
    else:
        words = dict(enumerate(_by_clock([(disc.x - shape.x, shape.y - disc.y) for disc in shape.discs])))
    order = drawn_order(group)
    for turn, number in enumerate(order.numbers if order is not None else (), 1):
        yield turn, words[number - 1]


def _rank(at: int) -> str:
    return _RANKS[at - 1] if at <= len(_RANKS) else f"one at place {at}"


def _end_of_row(places: Sequence[Point]) -> str:
    first, second = (places[one] for one in run_of_row(places)[:2])
    return "from the left" if second[0] - first[0] > abs(second[1] - first[1]) / 50 else "from the top"


def _by_clock(places: Sequence[Point]) -> Iterator[str]:
    """Yield each place as a position on the face of a clock; how far out where two lie in one direction."""
    hours = [position_at(Fraction(math.degrees(math.atan2(x, y))).limit_denominator(1000)) for x, y in places]
    reach = max(math.hypot(*one) for one in places)
    for (x, y), hour in zip(places, hours, strict=True):
        far = math.hypot(x, y) / reach
        if far < 1 / 50:
            yield "in the middle"
        elif hours.count(hour) > 1:
            yield f"at {hour}, {round(far * 100)} % of the way out"
        else:
            yield f"at {hour}"
