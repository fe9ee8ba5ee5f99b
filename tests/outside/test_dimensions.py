"""Gauges, shrink fits and clock positions held against published values; sources stand in the data files."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from authoring.quantities.units import UNITS
from authoring.workshop.clock import angle_at, position_at
from authoring.workshop.gauges import Rule, Separation, acceptance, judge, on_the_scale, spread_of, told_apart
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, quantity_of
from authoring.workshop.shrink_fit import EXPANSIONS, Metal, grown, temperature_to_fit
from tests.outside.agreement import Agreement
from tests.outside.kept import base, between, in_unit, kelvin, kept

GAUGES = kept("gauges.yaml")
FITS = kept("shrink_fit.yaml")
CLOCK = kept("clock.yaml")
RING_STEEL = Fraction(12, 11 * 10**5)
"""The coefficient that the first entry of the bearing maker's table implies, 1/K."""
TABLE_DIGIT = Fraction(5, 10**8)
"""Half of the last digit of that table, m."""
ROOM = kelvin("20")

Row = dict[str, Any]


def _between(row: Row) -> Interval:
    return between([row["low"], row["high"]], "mm")


def _ends(interval: Interval | Impossible) -> list[Fraction]:
    """Return the ends in mm."""
    assert isinstance(interval, Interval)
    assert interval.low is not None
    assert interval.high is not None
    return [in_unit(interval.low, "mm"), in_unit(interval.high, "mm")]


@pytest.mark.parametrize("row", GAUGES["acceptance"], ids=lambda row: row["rule"])
def test_the_guard_band_is_the_published_one(row: Row, agree: Agreement) -> None:
    """Each named rule moves the limits in by as much as its source says."""
    agree(row, _ends(acceptance(_between(row), base(row["spread"], "mm"), Rule[row["rule"]])))


@pytest.mark.parametrize("row", GAUGES["verdicts"], ids=lambda row: row["reading"])
def test_a_reading_proves_what_the_worked_example_says(row: Row, agree: Agreement) -> None:
    """Inside by the spread, outside by it, and the two cases between."""
    agree(row, judge(base(row["reading"], "mm"), _between(row), base(row["spread"], "mm")).value)


@pytest.mark.parametrize("row", GAUGES["spreads"], ids=lambda row: f"{row['ends']} ends")
def test_reading_blurs_by_half_a_step_for_each_end(row: Row, agree: Agreement) -> None:
    """One judgement, half a step; two judgements, a whole one."""
    agree(row, spread_of(Fraction(row["resolution"]), row["ends"]))


@pytest.mark.parametrize(
    "row", GAUGES["look_alikes"] + GAUGES["blurred"], ids=lambda row: f"{row['one']} {row['other']} {row['spread']}"
)
def test_look_alikes_are_told_apart_or_not(row: Row, agree: Agreement) -> None:
    """The gap is exact, and the gauge's spread decides; the order of the two parts does not."""
    one, other, spread = between(row["one"], "mm"), between(row["other"], "mm"), base(row["spread"], "mm")
    told = told_apart(one, other, spread)
    assert isinstance(told, Separation)
    agree(row, {"distinction": told.distinction.value, "gap": in_unit(told.gap, "mm")})
    assert told_apart(other, one, spread) == told


@pytest.mark.parametrize("row", GAUGES["scales"], ids=lambda row: row["low"])
def test_limits_on_a_scale_are_rounded_inward(row: Row, agree: Agreement) -> None:
    """The scale's steps lie inside the limits, and so does what is shown."""
    agree(row, _ends(on_the_scale(_between(row), base(row["step"], "mm"))))
    assert list(quantity_of(_between(row), UNITS["mm"], 3).typed) == row["published"]


@pytest.mark.parametrize("row", GAUGES["widened"], ids=lambda row: row["wrong"])
def test_an_upper_limit_is_not_the_widened_one(row: Row, agree: Agreement) -> None:
    """A manual that printed its limit outside the original is not followed."""
    agree.not_wrong(row, _ends(on_the_scale(_between(row), base(row["step"], "mm")))[1])


@pytest.mark.parametrize("row", FITS["coefficients"], ids=lambda row: row["metal"])
def test_the_coefficient_is_the_tabulated_one(row: Row, agree: Agreement) -> None:
    """Each metal's coefficient of length; thrice that is the tabulated one of volume, but for its rounding."""
    ours = EXPANSIONS[Metal[row["metal"]]] * 10**6
    agree(row, ours)
    assert abs(3 * ours - Fraction(row["volume"])) <= Fraction(3, 2)


def test_every_metal_is_published() -> None:
    """No metal stands in our table that the data file does not have."""
    assert (
        {metal.name for metal in EXPANSIONS} == {row["metal"] for row in FITS["coefficients"]} == set(Metal.__members__)
    )


@pytest.mark.parametrize("row", FITS["lengths"], ids=lambda row: row["metres"])
def test_steel_grows_as_in_the_worked_example(row: Row, agree: Agreement) -> None:
    """The example's metres, within the digits it prints."""
    length = Fraction(row["metres"])
    agree(row, grown(length, kelvin(row["to"]) - kelvin(row["from"]), EXPANSIONS[Metal[row["metal"]]]) - length)


@pytest.mark.parametrize("row", FITS["bores"], ids=lambda row: f"{row['bore']} mm at {row['celsius']}")
def test_a_ring_grows_as_its_makers_table_says(row: Row, agree: Agreement) -> None:
    """Each entry to its last digit; and a shaft of the grown size needs just that temperature."""
    bore, hot = base(row["bore"], "mm"), kelvin(row["celsius"])
    grows = base(row["published"], "mm")
    agree(row, in_unit(grown(bore, hot - ROOM, RING_STEEL) - bore, "mm"))
    needed = temperature_to_fit(bore, bore + grows, Fraction(0), ROOM, RING_STEEL)
    assert not isinstance(needed, Impossible)
    assert abs(needed - hot) <= TABLE_DIGIT / (RING_STEEL * bore)


@pytest.mark.parametrize("row", CLOCK["positions"], ids=lambda row: row["position"])
def test_a_position_is_an_angle_and_back(row: Row, agree: Agreement) -> None:
    """The angle of the hour hand, and the same position from it."""
    angle = angle_at(row["position"])
    agree(row, angle)
    assert isinstance(angle, Fraction)
    assert position_at(angle) == row["position"]


@pytest.mark.parametrize("row", CLOCK["refused"], ids=lambda row: row["position"])
def test_what_no_clock_shows_is_refused(row: Row, agree: Agreement) -> None:
    """A text that is no hour gives no angle."""
    agree.not_wrong(row, "an angle" if isinstance(angle_at(row["position"]), Fraction) else "no angle")
