"""Every unit of a dimension shown in every other one: a window never widens, never vanishes, and is read again."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from authoring.quantities.convert import convert
from authoring.quantities.quantity import Form, Quantity
from authoring.quantities.rounding import LARGEST_LOSS
from authoring.quantities.show import dual, limits, spell
from authoring.quantities.units import PLAIN_NUMBER, UNITS, Dimension, Unit
from tests.quantities.quantity_texts import numeral, read, units_of

MEASURED = [dimension for dimension in Dimension if dimension is not Dimension.COUNT]
FEW = settings(max_examples=12, deadline=None)


def _pairs(dimension: Dimension) -> list[tuple[Unit, Unit]]:
    units = units_of(dimension)
    return [(one, other) for one in units for other in units]


def _inside(quantity: Quantity, shown: Quantity) -> tuple[Fraction, Fraction]:
    """Return the ends of what is shown, in the unit as typed."""
    assert shown.low is not None
    assert shown.high is not None
    return convert(shown.low, shown.unit, quantity.unit), convert(shown.high, shown.unit, quantity.unit)


@st.composite
def _windows(draw: st.DrawFn) -> str:
    """Draw a window without its unit: even, uneven or a range; narrow ones as often as wide ones."""
    places = draw(st.integers(0, 3))
    nominal = draw(st.one_of(st.integers(1, 20), st.integers(21, 99_999)))
    plus = draw(st.one_of(st.integers(1, 3), st.integers(1, nominal)))
    minus = draw(st.integers(0, nominal))
    first = numeral(nominal, places)
    return draw(
        st.sampled_from(
            [
                f"({first} ± {numeral(min(plus, nominal), places)})",
                f"({first} +{numeral(plus, places)}/-{numeral(minus, places)})",
                f"{first} to {numeral(nominal + plus, places)}",
            ]
        )
    )


@pytest.mark.parametrize("dimension", MEASURED, ids=lambda dimension: dimension.value)
@given(window=_windows())
@FEW
def test_a_window_lies_inside_itself_in_every_unit(dimension: Dimension, window: str) -> None:
    """Whatever the pair of units, what is shown and read again lies inside, keeps a width and loses a twentieth."""
    for unit, target in _pairs(dimension):
        quantity = read(f"{window} {unit.symbol}", dimension)
        assert quantity.low is not None
        assert quantity.high is not None
        low, high = _inside(quantity, read(spell(quantity, target), dimension))
        assert quantity.low <= low < high <= quantity.high, (unit.symbol, target.symbol)
        assert high - low >= (quantity.high - quantity.low) * (1 - LARGEST_LOSS), (unit.symbol, target.symbol)


@pytest.mark.parametrize("dimension", MEASURED, ids=lambda dimension: dimension.value)
@given(number=st.integers(1, 99_999), places=st.integers(0, 3), word=st.sampled_from(["at least", "at most"]))
@FEW
def test_a_limit_moves_inward_in_every_unit(dimension: Dimension, number: int, places: int, word: str) -> None:
    """A minimum never falls and a maximum never rises, whatever the pair of units."""
    for unit, target in _pairs(dimension):
        quantity = read(f"{word} {numeral(number, places)} {unit.symbol}", dimension)
        again = read(spell(quantity, target), dimension)
        assert again.form is quantity.form
        typed, shown = (one.low if one.form is Form.MINIMUM else one.high for one in (quantity, again))
        assert typed is not None
        assert shown is not None
        moved = convert(shown, target, unit) - typed
        assert moved >= 0 if quantity.form is Form.MINIMUM else moved <= 0, (unit.symbol, target.symbol)


@pytest.mark.parametrize("dimension", MEASURED, ids=lambda dimension: dimension.value)
@given(number=st.integers(1, 999), places=st.integers(0, 3))
@FEW
def test_neighbours_stay_two_in_every_unit(dimension: Dimension, number: int, places: int) -> None:
    """Two values that differ in their last place are two texts, in every unit (common practice)."""
    for unit, target in _pairs(dimension):
        one, next_one = (read(f"{numeral(number + more, places)} {unit.symbol}", dimension) for more in (0, 1))
        assert spell(one, target) != spell(next_one, target), (unit.symbol, target.symbol)


@pytest.mark.parametrize("unit", units_of(Dimension.TORQUE), ids=lambda unit: unit.symbol)
@pytest.mark.parametrize("lesser", range(1, 30))
def test_torques_of_a_wrench_stay_apart(unit: Unit, lesser: int) -> None:
    """From 1 N·m to 30 N·m no two whole torques look alike in any unit, nor do their windows' ends meet."""
    texts = (f"{lesser} N·m", f"{lesser + 1} N·m")
    assert spell(read(texts[0]), unit) != spell(read(texts[1]), unit)
    window = read(f"{lesser} to {lesser + 1} N·m")
    shown = limits(window, unit)
    assert shown.low != shown.high


def test_a_ratio_is_shown_as_a_percentage_and_back() -> None:
    """A plain number and a percentage are one dimension, and convert exactly."""
    assert read(spell(read("0.12 to 0.16", Dimension.RATIO), UNITS["%"]), Dimension.RATIO).low == 12
    assert read(spell(read("(12 ± 2) %"), PLAIN_NUMBER), Dimension.RATIO).low == Fraction(1, 10)


@pytest.mark.parametrize(
    ("text", "units", "shown"),
    [
        ("42 N·m ± 10 %", ("N·m",), "42 N·m ± 10 %, that is 37.8 N·m to 46.2 N·m"),
        ("42 N·m +10/-5 %", ("N·m",), "42 N·m +10 %/\u22125 %, that is 39.9 N·m to 46.2 N·m"),
        ("10 bar ± 2.5 %", (), "10 bar ± 2.5 %, that is 9.75 bar to 10.25 bar"),
        ("42 N·m ± 10 %", ("lbf·ft",), "27.9 lbf·ft to 34.0 lbf·ft"),
        ("42 ± 4 N·m", ("N·m",), "42 N·m ± 4 N·m"),
    ],
)
def test_a_percentage_shows_its_limits(text: str, units: tuple[str, ...], shown: str) -> None:
    """Beside a tolerance in percent stand the numbers that a gauge is held against; without one nothing is added."""
    assert dual(read(text), [UNITS[unit] for unit in units])[0].replace("\u00a0", " ") == shown


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("0.25 turn", "0.25 turn"),
        ("1 turn", "1 turn"),
        ("3 turns", "3 turns"),
        ("0.5 to 1.5 rev", "0.5 turn to 1.5 turns"),
    ],
)
def test_turns_have_a_plural(text: str, shown: str) -> None:
    """A turn is written with its name, in the plural above one."""
    assert spell(read(text)).replace("\u00a0", " ") == shown
