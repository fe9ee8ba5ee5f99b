"""The table of units, the rounding and the writing held against published tables and against a second library."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pint
import pytest
import yaml

from authoring.quantities.convert import convert
from authoring.quantities.quantity import Quantity, Refusal
from authoring.quantities.read import read_quantity
from authoring.quantities.rounding import nearest
from authoring.quantities.show import NO_BREAK, spell
from authoring.quantities.units import DIFFERENCES, UNITS, Dimension, Unit, unit_named

HERE = Path(__file__).parent


def _data(name: str) -> dict[str, Any]:
    data: dict[str, Any] = yaml.safe_load((HERE / name).read_text(encoding="utf-8"))
    return data


FACTORS = _data("units.yaml")
ROUNDING = _data("rounding.yaml")
WRITING = _data("unit_writing.yaml")
STATUSES = {"read", "restated", "memory", "computed"}


def _unit(spelling: str) -> Unit:
    unit = unit_named(spelling)
    assert unit is not None, spelling
    return unit


def _quantity(text: str) -> Quantity:
    read = read_quantity(text)
    assert isinstance(read, Quantity), read
    return read


def _half_last_digit(printed: str) -> Fraction:
    """Return how far a correctly rounded print may lie from the value it stands for."""
    exponent = Decimal(printed).as_tuple().exponent
    assert isinstance(exponent, int)
    return Fraction(10) ** exponent / 2


@pytest.mark.parametrize("row", FACTORS["factors"], ids=lambda row: row["of"])
def test_factor_rounds_to_the_published_digits(row: dict[str, str]) -> None:
    """Each factor lies within half a unit of the last digit its source prints; a skipped unit is not in the table."""
    if "skip" in row:
        assert unit_named(row["of"]) is None
        return
    ours = convert(Fraction(1), _unit(row["of"]), _unit(row["in"]))
    assert abs(ours - Fraction(row["published"])) <= _half_last_digit(row["published"])
    if "exact" in row:
        assert ours == Fraction(row["exact"])


@pytest.mark.parametrize("row", FACTORS["volumes_by_inch"], ids=lambda row: row["of"])
def test_us_volumes_are_so_many_cubic_inches(row: dict[str, str]) -> None:
    """A US volume is exactly the number of cubic inches of Handbook 44."""
    assert convert(Fraction(1), _unit(row["of"]), UNITS["in³"]) == Fraction(row["cubic_inches"])


@pytest.mark.parametrize("row", FACTORS["temperatures"], ids=lambda row: row["value"] + row["of"])
def test_temperature_converts_by_the_published_formula(row: dict[str, str]) -> None:
    """A temperature takes its offset exactly once."""
    assert convert(Fraction(row["value"]), UNITS[row["of"]], UNITS[row["in"]]) == Fraction(row["published"])


@pytest.mark.parametrize("row", FACTORS["differences"], ids=lambda row: row["value"] + row["of"])
def test_temperature_difference_has_no_offset(row: dict[str, str]) -> None:
    """A step of temperature converts by the factor alone."""
    assert convert(Fraction(row["value"]), DIFFERENCES[row["of"]], DIFFERENCES[row["in"]]) == Fraction(row["published"])


@pytest.mark.parametrize("row", FACTORS["traps"], ids=lambda row: row["of"])
def test_factor_is_not_the_misprint(row: dict[str, str]) -> None:
    """The factor is further from the known misprint than that print's own rounding allows."""
    ours = convert(Fraction(1), _unit(row["of"]), _unit(row["in"]))
    assert abs(ours - Fraction(row["wrong"])) > 10 * _half_last_digit(row["wrong"])


@pytest.mark.parametrize("row", ROUNDING["examples"] + ROUNDING["limits"], ids=lambda row: row["text"])
def test_rounding_gives_the_worked_example(row: dict[str, str]) -> None:
    """A converted value is shown as the worked example reports it."""
    assert spell(_quantity(row["text"]), _unit(row["unit"])).replace(NO_BREAK, " ") == row["shown"]


@pytest.mark.parametrize("row", ROUNDING["limits"], ids=lambda row: row["text"])
def test_a_part_the_source_refuses_is_refused_by_the_shown_limit(row: dict[str, str]) -> None:
    """What fails the original minimum fails the converted one too."""
    original = _quantity(row["text"])
    shown = _quantity(spell(original, _unit(row["unit"])))
    assert shown.low is not None
    assert convert(Fraction(row["refused_by_published"]), original.unit, shown.unit) < shown.low


@pytest.mark.parametrize("row", ROUNDING["halves"], ids=lambda row: row["value"])
def test_exact_half_rounds_to_even(row: dict[str, Any]) -> None:
    """A dropped part of exactly one half rounds to the even digit."""
    assert nearest(Fraction(row["value"]), row["places"]) == Fraction(row["rounded"])


@pytest.mark.parametrize("row", ROUNDING["leading_digit"], ids=lambda row: row["text"])
def test_significant_digits_follow_the_leading_digit(row: dict[str, Any]) -> None:
    """The count of significant digits is the one that the leading-digit rule gives."""
    number = spell(_quantity(row["text"]), _unit(row["unit"])).split(NO_BREAK)[0]
    assert len(number.replace(".", "").lstrip("0")) == row["digits"]


@pytest.mark.parametrize("row", WRITING["examples"], ids=lambda row: row["text"])
def test_units_are_written_as_published(row: dict[str, str]) -> None:
    """What an author typed is printed in the published style."""
    assert spell(_quantity(row["text"])) == row["shown"]


@pytest.mark.parametrize("row", WRITING["misleading"], ids=lambda row: row["text"])
def test_misleading_symbol_is_refused(row: dict[str, str]) -> None:
    """A symbol that means something else is refused, and the refusal points at it."""
    refusal = read_quantity(row["text"], Dimension.TORQUE)
    assert isinstance(refusal, Refusal)
    assert row["text"][refusal.start : refusal.end] == row["word"]


def test_every_row_says_how_it_is_known() -> None:
    """Each row of each file carries one of the four statuses."""
    for data in (FACTORS, ROUNDING, WRITING):
        rows = [row for part in data.values() if isinstance(part, list) for row in part]
        assert rows
        assert {row["status"] for row in rows} <= STATUSES


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
