"""Gauges, shrink fits and clock positions held against published values; sources stand in the data files."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from authoring.quantities.units import UNITS
from authoring.workshop.clock import angle_at, from_behind, position_at
from authoring.workshop.gauges import Rule, Separation, acceptance, judge, on_the_scale, spread_of, told_apart
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, quantity_of
from authoring.workshop.shrink_fit import EXPANSIONS, Metal, grown, temperature_to_fit
from tests.outside.kept import base, between, kelvin, kept, without_a_source

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


@pytest.mark.parametrize("row", GAUGES["acceptance"], ids=lambda row: row["rule"])
def test_the_guard_band_is_the_published_one(row: Row) -> None:
    """Each named rule moves the limits in by as much as its source says."""
    assert acceptance(_between(row), base(row["spread"], "mm"), Rule[row["rule"]]) == between(row["accepted"], "mm")


@pytest.mark.parametrize("row", GAUGES["verdicts"], ids=lambda row: row["reading"])
def test_a_reading_proves_what_the_worked_example_says(row: Row) -> None:
    """Inside by the spread, outside by it, and the two cases between."""
    assert judge(base(row["reading"], "mm"), _between(row), base(row["spread"], "mm")).value == row["verdict"]


@pytest.mark.parametrize("row", GAUGES["spreads"], ids=lambda row: f"{row['ends']} ends")
def test_reading_blurs_by_half_a_step_for_each_end(row: Row) -> None:
    """One judgement, half a step; two judgements, a whole one."""
    assert spread_of(Fraction(row["resolution"]), row["ends"]) == Fraction(row["spread"])


@pytest.mark.parametrize("row", GAUGES["look_alikes"], ids=lambda row: f"{row['one']} {row['other']}")
def test_look_alikes_are_told_apart_or_not(row: Row) -> None:
    """The gap is exact, and the gauge's spread decides; the order of the two parts does not."""
    one, other, spread = between(row["one"], "mm"), between(row["other"], "mm"), base(row["spread"], "mm")
    told = told_apart(one, other, spread)
    assert isinstance(told, Separation)
    assert told.distinction.value == row["distinction"]
    assert told.gap == base(row["gap"], "mm")
    assert told_apart(other, one, spread) == told


@pytest.mark.parametrize("row", GAUGES["scales"], ids=lambda row: row["low"])
def test_limits_on_a_scale_are_not_the_widened_ones(row: Row) -> None:
    """The scale's steps lie inside the limits, also where a manual printed one outside; so does what is shown."""
    step = base(row["step"], "mm")
    kept_in = on_the_scale(_between(row), step)
    assert kept_in == between(row["on_scale"], "mm")
    assert kept_in != between(row["printed"], "mm")
    shown = quantity_of(_between(row), UNITS["mm"], 3)
    assert shown.typed == tuple(row["on_scale"])


@pytest.mark.parametrize("row", FITS["coefficients"], ids=lambda row: row["metal"])
def test_the_coefficient_is_the_tabulated_one(row: Row) -> None:
    """Each metal's coefficient of length; thrice that is the tabulated one of volume, but for its rounding."""
    ours = EXPANSIONS[Metal[row["metal"]]] * 10**6
    assert ours == Fraction(row["length"])
    assert abs(3 * ours - Fraction(row["volume"])) <= Fraction(3, 2)


def test_every_metal_is_published() -> None:
    """No metal stands in our table that the data file does not have."""
    assert (
        {metal.name for metal in EXPANSIONS} == {row["metal"] for row in FITS["coefficients"]} == set(Metal.__members__)
    )


@pytest.mark.parametrize("row", FITS["lengths"], ids=lambda row: row["metres"])
def test_steel_grows_as_in_the_worked_example(row: Row) -> None:
    """The example's metres, within the digits it prints."""
    length = Fraction(row["metres"])
    longer = grown(length, kelvin(row["to"]) - kelvin(row["from"]), EXPANSIONS[Metal[row["metal"]]])
    assert abs(longer - length - Fraction(row["grows"])) <= Fraction(row["tolerance"])


@pytest.mark.parametrize("row", FITS["bores"], ids=lambda row: f"{row['bore']} mm at {row['celsius']}")
def test_a_ring_grows_as_its_makers_table_says(row: Row) -> None:
    """Each entry to its last digit; and a shaft of the grown size needs just that temperature."""
    bore, hot = base(row["bore"], "mm"), kelvin(row["celsius"])
    grows = base(row["grows"], "mm")
    assert abs(grown(bore, hot - ROOM, RING_STEEL) - bore - grows) <= TABLE_DIGIT
    needed = temperature_to_fit(bore, bore + grows, Fraction(0), ROOM, RING_STEEL)
    assert not isinstance(needed, Impossible)
    assert abs(needed - hot) <= TABLE_DIGIT / (RING_STEEL * bore)


@pytest.mark.parametrize("row", CLOCK["positions"], ids=lambda row: row["position"])
def test_a_position_is_an_angle_and_back(row: Row) -> None:
    """The angle of the hour hand, the same position from it, and the position that one behind the thing sees."""
    angle = angle_at(row["position"])
    assert isinstance(angle, Fraction)
    assert angle == Fraction(row["angle"])
    assert position_at(angle) == row["position"]
    assert position_at(from_behind(angle)) == row["behind"]


@pytest.mark.parametrize("row", CLOCK["refused"], ids=lambda row: row["position"])
def test_what_no_clock_shows_is_refused(row: Row) -> None:
    """A text that is no hour gives no angle."""
    assert isinstance(angle_at(row["position"]), Impossible)


@pytest.mark.parametrize("data", [GAUGES, FITS, CLOCK])
def test_every_row_says_where_it_is_from(data: dict[str, list[Row]]) -> None:
    """Each row names a source and how it was read."""
    assert without_a_source(data) == []
