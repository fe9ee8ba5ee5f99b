"""Fills, expansion and level windows held against published values; sources and statuses stand in the data files."""

from __future__ import annotations

from decimal import Decimal, localcontext
from fractions import Fraction
from typing import Any

import pytest
from msgspec.structs import replace

from authoring.workshop.expansion import volume_at
from authoring.workshop.fills import add_up, rest, top_up
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, Standing, difference, exactly, total
from authoring.workshop.level_windows import check_window
from authoring.workshop.oil_density import (
    LUBRICATING_OIL,
    OilGroup,
    expansion_of_oil,
    oil_volume_at,
    volume_correction,
)
from tests.outside.agreement import Agreement
from tests.outside.kept import base, between, in_unit, kelvin, kept

FILLS = kept("fills.yaml")
OILS = kept("oil_expansion.yaml")
WINDOWS = kept("level_windows.yaml")
WATER_AT_60_F = Fraction("999.016")
"""Density in kg/m³ behind the API scale; from memory."""

Row = dict[str, Any]


def _number(answer: float | Fraction | Impossible) -> float:
    assert not isinstance(answer, Impossible), answer
    return float(answer)


def _gasoline(row: Row) -> OilGroup:
    """Return the Fahrenheit set of gasolines, whose table could be read."""
    densities = Interval(Fraction(600), Fraction(1000))
    return OilGroup(Fraction(row["k0"]), Fraction(row["k1"]), Fraction(0), base("60", "°F"), Fraction(5, 9), densities)


@pytest.mark.parametrize("row", FILLS["stages"], ids=lambda row: f"{row['fills']} for {row['expected']}")
def test_stages_add_up_as_stated(row: Row, agree: Agreement) -> None:
    """The stages meet the total exactly, or miss it by exactly the difference."""
    told = add_up([exactly(base(fill, "L")) for fill in row["fills"]], between(row["expected"], "L"))
    agree(row, {"standing": told.standing.value, "gap": in_unit(told.gap, "L")})


@pytest.mark.parametrize("row", FILLS["rests"], ids=lambda row: row["published"])
def test_what_stays_in_is_the_rest(row: Row, agree: Agreement) -> None:
    """The whole without the part that ran out."""
    left = rest(exactly(base(row["whole"], "L")), exactly(base(row["part"], "L")))
    assert isinstance(left, Interval)
    assert left.low is not None
    assert left.low == left.high
    agree(row, in_unit(left.low, "L"))


@pytest.mark.parametrize("row", FILLS["ranges"], ids=lambda row: f"{row['one']} {row['other']}")
def test_ranges_add_up_at_their_worst(row: Row, agree: Agreement) -> None:
    """Ends add to ends, and a total so wide is met whatever is poured."""
    one, other = (between(row[name], "L") for name in ("one", "other"))
    agree(row, [in_unit(end, "L") for end in _ends(total([one, other]))])
    assert add_up([one, other], between(row["published"], "L")).standing is Standing.WITHIN


@pytest.mark.parametrize("row", FILLS["differences"], ids=lambda row: f"{row['one']} {row['other']}")
def test_ranges_leave_a_rest_at_their_worst(row: Row, agree: Agreement) -> None:
    """The least that is left is the least without the most; no rest is below nothing."""
    one, other = (between(row[name], "L") for name in ("one", "other"))
    agree(row, [in_unit(end, "L") for end in _ends(difference(one, other))])
    left = rest(one, other)
    assert isinstance(left, Interval)
    low, high = (base(end, "L") for end in row["published"])
    assert _ends(left) == (max(Fraction(0), low), high)


def _ends(interval: Interval) -> tuple[Fraction, Fraction]:
    assert interval.low is not None
    assert interval.high is not None
    return interval.low, interval.high


@pytest.mark.parametrize("row", FILLS["top_ups"], ids=lambda row: f"{row['reading']} to {row['wanted']}")
def test_a_part_of_the_way_takes_that_part(row: Row, agree: Agreement) -> None:
    """From a reading to a wanted mark, below the lower mark too."""
    added = top_up(Fraction(row["reading"]), exactly(Fraction(row["wanted"])), base(row["between"], "L"))
    assert isinstance(added, Interval)
    assert added.low == added.high
    agree(row, in_unit(_ends(added)[0], "L"))


@pytest.mark.parametrize("row", OILS["growth"], ids=lambda row: row["volume"])
def test_oil_grows_as_in_the_worked_example(row: Row, agree: Agreement) -> None:
    """Litres in the example are litres here."""
    volume = base(row["volume"], "L")
    warm = volume_at(kelvin(row["to"]), volume, kelvin(row["from"]), Fraction(row["expansion"]))
    assert isinstance(warm, Fraction)
    agree(row, in_unit(warm - volume, "L"))


@pytest.mark.parametrize(
    "row", OILS["coefficients"] + OILS["plain"], ids=lambda row: f"{row['density']} {row['status']}"
)
def test_the_formula_puts_oils_where_the_plain_table_does(row: Row, agree: Agreement) -> None:
    """The coefficient rounds to the kept one, and for a common oil to the one of the table."""
    agree(row, _number(expansion_of_oil(Fraction(row["density"]))))


@pytest.mark.parametrize("row", OILS["sets"], ids=lambda row: row["published"])
def test_the_two_published_sets_are_one(row: Row, agree: Agreement) -> None:
    """Our constant is the printed one for Celsius, and the other set makes an oil grow alike by its own degrees."""
    agree(row, LUBRICATING_OIL.k1)
    density = Fraction(880)
    fahrenheit = replace(LUBRICATING_OIL, k1=Fraction(row["fahrenheit"]), degree=Fraction(5, 9))
    agree(row, _number(expansion_of_oil(density, fahrenheit)) * float(density))


def _density(row: Row) -> Fraction:
    return Fraction("141.5") / (Fraction("131.5") + Fraction(row["api"])) * WATER_AT_60_F


@pytest.mark.parametrize("row", OILS["published_factor"], ids=lambda row: row["api"])
def test_the_formula_gives_the_tabulated_factor(row: Row, agree: Agreement) -> None:
    """The table's factor to its last digit."""
    agree(row, _number(volume_correction(base(row["fahrenheit"], "°F"), _density(row), _gasoline(row))))


@pytest.mark.parametrize("row", OILS["gallons"], ids=lambda row: row["published"])
def test_the_formula_gives_the_gallons_of_the_course(row: Row, agree: Agreement) -> None:
    """What the course works out with the table's factor, to the gallon."""
    warm = base(row["fahrenheit"], "°F")
    agree(row, _number(oil_volume_at(base("60", "°F"), Fraction(row["gallons"]), warm, _density(row), _gasoline(row))))


@pytest.mark.parametrize("row", OILS["computed_factors"], ids=lambda row: row["density"])
def test_the_factor_is_the_one_worked_out_apart(row: Row, agree: Agreement) -> None:
    """Our factor is the kept one, and that of a second computation with more digits."""
    ours = [_number(volume_correction(kelvin(one), Fraction(row["density"]))) for one in row["celsius"]]
    agree(row, ours)
    with localcontext(prec=40):
        grown = [Decimal("0.6278") / Decimal(row["density"]) * (Decimal(one) - 15) for one in row["celsius"]]
        second = [float((-one * (1 + Decimal("0.8") * one)).exp()) for one in grown]
    assert ours == pytest.approx(second, rel=1e-14)


@pytest.mark.parametrize("row", OILS["degrees"], ids=lambda row: str(row["wrong"]))
def test_the_factor_is_not_the_one_of_the_mixed_up_degrees(row: Row, agree: Agreement) -> None:
    """The constant of one scale is never used with the degrees of the other."""
    agree.not_wrong(row, _number(volume_correction(kelvin(row["celsius"]), Fraction(row["density"]))))


@pytest.mark.parametrize("row", WINDOWS["windows"], ids=lambda row: f"{row['window']} {row['published']['reading']}")
def test_a_window_is_open_or_shut_as_the_trade_knows(row: Row, agree: Agreement) -> None:
    """The reading holds where it does in practice, and where not, the reason and the lacking degrees are those."""
    opens = row["opens"] and between(row["opens"], "°C")
    told = check_window(between(row["window"], "°C"), between(row["allowed"], "°C"), opens)
    agree(row, {"reading": told.reading.value, "lacking": told.lacking})
    assert (told.usable is None) == (told.reading.value not in {"holds", "holds in part"})
