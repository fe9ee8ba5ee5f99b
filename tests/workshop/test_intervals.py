from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from authoring.quantities.quantity import Form, Quantity
from authoring.quantities.read import read_quantity
from authoring.quantities.show import spell
from authoring.quantities.units import UNITS
from authoring.workshop.interval import (
    Interval,
    Standing,
    compare,
    difference,
    exactly,
    interval_of,
    least_of,
    middle_of,
    most_of,
    overlap,
    quantity_of,
    total,
    widened,
)
from tests.workshop.numbers import closed, inside, intervals, numbers

LENGTHS = st.sampled_from([UNITS[symbol] for symbol in ("mm", "m", "in", "µm")])


def _read(text: str) -> Quantity:
    quantity = read_quantity(text)
    assert isinstance(quantity, Quantity)
    return quantity


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        ("7.5 L", "0.0075", "0.0075"),
        ("30 to 50 °C", "303.15", "323.15"),
        ("1.20 ± 0.05 L", "0.00115", "0.00125"),
        ("at least 40 mm", "0.04", None),
        ("at most 40 mm", None, "0.04"),
    ],
)
def test_each_form_of_a_quantity_is_an_interval(text: str, low: str | None, high: str | None) -> None:
    """A value is one number; a tolerance and a range have two ends; a minimum and a maximum have one."""
    ends = [None if end is None else Fraction(end) for end in (low, high)]
    assert interval_of(_read(text)) == Interval(*ends)


@pytest.mark.parametrize("text", ["7.5 L", "30 to 50 °C", "at least 40 mm", "at most 1.25 mm", "-20 to -5 °C"])
def test_a_quantity_comes_back_as_it_was(text: str) -> None:
    """To an interval and back, a quantity is spelt as before; what is made reads as the same quantity again."""
    quantity = _read(text)
    back = quantity_of(interval_of(quantity), quantity.unit, quantity.places)
    assert spell(back) == spell(quantity)
    assert interval_of(_read(back.text)) == interval_of(quantity)


@given(closed(-2, 2), LENGTHS, st.integers(-1, 3))
def test_what_is_shown_is_never_wider(interval: Interval, unit: object, places: int) -> None:
    """Both ends round inward, and a real window loses at most a twentieth."""
    assert isinstance(unit, type(UNITS["mm"]))
    shown = quantity_of(interval, unit, places)
    if shown.form is Form.VALUE:
        assert interval.low == interval.high
        return
    again = interval_of(shown)
    assert compare(again, interval).standing is Standing.WITHIN
    assert interval.low is not None
    assert interval.high is not None
    assert again.low is not None
    assert again.high is not None
    width = interval.high - interval.low
    assert again.high - again.low >= width * Fraction(19, 20)


@given(intervals(), LENGTHS, st.integers(-1, 3))
def test_one_limit_moves_to_its_careful_side(interval: Interval, unit: object, places: int) -> None:
    """A minimum is shown no lower and a maximum no higher than it is; nothing at all cannot be shown."""
    assert isinstance(unit, type(UNITS["mm"]))
    if interval.low is None and interval.high is None:
        with pytest.raises(ValueError, match="without any end"):
            quantity_of(interval, unit, places)
    elif interval.low is None or interval.high is None:
        shown = quantity_of(interval, unit, places)
        assert (shown.low is None) == (interval.low is None)
        assert compare(interval_of(shown), interval).standing is Standing.WITHIN


@given(st.data(), intervals(), intervals())
def test_sums_and_differences_hold_every_case(data: st.DataObject, one: Interval, other: Interval) -> None:
    """Whatever two numbers turn out to be, their sum and their difference lie where it was said."""
    first, second = data.draw(inside(one)), data.draw(inside(other))
    assert first in one
    assert second in other
    assert first + second in total([one, other])
    assert first - second in difference(one, other)


@given(closed(), closed())
def test_sums_and_differences_are_no_wider_than_need_be(one: Interval, other: Interval) -> None:
    """Each end of the sum and of the difference is met by two ends."""
    assert one.low is not None
    assert one.high is not None
    assert other.low is not None
    assert other.high is not None
    assert total([one, other]) == Interval(one.low + other.low, one.high + other.high)
    assert difference(one, other) == Interval(one.low - other.high, one.high - other.low)
    assert total([]) == exactly(Fraction(0))


@given(st.data(), intervals(), intervals())
def test_the_standing_is_true_of_every_number(data: st.DataObject, stated: Interval, wanted: Interval) -> None:
    """WITHIN holds for all, BELOW and ABOVE for none, and the gap is what is lacking at the nearest ends."""
    told = compare(stated, wanted)
    number = data.draw(inside(stated))
    if told.standing is Standing.WITHIN:
        assert number in wanted
    elif told.standing is Standing.PARTLY:
        assert told.common is not None
        assert data.draw(inside(told.common)) in stated
        assert data.draw(inside(told.common)) in wanted
        assert told.common != stated
    else:
        assert number not in wanted
        assert told.gap > 0
        by = told.gap if told.standing is Standing.BELOW else -told.gap
        moved = total([stated, exactly(by)])
        assert compare(moved, wanted).gap == 0
        assert compare(total([stated, exactly(by * Fraction(999, 1000))]), wanted).standing is told.standing


@given(intervals(), intervals())
def test_having_something_in_common_is_mutual(one: Interval, other: Interval) -> None:
    """Two intervals overlap in the same numbers, whichever is named first; they compare so too."""
    assert overlap(one, other) == overlap(other, one) == compare(one, other).common


@given(closed(), numbers(0, 20))
def test_widening_comes_back(interval: Interval, by: Fraction) -> None:
    """Out and in again is the same; in further than the middle is nothing."""
    out = widened(interval, by)
    assert out is not None
    assert widened(out, -by) == interval
    assert interval.low is not None
    assert interval.high is not None
    assert (widened(interval, -by) is None) == (2 * by > interval.high - interval.low)


ENDS = {
    "25 mm": (25, 25, 25),
    "25 ± 5 mm": (20, 25, 30),
    "25 +5/-1 mm": (24, 27, 30),
    "20 to 30 mm": (20, 25, 30),
    "about 25 mm": (25, 25, 25),
    "at least 25 mm": (25, None, None),
    "at most 25 mm": (None, None, 25),
}


@pytest.mark.parametrize("text", ENDS)
def test_an_open_end_is_no_number(text: str) -> None:
    """An end that nobody stated is None, and so is the middle that it takes; the ends are in metres."""
    quantity = _read(text)
    ends = [None if end is None else end * 1000 for end in (least_of(quantity), middle_of(quantity), most_of(quantity))]
    assert ends == list(ENDS[text])


def test_an_end_carries_the_offset_of_its_unit() -> None:
    """20 °C is 293.15 K."""
    assert least_of(_read("20 to 30 °C")) == Fraction("293.15")
    assert most_of(_read("20 to 30 °C")) == Fraction("303.15")
