"""The table of units, the rounding and the writing held against published tables and against a second library."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pint
import pytest

from authoring.quantities.convert import convert
from authoring.quantities.quantity import Quantity, Refusal
from authoring.quantities.read import read_quantity
from authoring.quantities.rounding import nearest
from authoring.quantities.show import NO_BREAK, spell
from authoring.quantities.units import DIFFERENCES, UNITS, Dimension, Unit, unit_named
from tests.outside.agreement import Agreement
from tests.outside.kept import kept

FACTORS = kept("units.yaml")
ROUNDING = kept("rounding.yaml")
WRITING = kept("unit_writing.yaml")
TORQUES = [unit for unit in UNITS.values() if unit.dimension is Dimension.TORQUE]

Row = dict[str, Any]


def _unit(spelling: str) -> Unit:
    unit = unit_named(spelling)
    assert unit is not None, spelling
    return unit


def _quantity(text: str) -> Quantity:
    read = read_quantity(text)
    assert isinstance(read, Quantity), read
    return read


def _converted(row: Row) -> Fraction:
    return convert(Fraction(row.get("value", "1")), _unit(row["from"]), _unit(row["to"]))


def _row_id(row: Row) -> str:
    return f"{row.get('value', '1')} {row['from']}"


@pytest.mark.parametrize("row", FACTORS["factors"] + FACTORS["in_full"], ids=lambda row: row["id"] + row["from"])
def test_factor_is_the_published_one(row: Row, agree: Agreement) -> None:
    """Each factor lies within half a unit of the last digit its source prints, and is what the definitions give."""
    agree(row, _converted(row))


@pytest.mark.parametrize("row", FACTORS["left_out"], ids=lambda row: row["unit"])
def test_a_unit_that_the_trade_does_not_use_is_left_out(row: Row, agree: Agreement) -> None:
    """Such a unit of the published table is not one of ours."""
    agree(row, unit_named(row["unit"]))


@pytest.mark.parametrize("row", FACTORS["volumes_by_inch"], ids=lambda row: row["from"])
def test_us_volumes_are_so_many_cubic_inches(row: Row, agree: Agreement) -> None:
    """A US volume is exactly the number of cubic inches of Handbook 44."""
    agree(row, convert(Fraction(1), _unit(row["from"]), UNITS["in³"]))


@pytest.mark.parametrize("row", FACTORS["temperatures"], ids=_row_id)
def test_temperature_converts_by_the_published_formula(row: Row, agree: Agreement) -> None:
    """A temperature takes its offset exactly once."""
    agree(row, convert(Fraction(row["value"]), UNITS[row["from"]], UNITS[row["to"]]))


@pytest.mark.parametrize("row", FACTORS["differences"], ids=_row_id)
def test_temperature_difference_has_no_offset(row: Row, agree: Agreement) -> None:
    """A step of temperature converts by the factor alone."""
    agree(row, convert(Fraction(row["value"]), DIFFERENCES[row["from"]], DIFFERENCES[row["to"]]))


@pytest.mark.parametrize("row", FACTORS["manuals"], ids=_row_id)
def test_a_manuals_second_unit_is_ours(row: Row, agree: Agreement) -> None:
    """What a manual prints in both units converts to the digits that it prints."""
    agree(row, _converted(row))


@pytest.mark.parametrize("row", FACTORS["misprints"], ids=_row_id)
def test_factor_is_not_the_misprint(row: Row, agree: Agreement) -> None:
    """The value is further from the known wrong one than any rounding of a factor."""
    agree.not_wrong(row, _converted(row))


@pytest.mark.parametrize("unit", TORQUES, ids=lambda unit: unit.symbol)
@pytest.mark.parametrize("row", FACTORS["neighbours"], ids=lambda row: row["one"])
def test_neighbouring_torques_stay_two_in_every_unit(row: Row, unit: Unit, agree: Agreement) -> None:
    """Two groups of bolts never read alike after conversion and rounding, and the smaller stays the smaller."""
    one, other = (spell(_quantity(row[name]), unit).split(NO_BREAK)[0] for name in ("one", "other"))
    agree(row, float(one) < float(other))


@pytest.mark.parametrize("row", ROUNDING["examples"] + ROUNDING["limits"], ids=lambda row: row["text"])
def test_rounding_gives_the_worked_example(row: Row, agree: Agreement) -> None:
    """A converted value is shown as the worked example reports it."""
    agree(row, spell(_quantity(row["text"]), _unit(row["unit"])).replace(NO_BREAK, " "))


@pytest.mark.parametrize("row", ROUNDING["limits"], ids=lambda row: row["text"])
def test_a_part_the_source_refuses_is_refused_by_the_shown_limit(row: Row) -> None:
    """What fails the original minimum fails the converted one too."""
    original = _quantity(row["text"])
    shown = _quantity(spell(original, _unit(row["unit"])))
    assert shown.low is not None
    assert convert(Fraction(row["refused"]), original.unit, shown.unit) < shown.low


@pytest.mark.parametrize("row", ROUNDING["halves"], ids=lambda row: row["value"])
def test_exact_half_rounds_to_even(row: Row, agree: Agreement) -> None:
    """A dropped part of exactly one half rounds to the even digit."""
    agree(row, nearest(Fraction(row["value"]), row["places"]))


@pytest.mark.parametrize("row", ROUNDING["leading_digit"], ids=lambda row: row["text"])
def test_significant_digits_follow_the_leading_digit(row: Row, agree: Agreement) -> None:
    """The count of significant digits is the one that the leading-digit rule gives."""
    number = spell(_quantity(row["text"]), _unit(row["unit"])).split(NO_BREAK)[0]
    agree(row, len(number.replace(".", "").lstrip("0")))


@pytest.mark.parametrize("row", WRITING["examples"], ids=lambda row: row["text"])
def test_units_are_written_as_published(row: Row, agree: Agreement) -> None:
    """What an author typed is printed in the published style."""
    agree(row, spell(_quantity(row["text"])))


@pytest.mark.parametrize("row", WRITING["misleading"], ids=lambda row: row["text"])
def test_misleading_symbol_is_refused(row: Row, agree: Agreement) -> None:
    """A symbol that means something else is refused, and the refusal points at it."""
    refusal = read_quantity(row["text"], Dimension.TORQUE)
    assert isinstance(refusal, Refusal)
    agree(row, row["text"][refusal.start : refusal.end])


SECOND_NAMES = {
    "°": "degree",
    "′": "arcminute",
    "″": "arcsecond",
    "%": "percent",
    "N/mm²": "newton / millimeter ** 2",
    "kg/m³": "kilogram / meter ** 3",
    "kg/L": "kilogram / liter",
    "g/cm³": "gram / centimeter ** 3",
    "cN·m": "centinewton * meter",
    "turn": "turn",
    "": "dimensionless",
    "mil": "thou",
    "inHg": "inch_Hg",
    "r/min": "turn / minute",
    "r/s": "turn / second",
    "US gal/min": "gallon / minute",
    "imp gal/min": "imperial_gallon / minute",
    "Ω": "ohm",
    "mΩ": "milliohm",
    "kΩ": "kiloohm",
    "MΩ": "megaohm",
    "kgf/cm²": "kilogram_force / centimeter ** 2",
    "lbf·ft": "force_pound * foot",
    "lbf·in": "force_pound * inch",
    "ozf·in": "force_ounce * inch",
    "kgf·m": "kilogram_force * meter",
    "kgf·cm": "kilogram_force * centimeter",
    "lbf": "force_pound",
    "kgf": "kilogram_force",
    "ozf": "force_ounce",
    "US gal": "gallon",
    "US qt": "quart",
    "US pt": "pint",
    "US fl oz": "fluid_ounce",
    "imp gal": "imperial_gallon",
    "imp qt": "imperial_quart",
    "imp pt": "imperial_pint",
    "imp fl oz": "imperial_fluid_ounce",
    "t": "metric_ton",
    "d": "day",
    "h": "hour",
    "min": "minute",
    "°C": "degC",
    "°F": "degF",
    "K": "kelvin",
    "m³": "meter ** 3",
    "cm³": "centimeter ** 3",
    "dm³": "decimeter ** 3",
    "mm³": "millimeter ** 3",
    "in³": "inch ** 3",
}
BASES = {
    Dimension.TORQUE: "newton * meter",
    Dimension.LENGTH: "meter",
    Dimension.VOLUME: "meter ** 3",
    Dimension.TEMPERATURE: "kelvin",
    Dimension.PRESSURE: "pascal",
    Dimension.MASS: "kilogram",
    Dimension.TIME: "second",
    Dimension.ANGLE: "degree",
    Dimension.COUNT: "dimensionless",
    Dimension.FORCE: "newton",
    Dimension.ROTATION: "turn / minute",
    Dimension.FLOW: "meter ** 3 / second",
    Dimension.VOLTAGE: "volt",
    Dimension.CURRENT: "ampere",
    Dimension.RESISTANCE: "ohm",
    Dimension.RATIO: "dimensionless",
    Dimension.DENSITY: "kilogram / meter ** 3",
}


@pytest.fixture(scope="module")
def registry() -> pint.UnitRegistry[float]:
    """Return one registry of the second library."""
    return pint.UnitRegistry()


@pytest.mark.parametrize("unit", UNITS.values(), ids=list(UNITS))
def test_second_library_agrees_on_every_unit(unit: Unit, registry: pint.UnitRegistry[float]) -> None:
    """A general-purpose library converts 0 and 1 of every unit as the table does, to twelve digits."""
    theirs = registry.parse_units(SECOND_NAMES.get(unit.symbol, unit.symbol.replace("·", "*")))
    for number in (0, 1):
        expected = registry.Quantity(number, theirs).to(BASES[unit.dimension]).magnitude
        assert float(number * unit.factor + unit.offset) == pytest.approx(expected, rel=1e-12, abs=1e-15)


@pytest.mark.parametrize(("symbol", "unit"), DIFFERENCES.items())
def test_second_library_agrees_on_temperature_steps(
    symbol: str, unit: Unit, registry: pint.UnitRegistry[float]
) -> None:
    """A step of one degree is the same size in both."""
    name = {"K": "kelvin", "°C": "delta_degC", "°F": "delta_degF"}[symbol]
    assert float(unit.factor) == pytest.approx(registry.Quantity(1, name).to("kelvin").magnitude, rel=1e-12)
