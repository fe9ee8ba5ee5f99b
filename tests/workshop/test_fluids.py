from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from authoring.workshop.expansion import level_shift, volume_at
from authoring.workshop.fills import add_up, rest, top_up
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, Standing, compare, exactly, total
from authoring.workshop.level_windows import Reading, check_window
from authoring.workshop.oil_density import expansion_of_oil, oil_volume_at, volume_correction
from tests.workshop.numbers import answered, closed, inside, numbers

WARMTHS = numbers(253, 403)
OILS = numbers(801, 1163)
SHARES = numbers(0, 1).map(lambda share: share / 1000)
VOLUMES = numbers(1, 20)
MARKS = Interval(Fraction(0), Fraction(1))


@given(st.data(), st.lists(closed(0, 9), min_size=1, max_size=4), closed(0, 30))
def test_a_sum_that_is_met_is_met_by_every_pouring(
    data: st.DataObject, fills: list[Interval], expected: Interval
) -> None:
    """Whatever is poured inside the limits, the standing says of the total what is true of it; order does not count."""
    told = add_up(fills, expected)
    poured = sum((data.draw(inside(fill)) for fill in fills), Fraction(0))
    if told.standing is Standing.WITHIN:
        assert poured in expected
    elif told.standing is not Standing.PARTLY:
        assert poured not in expected
    assert add_up(fills[::-1], expected) == told


@given(st.data(), closed(0, 9), closed(0, 9))
def test_the_rest_and_the_part_make_the_whole(data: st.DataObject, whole: Interval, part: Interval) -> None:
    """For a whole and a part that can go together, what is left is inside the rest; otherwise there is no rest."""
    left = rest(whole, part)
    assert whole.high is not None
    assert part.low is not None
    assert isinstance(left, Impossible) == (part.low > whole.high)
    if isinstance(left, Impossible):
        return
    assert compare(left, Interval(Fraction(0), None)).standing is Standing.WITHIN
    all_of_it, taken = data.draw(inside(whole)), data.draw(inside(part))
    if taken <= all_of_it:
        assert all_of_it - taken in left


def test_an_open_whole_leaves_an_open_rest() -> None:
    """At least 7 L less exactly 4 L is at least 3 L; at most 7 L less that is from nothing to 3 L."""
    four = exactly(Fraction(4))
    assert rest(Interval(Fraction(7), None), four) == Interval(Fraction(3), None)
    assert rest(Interval(None, Fraction(7)), four) == Interval(Fraction(0), Fraction(3))


@given(st.data(), numbers(-1, 2), VOLUMES, closed(0, 1))
def test_what_is_added_brings_the_level_where_it_is_wanted(
    data: st.DataObject, reading: Fraction, between: Fraction, wanted: Interval
) -> None:
    """Any amount inside the answer lifts the level into the wanted part, and nothing is ever taken out."""
    amount = top_up(reading, wanted, between)
    assert wanted.high is not None
    assert isinstance(amount, Impossible) == (reading > wanted.high)
    if not isinstance(amount, Impossible):
        added = data.draw(inside(amount))
        assert added >= 0
        assert reading + added / between in wanted


@pytest.mark.parametrize(("reading", "between"), [("-1.01", "1"), ("2.01", "1"), ("0.5", "0"), ("0.5", "-1")])
def test_a_level_far_from_the_marks_asks_for_no_amount(reading: str, between: str) -> None:
    """Where the vessel's width is not known, or the marks hold nothing, no amount is named."""
    assert isinstance(top_up(Fraction(reading), MARKS, Fraction(between)), Impossible)


@given(VOLUMES, WARMTHS, WARMTHS, WARMTHS, SHARES)
def test_a_volume_comes_back_when_the_temperature_does(
    volume: Fraction, first: Fraction, second: Fraction, reference: Fraction, expansion: Fraction
) -> None:
    """With one reference, there and back is exactly the same volume, and a stop on the way changes nothing."""
    there = answered(volume_at(second, volume, first, expansion, reference))
    assert volume_at(first, there, second, expansion, reference) == volume
    assert answered(volume_at(reference, there, second, expansion, reference)) == answered(
        volume_at(reference, volume, first, expansion, reference)
    )


@given(VOLUMES, WARMTHS, WARMTHS, SHARES)
def test_warm_fluid_is_more_in_step_with_its_amount(
    volume: Fraction, cold: Fraction, warm: Fraction, expansion: Fraction
) -> None:
    """Growth has the sign of the warming, and doubles with the volume."""
    there = answered(volume_at(warm, volume, cold, expansion))
    assert (there > volume) == (warm > cold and expansion > 0)
    assert volume_at(warm, 2 * volume, cold, expansion) == 2 * there


def test_a_coefficient_in_the_wrong_unit_is_refused() -> None:
    """0.7 for each kelvin, meant as a thousandth, would leave less than nothing on cooling."""
    assert isinstance(volume_at(Fraction(290), Fraction(1), Fraction(300), Fraction("0.7")), Impossible)
    assert isinstance(volume_at(Fraction(290), Fraction(1), Fraction(300), Fraction("0.1")), Impossible)


@given(VOLUMES, numbers(-80, 80), SHARES, numbers(1, 5))
def test_a_level_shift_is_undone_by_pouring(
    volume: Fraction, step: Fraction, expansion: Fraction, between: Fraction
) -> None:
    """The shift, times the volume between the marks, is what the fluid grew by."""
    shift = answered(level_shift(volume, step, expansion, between))
    assert shift * between == answered(volume_at(300 + step, volume, Fraction(300), expansion)) - volume
    assert isinstance(level_shift(volume, step, expansion, Fraction(0)), Impossible)


@given(OILS, WARMTHS, WARMTHS)
def test_oil_is_more_when_warm_and_comes_back(density: Fraction, first: Fraction, second: Fraction) -> None:
    """The formula grows with warmth, is 1 at its base, and there and back is the same volume."""
    there = answered(oil_volume_at(second, Fraction(10), first, density))
    assert (there > 10) == (second > first) or there == pytest.approx(10, rel=1e-6)
    back = answered(oil_volume_at(first, Fraction(there), second, density))
    assert back == pytest.approx(10, rel=1e-12)
    assert volume_correction(Fraction("288.15"), density) == 1


@given(OILS, numbers(-40, 40))
def test_the_formula_and_its_coefficient_agree_near_the_base(density: Fraction, step: Fraction) -> None:
    """Within 40 K of the base the straight line misses nothing but the formula's second order, 1.3 (alpha t)²."""
    base = Fraction("288.15")
    expansion = answered(expansion_of_oil(density))
    line = answered(volume_at(base + step, Fraction(1), base, expansion))
    bend = 1.5 * float(expansion * step) ** 2
    assert answered(oil_volume_at(base + step, Fraction(1), base, density)) == pytest.approx(
        float(line), abs=bend + 1e-9
    )


@pytest.mark.parametrize(("density", "celsius"), [("0.88", 40), ("800", 40), ("1164", 40), ("880", 151), ("880", -51)])
def test_oil_outside_the_range_of_the_formula_is_refused(density: str, celsius: int) -> None:
    """A density in kg/L and a temperature that no sump has get no factor."""
    warmth = celsius + Fraction("273.15")
    assert isinstance(volume_correction(warmth, Fraction(density)), Impossible)
    assert isinstance(oil_volume_at(warmth, Fraction(1), Fraction(288), Fraction(density)), Impossible)
    assert isinstance(oil_volume_at(Fraction(288), Fraction(1), warmth, Fraction(density)), Impossible)


@given(st.data(), closed(273, 373), closed(273, 373), closed(330, 350))
def test_a_usable_temperature_is_wanted_allowed_and_open(
    data: st.DataObject, window: Interval, allowed: Interval, opens: Interval
) -> None:
    """A temperature that is called usable meets all three; with the circuit always open, no less is usable."""
    shut, always = check_window(window, allowed, opens), check_window(window, allowed)
    if shut.usable is not None:
        warmth = data.draw(inside(shut.usable))
        assert opens.high is not None
        assert warmth in window
        assert warmth in allowed
        assert warmth >= opens.high
        assert always.usable is not None
        assert compare(shut.usable, always.usable).standing is Standing.WITHIN
    assert (shut.usable is None) == (shut.lacking > 0)
    assert always.reading is not Reading.CIRCUIT_SHUT


@given(closed(273, 373), closed(273, 373))
def test_what_is_lacking_is_just_enough(window: Interval, allowed: Interval) -> None:
    """Steps that end as much warmer as is lacking let the level be read; a shade less does not."""
    told = check_window(window, allowed)
    if told.reading is Reading.TOO_COLD:
        assert check_window(window, total([allowed, exactly(told.lacking)])).usable is not None
        assert check_window(window, total([allowed, exactly(told.lacking * Fraction(99, 100))])).usable is None


def test_of_two_windows_one_is_shut_and_one_holds_in_part() -> None:
    """What lies below where the circuit is open for certain is left out of the usable part."""
    opens, allowed = Interval(Fraction(341), Fraction(345)), Interval(Fraction(290), Fraction(360))
    cool, hot = Interval(Fraction(303), Fraction(323)), Interval(Fraction(335), Fraction(355))
    assert check_window(cool, allowed, opens).reading is Reading.CIRCUIT_SHUT
    told = check_window(hot, allowed, opens)
    assert (told.reading, told.usable) == (Reading.HOLDS_IN_PART, Interval(Fraction(345), Fraction(355)))
