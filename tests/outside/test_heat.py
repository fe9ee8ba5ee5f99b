"""Cooling and burns held against published values; sources and statuses stand in the data files."""

from __future__ import annotations

from decimal import Decimal, localcontext
from fractions import Fraction
from typing import Any

import pytest

from authoring.workshop.burns import (
    TABULATED,
    Surface,
    Touch,
    burn_band,
    burn_threshold,
    harm_of_touch,
    longest_touch,
)
from authoring.workshop.cooling import Estimate, time_constant, time_to_cool
from authoring.workshop.impossible import Impossible
from tests.outside.kept import base, kelvin, kept, without_a_source

COOLING = kept("cooling.yaml")
BURNS = kept("burns.yaml")
MINUTE = Fraction(60)

Row = dict[str, Any]


def _fahrenheit(row: Row, *names: str) -> list[Fraction]:
    return [base(row[name], "°F") for name in names]


@pytest.mark.parametrize("row", COOLING["examples"], ids=lambda row: row["start"])
def test_cooling_takes_the_time_of_the_worked_example(row: Row) -> None:
    """From two readings to the time constant to the printed minutes, and to those worked out in full."""
    start, second, ambient, target = _fahrenheit(row, "start", "second", "ambient", "target")
    constant = time_constant(start, second, Fraction(row["after"]) * MINUTE, ambient)
    assert isinstance(constant, Estimate)
    wait = time_to_cool(start, target, ambient, constant)
    assert isinstance(wait, Estimate)
    assert wait.value / 60 == pytest.approx(float(row["minutes"]), rel=0.005)
    assert wait.value / 60 == pytest.approx(float(row["exact"]), abs=0.005)


@pytest.mark.parametrize("row", COOLING["examples"], ids=lambda row: row["start"])
def test_cooling_agrees_with_a_second_computation(row: Row) -> None:
    """Forty digits in degrees Fahrenheit give the time that we give in kelvin: the offset of a scale drops out."""
    start, second, ambient, target = _fahrenheit(row, "start", "second", "ambient", "target")
    constant = time_constant(start, second, Fraction(row["after"]) * MINUTE, ambient)
    assert isinstance(constant, Estimate)
    wait = time_to_cool(start, target, ambient, constant)
    assert isinstance(wait, Estimate)
    with localcontext(prec=40):
        air = Decimal(row["ambient"])
        first, later, last = (Decimal(row[name]) - air for name in ("start", "second", "target"))
        minutes = Decimal(row["after"]) * (first / last).ln() / (first / later).ln()
    assert wait.value == pytest.approx(float(minutes) * 60, rel=1e-12)


@pytest.mark.parametrize("row", COOLING["traps"], ids=lambda row: row["target"])
def test_nothing_cools_to_the_air_or_below(row: Row) -> None:
    """A target that is never met is refused, not answered with a number."""
    start, ambient, target = _fahrenheit(row, "start", "ambient", "target")
    assert isinstance(time_to_cool(start, target, ambient, Estimate(1500.0)), Impossible)


@pytest.mark.parametrize("row", BURNS["bands"], ids=lambda row: f"{row['surface']} {row['contact']}")
def test_the_band_is_the_published_one(row: Row) -> None:
    """Both edges of each tabulated time, for each surface."""
    band = burn_band(Surface[row["surface"]], Fraction(row["contact"]))
    assert not isinstance(band, Impossible)
    assert (band.low, band.high) == (kelvin(row["low"]), kelvin(row["high"]))


def test_every_row_of_the_table_is_published() -> None:
    """No surface and no time stands in our table that the data file does not have."""
    published = {(row["surface"], Fraction(row["contact"])) for row in BURNS["bands"]}
    assert published == {(surface.name, time) for surface in Surface for time in TABULATED}


@pytest.mark.parametrize("row", BURNS["not_above"], ids=lambda row: f"{row['surface']} {row['contact']}")
def test_between_the_times_no_one_allows_a_cooler_touch(row: Row) -> None:
    """Where others publish a value for a time that the table lacks, ours is no higher."""
    ours = burn_threshold(Surface[row["surface"]], Fraction(row["contact"]))
    assert not isinstance(ours, Impossible)
    assert ours <= kelvin(row["low"])


@pytest.mark.parametrize("row", BURNS["traps"], ids=lambda row: row["celsius"])
def test_the_band_is_used_from_its_lower_edge(row: Row) -> None:
    """At the lower edge a burn could happen, above the upper one it will, below there is none."""
    told = harm_of_touch(Surface[row["surface"]], kelvin(row["celsius"]), Fraction(row["contact"]))
    assert told == (row["likelihood"] and Touch("moderate", row["likelihood"]))


@pytest.mark.parametrize("row", BURNS["bands"], ids=lambda row: f"{row['surface']} {row['contact']}")
def test_the_longest_touch_ends_before_the_threshold(row: Row) -> None:
    """Just below a published edge the surface may be touched that long, at the edge no longer."""
    surface, contact, edge = Surface[row["surface"]], Fraction(row["contact"]), kelvin(row["low"])
    below = longest_touch(surface, edge - Fraction(1, 100))
    at_edge = longest_touch(surface, edge)
    assert below is not None
    assert below >= contact
    assert at_edge is None or at_edge < contact


@pytest.mark.parametrize("data", [COOLING, BURNS])
def test_every_row_says_where_it_is_from(data: dict[str, list[Row]]) -> None:
    """Each row names a source and how it was read."""
    assert without_a_source(data) == []
