"""Which wrench does which torque, and what it is set to with an adapter."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, exactly
from authoring.workshop.wrench_fit import WrenchFault, wrench_fit
from authoring.workshop.wrench_setting import LENGTH_UNKNOWN, at_the_fastener, at_the_wrench, lever_ratio

steady = settings(max_examples=200)
tenths = st.integers(1, 5000).map(lambda number: Fraction(number, 10))
lengths = st.integers(1, 1000).map(Fraction)


def _span(low: str, high: str) -> Interval:
    return Interval(Fraction(low), Fraction(high))


@pytest.mark.parametrize(
    ("torque", "scale", "resolution", "faults", "setting"),
    [
        (_span("42", "46"), _span("10", "100"), "0.5", [], "44"),
        (_span("20", "46"), _span("10", "100"), "0.5", [], "33"),
        (_span("95", "105"), _span("10", "100"), "0.5", [WrenchFault.TOO_WEAK], None),
        (_span("5", "15"), _span("10", "100"), "0.5", [WrenchFault.TOO_STRONG], None),
        (_span("5", "105"), _span("10", "100"), None, [WrenchFault.TOO_WEAK, WrenchFault.TOO_STRONG], None),
        (_span("12", "16"), _span("10", "100"), "0.5", [WrenchFault.BELOW_A_FIFTH], "14"),
        (_span("41", "43"), _span("10", "100"), "5", [WrenchFault.NO_MARK], None),
        (_span("41", "45"), _span("10", "100"), "5", [], "45"),
        (_span("11", "13"), _span("10", "100"), "5", [WrenchFault.BELOW_A_FIFTH, WrenchFault.NO_MARK], None),
        (_span("41", "43"), _span("10", "100"), None, [], "42"),
        (_span("41", "43"), _span("10", "100"), "0", [], "42"),
        (exactly(Fraction("42.3")), _span("10", "100"), "0.5", [], "42.5"),
        (exactly(Fraction("42.25")), _span("10", "100"), "0.5", [], "42"),
        (exactly(Fraction(99)), _span("10", "99"), "2", [], "98"),
        (exactly(Fraction(100)), _span("10", "99"), "2", [WrenchFault.TOO_WEAK], None),
        (Interval(Fraction(40), None), _span("10", "100"), "0.5", [], "40"),
        (Interval(None, Fraction(40)), _span("10", "100"), "0.5", [], "40"),
        (Interval(None, None), _span("10", "100"), "0.5", [], None),
        (_span("5", "8"), Interval(Fraction(10), None), "0.5", [WrenchFault.TOO_STRONG], None),
        (_span("5", "8"), Interval(None, Fraction(20)), "0.5", [], "6.5"),
    ],
)
def test_each_fault_of_a_wrench_is_told(
    torque: Interval, scale: Interval, resolution: str | None, faults: list[WrenchFault], setting: str | None
) -> None:
    """A wrench too weak, too strong, in its lowest fifth or without a mark is told, each by its name."""
    fit = wrench_fit(torque, scale, None if resolution is None else Fraction(resolution))
    assert list(fit.faults) == faults
    assert fit.fits is (not faults)
    assert fit.setting == (None if setting is None else Fraction(setting))


def test_the_mark_nearest_to_the_nominal_is_set() -> None:
    """With uneven limits the wrench is set by the nominal, not by their middle, and never outside them."""
    limits, scale = _span("41", "50"), _span("10", "100")
    assert wrench_fit(limits, scale, Fraction(1, 2), Fraction(42)).setting == 42
    assert wrench_fit(limits, scale, Fraction(1, 2), Fraction(30)).setting == 41


@given(tenths, tenths, tenths, tenths, st.sampled_from(["0.1", "0.5", "1", "2", "2.5", "5"]))
@steady
def test_a_setting_is_a_mark_inside_everything(
    one: Fraction, other: Fraction, lowest: Fraction, full: Fraction, step: str
) -> None:
    """What is set is a whole step, inside the limits and the scale; where none is set, none was to be had."""
    torque, scale = Interval(*sorted((one, other))), Interval(*sorted((lowest, full)))
    resolution = Fraction(step)
    fit = wrench_fit(torque, scale, resolution)
    low, high, bottom, top = torque.low, torque.high, scale.low, scale.high
    assert low is not None and high is not None and bottom is not None and top is not None  # noqa: PT018  # one fact
    covered = bottom <= low and high <= top
    # All numbers are whole tenths, so every mark can be tried in integers.
    first, last, stride = (int(10 * one) for one in (low, high, resolution))
    marks = [mark for mark in range(0, 5001, stride) if first <= mark <= last]
    if low < high:
        assert (fit.setting is not None) == (covered and bool(marks))
        assert (WrenchFault.NO_MARK in fit.faults) == (covered and not marks)
    if fit.setting is not None:
        assert (fit.setting / resolution).denominator == 1
        blur = min(resolution / 2, low * Fraction(6, 100)) if low == high else 0
        assert low - blur <= fit.setting <= high + blur
        assert bottom <= fit.setting <= top


@given(tenths, tenths, lengths, st.sampled_from(["0.1", "0.5", "1"]))
@steady
def test_scale_of_units_does_not_matter(one: Fraction, other: Fraction, factor: Fraction, step: str) -> None:
    """A wrench marked in another unit fits alike: all numbers times the same leave the answer times the same."""
    torque, scale = Interval(*sorted((one, other))), _span("10", "400")
    plain = wrench_fit(torque, scale, Fraction(step))
    times = wrench_fit(at_the_wrench(torque, factor), at_the_wrench(scale, factor), Fraction(step) * factor)
    assert times.faults == plain.faults
    assert times.setting == (None if plain.setting is None else plain.setting * factor)


@given(lengths, lengths)
@steady
def test_a_longer_adapter_needs_a_lower_setting(wrench: Fraction, adapter: Fraction) -> None:
    """Lengthened, the setting is below the torque and falls with the adapter; pointing back, it is above."""
    straight, longer = lever_ratio(wrench, adapter), lever_ratio(wrench, adapter + 1)
    assert isinstance(straight, Fraction)
    assert isinstance(longer, Fraction)
    assert longer < straight < 1
    back = lever_ratio(wrench, adapter, Fraction(180))
    assert back == lever_ratio(wrench, -adapter)
    assert isinstance(back, Impossible) if adapter >= wrench else (isinstance(back, Fraction) and back > 1)


@given(lengths, lengths, st.integers(-720, 720).map(Fraction))
@steady
def test_the_angle_counts_by_its_cosine(wrench: Fraction, adapter: Fraction, angle: Fraction) -> None:
    """Any angle gives what the floating formula gives, on either side of the wrench and after any full turn."""
    ratio = lever_ratio(wrench, adapter, angle)
    assert ratio == lever_ratio(wrench, adapter, angle + 360)
    lever = float(wrench) + float(adapter) * math.cos(math.radians(angle))
    if isinstance(ratio, Fraction):
        assert float(ratio) * lever == pytest.approx(float(wrench))
        mirrored = lever_ratio(wrench, adapter, -angle)
        assert isinstance(mirrored, Fraction)
        assert float(mirrored) == pytest.approx(float(ratio))
    else:
        assert lever <= 1e-9


@given(tenths, lengths, lengths)
@steady
def test_what_is_set_gives_what_is_wanted(torque: Fraction, wrench: Fraction, adapter: Fraction) -> None:
    """Set for an adapter and read back through it, the torque is the same to the last digit; open ends stay open."""
    ratio = lever_ratio(wrench, adapter)
    assert isinstance(ratio, Fraction)
    for wanted in (exactly(torque), Interval(torque, None), Interval(None, torque)):
        assert at_the_fastener(at_the_wrench(wanted, ratio), ratio) == wanted


def test_a_wrench_of_unknown_length_asks_for_it() -> None:
    """Without the wrench's length there is a question instead of a number, except where the adapter changes nothing."""
    adapter = Fraction(60)
    assert lever_ratio(None, adapter) is LENGTH_UNKNOWN
    assert lever_ratio(None, adapter, Fraction(45)) is LENGTH_UNKNOWN
    assert "90°" in LENGTH_UNKNOWN.cure
    for angle in (90, 270, -90):
        assert lever_ratio(None, adapter, Fraction(angle)) == 1
    assert lever_ratio(None, Fraction(0)) == 1


def test_an_adapter_that_reaches_the_grip_is_impossible() -> None:
    """Pointing back to the grip or beyond, no setting gives any torque, and the adapter is to be looked at."""
    for adapter in (300, 400):
        refused = lever_ratio(Fraction(300), Fraction(adapter), Fraction(180))
        assert isinstance(refused, Impossible)
        assert "adapter" in refused.cure
    assert isinstance(lever_ratio(Fraction(0), Fraction(60)), Impossible)


@given(tenths, st.sampled_from(["0.5", "1", "2", "5"]), st.booleans())
@steady
def test_a_torque_with_one_limit_is_set_on_its_side(limit: Fraction, step: str, least: bool) -> None:  # noqa: FBT001  # drawn at random
    """What is asked at least is never set below, and what is allowed at most never above."""
    torque = Interval(limit, None) if least else Interval(None, limit)
    fit = wrench_fit(torque, Interval(Fraction(1), Fraction(600)), Fraction(step))
    if fit.setting is not None:
        assert fit.setting in torque
    elif WrenchFault.NO_MARK in fit.faults:
        assert not least
        assert limit < Fraction(step)
