"""Texts of quantities for property tests: every form, every unit, numbers as a person may type them."""

from __future__ import annotations

from hypothesis import strategies as st

from authoring.quantities.quantity import Quantity
from authoring.quantities.read import read_quantity
from authoring.quantities.units import DIFFERENCES, UNITS, Dimension, Unit

KINDS = [dimension for dimension in Dimension if dimension not in (Dimension.COUNT, Dimension.RATIO)]


def units_of(dimension: Dimension) -> list[Unit]:
    """Return every unit of a dimension."""
    return [unit for unit in (*UNITS.values(), *DIFFERENCES.values()) if unit.dimension is dimension]


def read(text: object, dimension: Dimension | None = None) -> Quantity:
    """Read what must be a quantity."""
    quantity = read_quantity(text, dimension)
    assert isinstance(quantity, Quantity), f"{text!r}: {quantity}"
    return quantity


def numeral(whole: int, places: int) -> str:
    """Return `whole` with its last `places` digits behind the point."""
    digits = str(whole).rjust(places + 1, "0")
    return f"{digits[:-places]}.{digits[-places:]}" if places else digits


@st.composite
def windows(draw: st.DrawFn) -> tuple[str, Unit]:
    """Draw the text of a tolerance or a range, and a unit to show it in."""
    dimension = draw(st.sampled_from(KINDS))
    unit, target = draw(st.sampled_from(units_of(dimension))), draw(st.sampled_from(units_of(dimension)))
    places = draw(st.integers(0, 4))
    nominal, spread = draw(st.integers(1, 99_999)), draw(st.integers(1, 99_999))
    spread = min(spread, nominal)
    first, apart = numeral(nominal, places), numeral(spread, places)
    shape = draw(st.sampled_from(["even", "uneven", "range", "share"]))
    if shape == "even":
        return f"{first} ± {apart} {unit.symbol}", target
    if shape == "uneven":
        return f"{first} +{apart}/-0 {unit.symbol}", target
    if shape == "range" or dimension is Dimension.TEMPERATURE:
        return f"{first} to {numeral(nominal + spread, places)} {unit.symbol}", target
    return f"{first} {unit.symbol} ± {draw(st.integers(1, 100))} %", target


@st.composite
def bounds(draw: st.DrawFn) -> tuple[str, Unit]:
    """Draw the text of a minimum or a maximum, and a unit to show it in."""
    dimension = draw(st.sampled_from(KINDS))
    unit, target = draw(st.sampled_from(units_of(dimension))), draw(st.sampled_from(units_of(dimension)))
    number = numeral(draw(st.integers(1, 99_999)), draw(st.integers(0, 4)))
    return f"{draw(st.sampled_from(['at least', 'at most']))} {number} {unit.symbol}", target


@st.composite
def neighbours(draw: st.DrawFn) -> tuple[str, str, Unit]:
    """Draw two values of the same decimals, the lesser first, and a unit to show them in."""
    dimension = draw(st.sampled_from(KINDS))
    unit, target = draw(st.sampled_from(units_of(dimension))), draw(st.sampled_from(units_of(dimension)))
    places, one, more = draw(st.integers(0, 3)), draw(st.integers(1, 2_000)), draw(st.integers(1, 3))
    return f"{numeral(one, places)} {unit.symbol}", f"{numeral(one + more, places)} {unit.symbol}", target
