"""Intervals of exact numbers: what is stated, what is wanted, and how the one lies to the other.

Numbers are in the base units of `authoring.quantities.units`: m, m³, K, s, degree, 1.
Sums and differences take the worst case of each end: nothing is assumed about what lies between.
"""

from __future__ import annotations

import enum
from collections.abc import Iterable
from fractions import Fraction

from msgspec import Struct

from authoring.quantities.numerals import write_numeral
from authoring.quantities.quantity import Form, Quantity
from authoring.quantities.rounding import down, nearest, up, window_places
from authoring.quantities.units import Unit


class Interval(Struct, frozen=True):
    """All numbers from `low` to `high`, both included; an end that is None is open."""

    low: Fraction | None
    high: Fraction | None

    def __contains__(self, number: Fraction) -> bool:
        return (self.low is None or self.low <= number) and (self.high is None or number <= self.high)


class Standing(enum.Enum):
    """How what is stated lies to what is wanted."""

    WITHIN = "within"
    """Whatever the stated values turn out to be, they are as wanted."""
    PARTLY = "partly"
    """Some are as wanted; the reader must look."""
    BELOW = "below"
    """None is as wanted: all are less."""
    ABOVE = "above"
    """None is as wanted: all are more."""


class Comparison(Struct, frozen=True):
    """The standing, what the two have in common (None for nothing), and how far apart they are (0 when they meet)."""

    standing: Standing
    common: Interval | None
    gap: Fraction


def exactly(number: Fraction) -> Interval:
    """Return the interval of one number."""
    return Interval(number, number)


def interval_of(quantity: Quantity) -> Interval:
    """Return what a quantity allows, in the base unit of its dimension; a value without limits is one number."""
    low, high = (
        (quantity.nominal, quantity.nominal)
        if quantity.form in (Form.VALUE, Form.ABOUT)
        else (quantity.low, quantity.high)
    )
    return Interval(_to_base(low, quantity.unit), _to_base(high, quantity.unit))


def least_of(quantity: Quantity) -> Fraction | None:
    """Return the least that a quantity allows, in the base unit; None where only a most is stated."""
    return interval_of(quantity).low


def most_of(quantity: Quantity) -> Fraction | None:
    """Return the most that a quantity allows, in the base unit; None where only a least is stated."""
    return interval_of(quantity).high


def middle_of(quantity: Quantity) -> Fraction | None:
    """Return the middle between both ends, in the base unit; None where one end is open, since there is no middle.

    It is the middle of the limits also where a nominal lies elsewhere between them.
    """
    span = interval_of(quantity)
    return None if span.low is None or span.high is None else (span.low + span.high) / 2


def quantity_of(interval: Interval, unit: Unit, places: int) -> Quantity:
    """Return an interval as a quantity in `unit` with `places` decimals, rounded inward so that it never widens.

    A range that would lose more than a twentieth of its width shows more decimals (see `quantities.rounding`).
    One number rounds to nearest.
    Raises ValueError for an interval that is open on both sides: it states nothing.
    """
    low, high = _from_base(interval.low, unit), _from_base(interval.high, unit)
    if low is not None and low == high:
        return _quantity(Form.VALUE, nearest(low, places), None, unit, places)
    if low is not None and high is not None:
        places = window_places(low, high, places)
        return _quantity(Form.RANGE, up(low, places), down(high, places), unit, places)
    if low is not None:
        return _quantity(Form.MINIMUM, up(low, places), None, unit, places)
    if high is not None:
        return _quantity(Form.MAXIMUM, down(high, places), None, unit, places)
    message = "an interval without any end is no quantity"
    raise ValueError(message)


def total(intervals: Iterable[Interval]) -> Interval:
    """Return what the sum of one number from each interval can be; the sum of none is zero."""
    low: Fraction | None = Fraction(0)
    high: Fraction | None = Fraction(0)
    for one in intervals:
        low = None if low is None or one.low is None else low + one.low
        high = None if high is None or one.high is None else high + one.high
    return Interval(low, high)


def difference(whole: Interval, part: Interval) -> Interval:
    """Return what remains when a number of `part` is taken from a number of `whole`."""
    return Interval(
        None if whole.low is None or part.high is None else whole.low - part.high,
        None if whole.high is None or part.low is None else whole.high - part.low,
    )


def overlap(one: Interval, other: Interval) -> Interval | None:
    """Return what two intervals have in common, or None; a shared end is common."""
    return None if _gap(one, other) or _gap(other, one) else _common(one, other)


def compare(stated: Interval, wanted: Interval) -> Comparison:
    """Return how what is stated lies to what is wanted."""
    if lack := _gap(stated, wanted):
        return Comparison(Standing.BELOW, None, lack)
    if excess := _gap(wanted, stated):
        return Comparison(Standing.ABOVE, None, excess)
    common = _common(stated, wanted)
    return Comparison(Standing.WITHIN if common == stated else Standing.PARTLY, common, Fraction(0))


def _gap(lower: Interval, upper: Interval) -> Fraction:
    """Return how far `upper` begins above the end of `lower`; zero when it does not."""
    if lower.high is None or upper.low is None:
        return Fraction(0)
    return max(upper.low - lower.high, Fraction(0))


def _common(one: Interval, other: Interval) -> Interval:
    lows = [low for low in (one.low, other.low) if low is not None]
    highs = [high for high in (one.high, other.high) if high is not None]
    return Interval(max(lows, default=None), min(highs, default=None))


def widened(interval: Interval, by: Fraction) -> Interval | None:
    """Return an interval with both ends moved out by `by`, or in when it is negative; None when nothing is left."""
    low = None if interval.low is None else interval.low - by
    high = None if interval.high is None else interval.high + by
    return None if low is not None and high is not None and low > high else Interval(low, high)


def _to_base(number: Fraction | None, unit: Unit) -> Fraction | None:
    return None if number is None else number * unit.factor + unit.offset


def _from_base(number: Fraction | None, unit: Unit) -> Fraction | None:
    return None if number is None else (number - unit.offset) / unit.factor


def _quantity(form: Form, first: Fraction, last: Fraction | None, unit: Unit, places: int) -> Quantity:
    numbers = (first,) if last is None else (first, last)
    typed = tuple(write_numeral(number, places) for number in numbers)
    text = f"{_BEFORE.get(form, '')}{' to '.join(typed)} {unit.symbol}".rstrip()
    return Quantity(
        text,
        unit.dimension,
        unit,
        form,
        first if form is Form.VALUE else None,
        first if form in (Form.RANGE, Form.MINIMUM) else None,
        first if form is Form.MAXIMUM else last,
        max(places, 0),
        typed,
    )


_BEFORE = {Form.MINIMUM: "at least ", Form.MAXIMUM: "at most "}
