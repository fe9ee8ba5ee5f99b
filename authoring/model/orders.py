"""Where the fasteners of a group stand, and in which order they are tightened.

An order that the author states is a maker's or the shop's own and goes before one that is worked out.
"""

from __future__ import annotations

import math
from fractions import Fraction

from msgspec import Struct

from authoring.model.things import FastenerGroup
from authoring.quantities.quantity import Quantity
from authoring.workshop.bolt_pattern import Point
from authoring.workshop.clock import angle_at
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import interval_of
from authoring.workshop.tightening_order import order_faults, tightening_order

FEWEST = 3
"""Of fewer fasteners there is no order to speak of: what is tightened first does not press on a third."""

MOST = 120
"""Of more fasteners no drawing could be read, and no order either."""

_MILLIMETRE = 1000
_MM = {"mm": 1.0, "in": 25.4}


class Order(Struct, frozen=True):
    """The numbers of the fasteners in the order in which they are tightened; `stated` when the author wrote it."""

    numbers: tuple[int, ...]
    stated: bool


def places_of(group: FastenerGroup) -> tuple[Point, ...]:
    """Return where each fastener stands, in mm to the right and up, by its number from 1.

    Empty where it is not known, of more than MOST, or stated in a way that does not fit the group: rules tell of that.
    """
    stated = group.positions
    if stated is None or group.count > MOST:
        return ()
    if stated.circle is None:
        if stated.unit is None or len(stated.places) != group.count:
            return ()
        factor = _MM[stated.unit]
        return tuple((x * factor, y * factor) for x, y in stated.places)
    radius, first = _middle(stated.circle) / 2, angle_at(stated.first)
    if stated.places or radius <= 0 or isinstance(first, Impossible):
        return ()
    angles = [math.radians(float(first + Fraction(360 * one, group.count))) for one in range(group.count)]
    return tuple((radius * math.sin(angle), radius * math.cos(angle)) for angle in angles)


def order_of(group: FastenerGroup) -> Order | None:
    """Return the order of a group: the stated one, else the one that its places give; None where neither is known."""
    if group.order:
        return Order(group.order, stated=True)
    places = places_of(group)
    return Order(tightening_order(places), stated=False) if len(places) >= FEWEST else None


def drawn_order(group: FastenerGroup) -> Order | None:
    """Return the order where it can be drawn: the places are known, and it names each fastener once."""
    order = order_of(group)
    if order is None or len(places_of(group)) < FEWEST or not order_faults(order.numbers, group.count).sound:
        return None
    return order


def _middle(length: Quantity) -> float:
    """Return the middle of a length in mm; zero where only one end of it is stated."""
    if length.nominal is not None:
        return float(length.nominal * length.unit.factor * _MILLIMETRE)
    within = interval_of(length)
    return 0.0 if within.low is None or within.high is None else float((within.low + within.high) / 2 * _MILLIMETRE)
