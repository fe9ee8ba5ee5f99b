"""How a quantity is shown: in the shop's units, never wider than it was, and readable again."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings

from authoring.quantities.convert import convert
from authoring.quantities.numerals import read_numeral, typeset, write_numeral
from authoring.quantities.quantity import Form, Quantity
from authoring.quantities.rounding import LARGEST_LOSS
from authoring.quantities.show import NO_BREAK, Limits, dual, limits, spell
from authoring.quantities.units import DIFFERENCES, UNITS, Dimension, Unit
from tests.quantities.quantity_texts import bounds, neighbours, read, units_of, windows

EXAMPLES = settings(max_examples=500)


def _plain(shown: str) -> str:
    return shown.replace(NO_BREAK, " ")


def _back(number: str | None, shown: Unit, quantity: Quantity) -> Fraction | None:
    """Return a shown number in the unit as typed."""
    return None if number is None else convert(read_numeral(number)[0], shown, quantity.unit)


@pytest.mark.parametrize(
    ("text", "unit", "shown"),
    [
        ("42 N·m", "lbf·ft", "31.0 lbf·ft"),
        ("42 ± 4 N·m", "lbf·ft", "31.0 lbf·ft ± 2.9 lbf·ft"),
        ("42 ± 4 N·m", "lbf·in", "372 lbf·in ± 35 lbf·in"),
        ("42 ± 4 N·m", "kgf·m", "3.88 kgf·m to 4.69 kgf·m"),
        ("42 N·m ± 10 %", "lbf·ft", "27.9 lbf·ft to 34.0 lbf·ft"),
        ("42 +2/-0 N·m", "lbf·ft", "30.98 lbf·ft to 32.45 lbf·ft"),
        ("40 to 44 N·m", "lbf·ft", "29.51 lbf·ft to 32.45 lbf·ft"),
        ("90 °C ± 5 °C", "°F", "194 °F ± 9 °F"),
        ("30 to 50 °C", "K", "304 K to 323 K"),
        ("33 °F", "°C", "0.6 °C"),
        ("max 3 bar", "psi", "at most 43 psi"),
        ("at least 4 mm", "in", "at least 0.16 in"),
        ("1 turn", "°", "360°"),
        ("3 turns", "°", "1080°"),
        ("1 in", "mm", "25 mm"),
        ("3 bar", "psi", "44 psi"),
        ("2 US qt", "imp pt", "3.3 imp pt"),
        ("5 t", "lb", "11\u202f000 lb"),
        ("-40 °C", "°F", "\u221240 °F"),
    ],
)
def test_a_converted_quantity(text: str, unit: str, shown: str) -> None:
    """A quantity in another unit keeps its significance, and its limits round inward."""
    assert _plain(spell(read(text), UNITS[unit])) == shown


@pytest.mark.parametrize(
    ("text", "shown"),
    [
        ("42.0 N·m", "42.0 N·m"),
        ("(42 ± 4) N·m", "42 N·m ± 4 N·m"),
        ("42 +2/-1 N·m", "(42 +2/\u22121) N·m"),
        ("42 Nm ± 10%", "42 N·m ± 10 %"),
        ("42 N·m +10/-5 %", "42 N·m +10 %/\u22125 %"),
        ("40..44.0 Nm", "40 N·m to 44.0 N·m"),
        ("min 40 mm", "at least 40 mm"),
        ("<= 40 mm", "at most 40 mm"),
        ("90 ± 5°", "90° ± 5°"),
        ("30 to 60°", "30° to 60°"),
        ("2 to 4 pieces", "2 to 4"),
        ("4 ± 1 pieces", "4 ± 1"),
        ("2 quarts".replace("quarts", "US quarts"), "2 US qt"),
    ],
)
def test_in_the_unit_as_typed_the_digits_stay(text: str, shown: str) -> None:
    """Without a conversion every digit typed is kept, and what is shown is read as the same numbers."""
    quantity = read(text)
    assert _plain(spell(quantity)) == shown
    again = read(spell(quantity), quantity.dimension)
    assert (again.nominal, again.low, again.high) == (quantity.nominal, quantity.low, quantity.high)
    assert (again.unit, again.form, again.typed) == (quantity.unit, quantity.form, quantity.typed)


def test_number_and_unit_never_part() -> None:
    """No blank in what is shown of one number may end a line, a unit of two words included."""
    assert " " not in spell(read("2 US qt"))
    assert " " not in spell(read("42 ± 4 N·m"))
    assert spell(read("40 to 44 N·m")).split(" ") == ["40\u00a0N·m", "to", "44\u00a0N·m"]


@pytest.mark.parametrize("unit", units_of(Dimension.TORQUE), ids=lambda unit: unit.symbol)
def test_neighbouring_torques_stay_two_torques(unit: Unit) -> None:
    """6 N·m and 7 N·m, 17 N·m and 18 N·m are different in every unit of torque."""
    for one, other in (("6 N·m", "7 N·m"), ("17 N·m", "18 N·m"), ("196 N·m", "197 N·m")):
        assert spell(read(one), unit) != spell(read(other), unit)


def test_limits_of_each_form() -> None:
    """The limits hold the numbers a form has; the nominal as typed, a share's limits worked out."""
    unit = UNITS["N·m"]
    assert limits(read("42 N·m"), unit) == Limits(None, "42", None, "N·m")
    assert limits(read("42 N·m ± 10 %"), unit) == Limits("37.8", "42", "46.2", "N·m")
    assert limits(read("at least 42 N·m"), unit) == Limits("42", None, None, "N·m")
    assert limits(read("at most 42 N·m"), unit) == Limits(None, None, "42", "N·m")
    assert limits(read("40 to 44 N·m"), unit) == Limits("40", None, "44", "N·m")
    assert limits(read("42 +2/-0 N·m"), UNITS["lbf·ft"]) == Limits("30.98", "30.98", "32.45", "lbf·ft")


def test_a_difference_is_shown_without_an_offset() -> None:
    """A temperature difference converts by the factor alone, whichever of the two units of that name is given."""
    quantity = read("10 K", Dimension.TEMPERATURE_DIFFERENCE)
    assert _plain(spell(quantity, UNITS["°F"])) == "18 °F"
    assert spell(quantity, UNITS["°F"]) == spell(quantity, DIFFERENCES["°F"])
    assert dual(quantity, [UNITS["°C"], UNITS["°F"]]) == ("10\u00a0°C", "18\u00a0°F")


def test_dual_takes_the_units_that_fit() -> None:
    """The first and the second unit of the shop that measure the same thing are used, the others passed over."""
    shop = [UNITS[symbol] for symbol in ("mm", "N·m", "in", "lbf·ft", "kgf·m")]
    assert dual(read("42 Nm"), shop) == ("42\u00a0N·m", "31.0\u00a0lbf·ft")
    assert dual(read("30 lbf·ft"), shop) == ("41\u00a0N·m", "30\u00a0lbf·ft")
    assert dual(read("42 Nm"), shop[:2]) == ("42\u00a0N·m", "")
    assert dual(read("2 bar"), shop) == ("2\u00a0bar", "")


def test_another_dimension_is_an_error_of_the_caller() -> None:
    """Showing a torque in millimetres is a mistake in the program, and told as one."""
    with pytest.raises(ValueError, match="torque"):
        spell(read("42 N·m"), UNITS["mm"])
    with pytest.raises(ValueError, match="torque"):
        convert(Fraction(1), UNITS["N·m"], UNITS["mm"])


@given(windows())
@EXAMPLES
def test_a_window_never_widens_and_loses_little(case: tuple[str, Unit]) -> None:
    """Read back exactly, the shown window lies inside the original and is at most a twentieth narrower."""
    text, unit = case
    quantity = read(text, unit.dimension)
    assert quantity.low is not None
    assert quantity.high is not None
    shown = limits(quantity, unit)
    low, nominal, high = (_back(number, unit, quantity) for number in (shown.low, shown.nominal, shown.high))
    assert low is not None
    assert high is not None
    assert quantity.low <= low < high <= quantity.high
    assert high - low >= (quantity.high - quantity.low) * (1 - LARGEST_LOSS)
    if quantity.form is Form.TOLERANCE:
        assert nominal is not None
        assert low <= nominal <= high
    else:
        assert nominal is None


@given(windows())
@EXAMPLES
def test_what_is_spelled_is_what_the_limits_say(case: tuple[str, Unit]) -> None:
    """The text of a converted window, read again, has exactly the limits that are held against a reading."""
    text, unit = case
    quantity = read(text, unit.dimension)
    again = read(spell(quantity, unit), unit.dimension)
    if unit == quantity.unit:
        assert (again.low, again.high) == (quantity.low, quantity.high)
    else:
        shown = limits(quantity, unit)
        numbers = [None if number is None else read_numeral(number)[0] for number in (shown.low, shown.high)]
        assert [again.low, again.high] == numbers


@given(bounds())
@EXAMPLES
def test_a_bound_never_widens(case: tuple[str, Unit]) -> None:
    """A minimum only ever rises and a maximum only ever falls, each by less than one step as typed or a tenth."""
    text, unit = case
    quantity = read(text, unit.dimension)
    again = read(spell(quantity, unit), unit.dimension)
    assert again.form is quantity.form
    step = Fraction(1, 10**quantity.places)
    for typed, shown, sign in ((quantity.low, again.low, 1), (quantity.high, again.high, -1)):
        if typed is None:
            assert shown is None
            continue
        assert shown is not None
        rise = sign * (convert(shown, unit, quantity.unit) - typed)
        assert 0 <= rise < max(step, abs(typed) / 10)


@given(neighbours())
@EXAMPLES
def test_showing_keeps_order_and_difference(case: tuple[str, str, Unit]) -> None:
    """Two different values of the same decimals stay different, and in order, in every unit."""
    lesser, greater, unit = case
    one = read(spell(read(lesser, unit.dimension), unit), unit.dimension).nominal
    other = read(spell(read(greater, unit.dimension), unit), unit.dimension).nominal
    assert one is not None
    assert other is not None
    assert one < other


@given(neighbours())
@EXAMPLES
def test_a_shown_value_is_near_and_stays_as_it_is(case: tuple[str, str, Unit]) -> None:
    """A value moves by half a step as typed at most, and what is shown is shown the same when read again."""
    text, _, unit = case
    quantity = read(text, unit.dimension)
    shown = spell(quantity, unit)
    again = read(shown, unit.dimension)
    assert spell(again) == shown
    assert again.nominal is not None
    assert quantity.nominal is not None
    moved = abs(convert(again.nominal, unit, quantity.unit) - quantity.nominal)
    assert moved <= Fraction(1, 2 * 10**quantity.places)


@given(neighbours())
@EXAMPLES
def test_conversion_is_exact_there_and_back(case: tuple[str, str, Unit]) -> None:
    """Converting to any unit and back gives the very same number."""
    text, _, unit = case
    quantity = read(text, unit.dimension)
    assert quantity.nominal is not None
    there = convert(quantity.nominal, quantity.unit, unit)
    assert convert(there, unit, quantity.unit) == quantity.nominal


@pytest.mark.parametrize(
    ("numeral", "shown"),
    [
        ("1234", "1234"),
        ("12345", "12\u202f345"),
        ("-1234567", "\u22121\u202f234\u202f567"),
        ("0.1234", "0.1234"),
        ("0.123456789", "0.123\u202f456\u202f789"),
        ("0.12345", "0.123\u202f45"),
    ],
)
def test_digits_stand_in_threes(numeral: str, shown: str) -> None:
    """More than four digits on one side of the point are grouped, and the groups are read again."""
    assert typeset(numeral) == shown
    assert read_numeral(shown)[1] == numeral


def test_a_numeral_never_loses_digits() -> None:
    """Writing a number with too few decimals is an error, not a silent rounding."""
    assert write_numeral(Fraction(-3, 8), 4) == "-0.3750"
    assert write_numeral(Fraction(1200), -2) == "1200"
    with pytest.raises(ValueError, match="does not end"):
        write_numeral(Fraction(3, 8), 2)
