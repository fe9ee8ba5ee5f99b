from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from authoring.workshop.clock import angle_at, position_at
from authoring.workshop.gauges import (
    Distinction,
    Rule,
    Separation,
    Verdict,
    acceptance,
    judge,
    on_the_scale,
    spread_of,
    told_apart,
)
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, Standing, compare
from authoring.workshop.shrink_fit import EXPANSIONS, Metal, grown, temperature_to_fit
from tests.workshop.numbers import answered, closed, inside, intervals, numbers

SPREADS = numbers(0, 3)
STEPS = numbers(1, 5).map(lambda number: number / 10)
BORES = numbers(5, 200)
METALS = st.sampled_from(Metal)
POSITIONS = [f"{hour}{quarter}" for hour in range(1, 13) for quarter in ("", ":15", ":30", ":45")]


@st.composite
def _pairs(draw: st.DrawFn) -> tuple[Interval, Interval, Fraction]:
    """Return two sizes and a spread; some sizes are a few half spreads apart, which chance would hardly draw."""
    one, other, spread = draw(closed(0, 20)), draw(closed(0, 20)), draw(SPREADS)
    if draw(st.booleans()):
        start = _end(one.high) + spread * draw(st.integers(-1, 6)) / 2
        other = Interval(start, start + _end(other.high) - _end(other.low))
    return one, other, spread


@given(st.data(), _pairs())
def test_a_gauge_that_tells_apart_never_names_the_wrong_part(
    data: st.DataObject, pair: tuple[Interval, Interval, Fraction]
) -> None:
    """Readings off by up to the spread: always decided means on the right side of the middle, never wrong means out."""
    one, other, spread = pair
    told = answered(told_apart(one, other, spread))
    error = st.sampled_from([-spread, Fraction(0), spread])
    first = data.draw(inside(one)) + data.draw(error)
    second = data.draw(inside(other)) + data.draw(error)
    if told.distinction is not Distinction.NOT:
        assert first not in other
        assert second not in one
    assert (told.middle is None) == (told.distinction is not Distinction.ALWAYS)
    if told.middle is not None:
        assert min(first, second) < told.middle < max(first, second)
        assert (first < told.middle) == (one.high is not None and one.high < told.middle)


@given(_pairs())
def test_a_gauge_that_does_not_tell_apart_can_be_shown_to_fail(pair: tuple[Interval, Interval, Fraction]) -> None:
    """NOT is never said for nothing: some good part of one kind can read as the other."""
    one, other, spread = pair
    told = answered(told_apart(one, other, spread))
    reach = Interval(_end(one.low) - spread, _end(one.high) + spread)
    assert (told.distinction is Distinction.NOT) == (compare(reach, other).gap == 0)


@given(_pairs(), numbers(1, 50))
def test_telling_apart_does_not_depend_on_the_unit(pair: tuple[Interval, Interval, Fraction], scale: Fraction) -> None:
    """In another unit the gap scales and the answer stays."""
    one, other, spread = pair
    told = answered(told_apart(one, other, spread))
    scaled = answered(told_apart(_times(one, scale), _times(other, scale), spread * scale))
    assert (scaled.gap, scaled.distinction) == (told.gap * scale, told.distinction)


def test_sizes_may_be_open_away_from_each_other_only() -> None:
    """At most 7 and at least 22 are apart; two minima are not two sizes."""
    small, large = Interval(None, Fraction(7)), Interval(Fraction(22), None)
    told = answered(told_apart(small, large, Fraction(1)))
    assert told == Separation(Fraction(15), Distinction.ALWAYS, Fraction(29, 2))
    assert isinstance(told_apart(large, large, Fraction(1)), Impossible)
    assert isinstance(told_apart(small, large, Fraction(-1)), Impossible)


@pytest.mark.parametrize(("resolution", "ends"), [("0", 1), ("-0.1", 1), ("0.1", 0), ("0.1", 3)])
def test_a_gauge_without_steps_has_no_spread(resolution: str, ends: int) -> None:
    """A step is above zero and a length has one or two ends to read."""
    assert isinstance(spread_of(Fraction(resolution), ends), Impossible)


@given(st.data(), closed(), SPREADS)
def test_what_guarded_acceptance_takes_is_good(data: st.DataObject, limits: Interval, spread: Fraction) -> None:
    """A true value off the accepted reading by up to the spread keeps the limits; simple acceptance takes no less."""
    accepted = acceptance(limits, spread, Rule.GUARDED)
    assert acceptance(limits, spread, Rule.SIMPLE) == limits
    assert isinstance(accepted, Impossible) == (2 * spread > _end(limits.high) - _end(limits.low))
    if not isinstance(accepted, Impossible):
        reading = data.draw(inside(accepted))
        assert reading - spread in limits
        assert reading + spread in limits
        assert judge(reading, limits, spread) is Verdict.PROVED


@given(intervals(), SPREADS, numbers(-60, 60))
def test_a_verdict_is_true_of_every_value_behind_the_reading(
    limits: Interval, spread: Fraction, reading: Fraction
) -> None:
    """Kept: all values are inside. Broken: none is. Otherwise some are and some are not, but for a shared end."""
    behind = compare(Interval(reading - spread, reading + spread), limits)
    expected = {Standing.WITHIN: Verdict.PROVED, Standing.PARTLY: Verdict.OPEN}.get(behind.standing, Verdict.REFUTED)
    assert judge(reading, limits, spread) is expected


def test_a_negative_spread_is_refused() -> None:
    """It would widen the limits."""
    assert isinstance(acceptance(Interval(Fraction(0), Fraction(1)), Fraction(-1), Rule.GUARDED), Impossible)


@given(intervals(), STEPS)
def test_steps_of_the_scale_lie_inside_and_no_further_in_than_need_be(limits: Interval, step: Fraction) -> None:
    """Inward rounding: each end is a step, inside, and the next step outward is outside."""
    kept = on_the_scale(limits, step)
    if isinstance(kept, Impossible):
        assert _end(limits.high) - _end(limits.low) < step
        return
    assert compare(kept, limits).standing is Standing.WITHIN
    for end, outward in ((kept.low, -step), (kept.high, step)):
        assert end is None or ((end / step).denominator == 1 and end + outward not in limits)


@pytest.mark.parametrize("step", ["0", "-1"])
def test_a_scale_without_steps_is_refused(step: str) -> None:
    """Nothing can be read on it."""
    assert isinstance(on_the_scale(Interval(Fraction(0), Fraction(1)), Fraction(step)), Impossible)


@given(BORES, METALS, numbers(-100, 200))
def test_growth_is_in_step_with_size_and_warmth(bore: Fraction, metal: Metal, step: Fraction) -> None:
    """Twice the bore grows twice as much, and so does twice the step; none of either is no growth."""
    alpha = EXPANSIONS[metal]
    growth = grown(bore, step, alpha) - bore
    assert grown(2 * bore, step, alpha) == 2 * (bore + growth)
    assert grown(bore, 2 * step, alpha) == bore + 2 * growth
    assert grown(bore, Fraction(0), alpha) == bore


@given(BORES, METALS, numbers(0, 1), numbers(0, 1))
def test_the_temperature_gives_just_the_clearance(
    bore: Fraction, metal: Metal, over: Fraction, clearance: Fraction
) -> None:
    """Heated to the answer the bore is the shaft and the clearance, exactly; one that fits cold is not heated."""
    room, alpha = Fraction(293), EXPANSIONS[metal]
    hot = answered(temperature_to_fit(bore, bore + over, clearance, room, alpha))
    assert grown(bore, hot - room, alpha) == bore + over + clearance
    assert temperature_to_fit(bore, bore - over, over, room, alpha) == room
    assert temperature_to_fit(bore, bore - over, over / 2, room, alpha) == room


@given(BORES, numbers(0, 1))
def test_a_cold_shaft_needs_less_heat(bore: Fraction, over: Fraction) -> None:
    """Cooling the shaft lowers the answer, or leaves it at room temperature; brass needs less heat than steel."""
    room, steel = Fraction(293), EXPANSIONS[Metal.STEEL]
    shaft = bore + over
    warm = answered(temperature_to_fit(bore, shaft, Fraction(0), room, steel))
    cold = answered(temperature_to_fit(bore, grown(shaft, Fraction(-60), steel), Fraction(0), room, steel))
    assert cold < warm or cold == room
    assert answered(temperature_to_fit(bore, shaft, Fraction(0), room, EXPANSIONS[Metal.BRASS])) <= warm


@pytest.mark.parametrize(
    ("bore", "shaft", "clearance", "alpha"), [(0, 1, 0, 1), (1, 0, 0, 1), (1, 1, -1, 1), (1, 1, 0, 0), (-1, 1, 0, 1)]
)
def test_sizes_that_cannot_be_are_refused(bore: int, shaft: int, clearance: int, alpha: int) -> None:
    """No temperature is named for them."""
    sizes = (Fraction(bore), Fraction(shaft), Fraction(clearance))
    assert isinstance(temperature_to_fit(*sizes, measured_at=Fraction(293), expansion=Fraction(alpha)), Impossible)


@pytest.mark.parametrize("position", POSITIONS)
def test_every_position_comes_back(position: str) -> None:
    """To an angle and back."""
    angle = answered(angle_at(position))
    assert 0 <= angle < 360
    assert position_at(angle) == position


@given(numbers(-1000, 1000))
def test_the_nearest_quarter_is_named(angle: Fraction) -> None:
    """The named position is no further from the angle than half a quarter of an hour, whatever turns are in it."""
    off = (answered(angle_at(position_at(angle))) - angle) % 360
    assert min(off, 360 - off) <= Fraction(15, 4)
    assert position_at(angle + 360) == position_at(angle)


def _end(end: Fraction | None) -> Fraction:
    assert end is not None
    return end


def _times(size: Interval, scale: Fraction) -> Interval:
    return Interval(_end(size.low) * scale, _end(size.high) * scale)
