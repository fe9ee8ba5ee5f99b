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
)
from authoring.workshop.cooling import Estimate, time_constant, time_to_cool
from authoring.workshop.impossible import Impossible
from tests.outside.agreement import Agreement
from tests.outside.kept import base, in_unit, kelvin, kept

COOLING = kept("cooling.yaml")
BURNS = kept("burns.yaml")
MINUTE = Fraction(60)

Row = dict[str, Any]


def _fahrenheit(row: Row, *names: str) -> list[Fraction]:
    return [base(row[name], "°F") for name in names]


def _constant(row: Row) -> Estimate:
    start, second, ambient = _fahrenheit(row, "start", "second", "ambient")
    constant = time_constant(start, second, Fraction(row["after"]) * MINUTE, ambient)
    assert isinstance(constant, Estimate)
    return constant


def _wait(row: Row) -> float:
    start, target, ambient = _fahrenheit(row, "start", "target", "ambient")
    wait = time_to_cool(start, target, ambient, _constant(row))
    assert isinstance(wait, Estimate)
    return wait.value


@pytest.mark.parametrize("row", COOLING["printed"] + COOLING["in_full"], ids=lambda row: row["published"])
def test_cooling_takes_the_time_of_the_worked_example(row: Row, agree: Agreement) -> None:
    """From two readings to the time constant to the printed minutes, and to those worked out in full."""
    agree(row, _wait(row) / 60)


@pytest.mark.parametrize("row", COOLING["rates"], ids=lambda row: row["published"])
def test_two_readings_give_the_rate_of_the_worked_example(row: Row, agree: Agreement) -> None:
    """The book's rate for each minute is the time constant the other way up."""
    agree(row, -60 / _constant(row).value)


@pytest.mark.parametrize("row", COOLING["in_full"], ids=lambda row: row["start"])
def test_cooling_agrees_with_a_second_computation(row: Row) -> None:
    """Forty digits in degrees Fahrenheit give the time that we give in kelvin: the offset of a scale drops out."""
    with localcontext(prec=40):
        air = Decimal(row["ambient"])
        first, later, last = (Decimal(row[name]) - air for name in ("start", "second", "target"))
        minutes = Decimal(row["after"]) * (first / last).ln() / (first / later).ln()
    assert _wait(row) == pytest.approx(float(minutes) * 60, rel=1e-12)


@pytest.mark.parametrize("row", COOLING["never"], ids=lambda row: row["target"])
def test_nothing_cools_to_the_air_or_below(row: Row, agree: Agreement) -> None:
    """A target that is never met is refused, not answered with a number."""
    start, ambient, target = _fahrenheit(row, "start", "ambient", "target")
    told = time_to_cool(start, target, ambient, Estimate(1500.0))
    agree.not_wrong(row, "a time" if isinstance(told, Estimate) else "no time")


@pytest.mark.parametrize("row", BURNS["bands"], ids=lambda row: f"{row['surface']} {row['contact']}")
def test_the_band_is_the_published_one(row: Row, agree: Agreement) -> None:
    """Both edges of each tabulated time, for each surface."""
    band = burn_band(Surface[row["surface"]], Fraction(row["contact"]))
    assert not isinstance(band, Impossible)
    agree(row, [in_unit(band.low, "°C"), in_unit(band.high, "°C")])


def test_every_row_of_the_table_is_published() -> None:
    """No surface and no time stands in our table that the data file does not have."""
    published = {(row["surface"], Fraction(row["contact"])) for row in BURNS["bands"]}
    assert published == {(surface.name, time) for surface in Surface for time in TABULATED}


def _threshold_celsius(row: Row) -> Fraction:
    ours = burn_threshold(Surface[row["surface"]], Fraction(row["contact"]))
    assert not isinstance(ours, Impossible)
    return in_unit(ours, "°C")


@pytest.mark.parametrize("row", BURNS["not_above"], ids=lambda row: f"{row['surface']} {row['contact']}")
def test_between_the_times_no_one_allows_a_cooler_touch(row: Row, agree: Agreement) -> None:
    """Where others publish a value for a time that the table lacks, ours is no higher."""
    agree.at_most(row, _threshold_celsius(row))


@pytest.mark.parametrize("row", BURNS["stricter"], ids=lambda row: row["wrong"])
def test_a_designers_limit_is_no_threshold(row: Row, agree: Agreement) -> None:
    """What a part may reach by design is not where skin begins to burn."""
    agree.not_wrong(row, _threshold_celsius(row))


@pytest.mark.parametrize("row", BURNS["edges"], ids=lambda row: row["celsius"])
def test_the_band_is_used_from_its_lower_edge(row: Row, agree: Agreement) -> None:
    """At the lower edge a burn could happen, above the upper one it will, below there is none."""
    told = harm_of_touch(Surface[row["surface"]], kelvin(row["celsius"]), Fraction(row["contact"]))
    assert told is None or (isinstance(told, Touch) and told.severity == "moderate")
    agree(row, told and told.likelihood)
