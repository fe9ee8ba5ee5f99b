"""Fills, expansion and level windows held against published values; sources and statuses stand in the data files."""

from __future__ import annotations

from decimal import Decimal, localcontext
from fractions import Fraction
from typing import Any

import pytest

from authoring.workshop.expansion import overflow, volume_at
from authoring.workshop.fills import add_up, rest
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, exactly
from authoring.workshop.level_windows import check_window
from authoring.workshop.oil_density import (
    LUBRICATING_OIL,
    OilGroup,
    expansion_of_oil,
    oil_volume_at,
    volume_correction,
)
from tests.outside.kept import base, between, kelvin, kept, without_a_source

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
def test_stages_add_up_as_stated(row: Row) -> None:
    """The stages meet the total exactly, or miss it by exactly the difference."""
    told = add_up([exactly(base(fill, "L")) for fill in row["fills"]], between(row["expected"], "L"))
    assert told.standing.value == row["standing"]
    assert told.gap == base(row["gap"], "L")


@pytest.mark.parametrize("row", FILLS["rests"], ids=lambda row: row["whole"])
def test_what_is_left_in_is_what_did_not_run_out(row: Row) -> None:
    """The rest is the capacity less what ran out."""
    assert rest(exactly(base(row["whole"], "L")), exactly(base(row["part"], "L"))) == exactly(base(row["rest"], "L"))


@pytest.mark.parametrize("row", OILS["growth"], ids=lambda row: row["volume"])
def test_a_volume_grows_by_what_the_worked_example_says(row: Row) -> None:
    """The example's litres, within the digits it prints."""
    volume = base(row["volume"], "L")
    warm = volume_at(kelvin(row["to"]), volume, kelvin(row["from"]), Fraction(row["expansion"]))
    assert _number(warm) - float(volume) == pytest.approx(
        float(base(row["grows"], "L")), abs=float(base(row["tolerance"], "L"))
    )


@pytest.mark.parametrize("row", OILS["overflow"], ids=lambda row: row["volume"])
def test_a_full_tank_spills_what_the_worked_example_says(row: Row) -> None:
    """The vessel's own growth is taken off."""
    spilt = overflow(base(row["volume"], "L"), Fraction(row["step"]), Fraction(row["fluid"]), Fraction(row["vessel"]))
    assert abs(spilt - base(row["spills"], "L")) <= base(row["tolerance"], "L")


@pytest.mark.parametrize("row", OILS["coefficients"], ids=lambda row: row["density"])
def test_the_formula_puts_oils_where_the_plain_table_does(row: Row) -> None:
    """The coefficient rounds to the one of the table."""
    assert _number(expansion_of_oil(Fraction(row["density"]))) == pytest.approx(float(row["expansion"]), abs=5e-6)


@pytest.mark.parametrize("row", OILS["sets"], ids=lambda row: row["celsius"])
def test_the_two_published_sets_are_one(row: Row) -> None:
    """Our constant is the printed one for Celsius, and the Fahrenheit one in other degrees."""
    assert LUBRICATING_OIL.k1 == Fraction(row["celsius"])
    assert float(LUBRICATING_OIL.k1) == pytest.approx(float(row["fahrenheit"]) * 1.8, abs=5e-5)


@pytest.mark.parametrize("row", OILS["published_factor"], ids=lambda row: row["api"])
def test_the_formula_gives_the_tabulated_factor(row: Row) -> None:
    """The table's factor to its last digit, and the gallons that the course works out with it."""
    density = Fraction("141.5") / (Fraction("131.5") + Fraction(row["api"])) * WATER_AT_60_F
    factor = _number(volume_correction(base(row["fahrenheit"], "°F"), density, _gasoline(row)))
    assert factor == pytest.approx(float(row["factor"]), abs=float(row["tolerance"]))
    gallons = oil_volume_at(
        base("60", "°F"), Fraction(row["gallons"]), base(row["fahrenheit"], "°F"), density, _gasoline(row)
    )
    assert round(_number(gallons)) == int(row["at_base"])


@pytest.mark.parametrize("row", OILS["computed_factors"], ids=lambda row: f"{row['density']} at {row['celsius']}")
def test_the_factor_is_the_one_worked_out_apart(row: Row) -> None:
    """Our factor is the one of a second computation with more digits, and the kept one."""
    ours = _number(volume_correction(kelvin(row["celsius"]), Fraction(row["density"])))
    assert ours == pytest.approx(float(row["factor"]), abs=5e-7)
    with localcontext(prec=40):
        grown = Decimal("0.6278") / Decimal(row["density"]) * (Decimal(row["celsius"]) - 15)
        second = (-grown * (1 + Decimal("0.8") * grown)).exp()
    assert ours == pytest.approx(float(second), rel=1e-14)


@pytest.mark.parametrize("row", OILS["traps"], ids=lambda row: row["wrong"])
def test_the_factor_is_not_the_one_of_the_mixed_up_degrees(row: Row) -> None:
    """The constant of one scale is never used with the degrees of the other."""
    ours = _number(volume_correction(kelvin(row["celsius"]), Fraction(row["density"])))
    assert abs(ours - float(row["wrong"])) > 0.005


@pytest.mark.parametrize("row", WINDOWS["windows"], ids=lambda row: f"{row['window']} {row['reading']}")
def test_a_window_is_open_or_shut_as_the_trade_knows(row: Row) -> None:
    """The reading holds where it does in practice, and where not, the reason and the lacking degrees are those."""
    opens = row["opens"] and between(row["opens"], "°C")
    told = check_window(between(row["window"], "°C"), between(row["allowed"], "°C"), opens)
    assert told.reading.value == row["reading"]
    assert told.lacking == Fraction(row["lacking"])
    assert (told.usable is None) == (row["reading"] not in {"holds", "holds in part"})


@pytest.mark.parametrize("data", [FILLS, OILS, WINDOWS])
def test_every_row_says_where_it_is_from(data: dict[str, list[Row]]) -> None:
    """Each row names a source and how it was read."""
    assert without_a_source(data) == []
