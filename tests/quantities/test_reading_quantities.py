"""What is read as a quantity, and as which."""

from __future__ import annotations

import time
from fractions import Fraction

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from authoring.quantities.grammar import QUANTITY
from authoring.quantities.quantity import Form, Quantity, Refusal
from authoring.quantities.read import read_quantity
from authoring.quantities.units import Dimension
from tests.quantities.quantity_texts import read

Numbers = tuple[Form, str | None, str | None, str | None]
WITHIN_4: Numbers = (Form.TOLERANCE, "42", "38", "46")
FROM_40: Numbers = (Form.RANGE, None, "40", "44")
LEAST: Numbers = (Form.MINIMUM, None, "40", None)
MOST: Numbers = (Form.MAXIMUM, None, None, "40")


def _numbers(quantity: Quantity) -> tuple[Form, Fraction | None, Fraction | None, Fraction | None]:
    return quantity.form, quantity.nominal, quantity.low, quantity.high


def _exact(expected: Numbers) -> tuple[Form, Fraction | None, Fraction | None, Fraction | None]:
    form, *numbers = expected
    nominal, low, high = (None if number is None else Fraction(number) for number in numbers)
    return form, nominal, low, high


@pytest.mark.parametrize(
    ("text", "unit", "expected"),
    [
        ("42 N·m", "N·m", (Form.VALUE, "42", None, None)),
        ("  42  N·m ", "N·m", (Form.VALUE, "42", None, None)),
        ("0.05 mm", "mm", (Form.VALUE, "0.05", None, None)),
        ("12\u202f000.5 mm", "mm", (Form.VALUE, "12000.5", None, None)),
        ("about 1.5 L", "L", (Form.ABOUT, "1.5", None, None)),
        ("approx. 5 min", "min", (Form.ABOUT, "5", None, None)),
        ("~ 20 kg", "kg", (Form.ABOUT, "20", None, None)),
        ("ca. 0.25 turn", "turn", (Form.ABOUT, "0.25", None, None)),
        ("850 to 900 rpm", "r/min", (Form.RANGE, None, "850", "900")),
        ("at least 6 l/min", "L/min", (Form.MINIMUM, None, "6", None)),
        ("at most 0.5 V", "V", (Form.MAXIMUM, None, None, "0.5")),
        ("4.7 kohm", "kΩ", (Form.VALUE, "4.7", None, None)),
        ("1.5 US gal/min", "US gal/min", (Form.VALUE, "1.5", None, None)),
        ("42 ± 4 N·m", "N·m", WITHIN_4),
        ("42±4 N·m", "N·m", WITHIN_4),
        ("42 +/- 4 N·m", "N·m", WITHIN_4),
        ("42 +/\u2212 4 N·m", "N·m", WITHIN_4),
        ("42 N·m ± 4 N·m", "N·m", WITHIN_4),
        ("42 N·m ± 4 Nm", "N·m", WITHIN_4),
        ("(42 ± 4) N·m", "N·m", WITHIN_4),
        ("42 N·m ± 10 %", "N·m", (Form.TOLERANCE, "42", "37.8", "46.2")),
        ("42 N·m ± 10%", "N·m", (Form.TOLERANCE, "42", "37.8", "46.2")),
        ("42 +2/-1 N·m", "N·m", (Form.TOLERANCE, "42", "41", "44")),
        ("42 -1/+2 N·m", "N·m", (Form.TOLERANCE, "42", "41", "44")),
        ("42 +2/\u22121 N·m", "N·m", (Form.TOLERANCE, "42", "41", "44")),
        ("42 N·m +2/-1 N·m", "N·m", (Form.TOLERANCE, "42", "41", "44")),
        ("42 N·m +10/-5 %", "N·m", (Form.TOLERANCE, "42", "39.9", "46.2")),
        ("42 N·m +10 %/-5 %", "N·m", (Form.TOLERANCE, "42", "39.9", "46.2")),
        ("42 +2/-0 N·m", "N·m", (Form.TOLERANCE, "42", "42", "44")),
        ("40 to 44 N·m", "N·m", FROM_40),
        ("40..44 N·m", "N·m", FROM_40),
        ("40–44 N·m", "N·m", FROM_40),
        ("40 … 44 N·m", "N·m", FROM_40),
        ("40 N·m to 44 N·m", "N·m", FROM_40),
        ("40 N·m..44 N·m", "N·m", FROM_40),
        ("5 t to 6 t", "t", (Form.RANGE, None, "5", "6")),
        ("-5 to 30 °C", "°C", (Form.RANGE, None, "-5", "30")),
        ("\u22125 °C", "°C", (Form.VALUE, "-5", None, None)),
        ("90 °C ± 5 K", "°C", (Form.TOLERANCE, "90", "85", "95")),
        ("at least 40 mm", "mm", LEAST),
        ("At least 40 mm", "mm", LEAST),
        ("min 40 mm", "mm", LEAST),
        ("min. 40 mm", "mm", LEAST),
        (">= 40 mm", "mm", LEAST),
        ("≥40 mm", "mm", LEAST),
        ("at most 40 mm", "mm", MOST),
        ("max 40 mm", "mm", MOST),
        ("<= 40 mm", "mm", MOST),
        ("≤ 40 mm", "mm", MOST),
        ("min 40 min", "min", LEAST),
        ("40 min", "min", (Form.VALUE, "40", None, None)),
        ("45°", "°", (Form.VALUE, "45", None, None)),
        ("4 pieces", "", (Form.VALUE, "4", None, None)),
    ],
)
def test_every_form_is_read_exactly(text: str, unit: str, expected: Numbers) -> None:
    """Each way to write a value, a window or a limit gives its exact numbers in the unit as typed."""
    quantity = read(text)
    assert quantity.text == text
    assert quantity.unit.symbol == unit
    assert _numbers(quantity) == _exact(expected)


def test_decimals_typed_are_kept() -> None:
    """The count of decimals and the digits typed are remembered, a share's decimals apart."""
    quantity = read("42.0 ± 0.25 N·m")
    assert (quantity.places, quantity.typed) == (2, ("42.0", "0.25", "0.25"))
    assert read("42 N·m ± 2.5 %").places == 0


@pytest.mark.parametrize("value", ["4", 4, "4 pieces", "4 pcs"])
def test_a_count_may_be_a_bare_number(value: object) -> None:
    """In the place of a count a whole number stands alone, as text or as a number."""
    quantity = read(value, Dimension.COUNT)
    assert quantity.nominal == 4
    assert quantity.dimension is Dimension.COUNT


@pytest.mark.parametrize("text", ["15 °C", "15 K", "27 °F"])
def test_degrees_are_a_difference_where_one_is_asked_for(text: str) -> None:
    """The same spelling is a temperature, or a step without an offset in the place of a difference."""
    assert read(text).dimension is Dimension.TEMPERATURE
    difference = read(text, Dimension.TEMPERATURE_DIFFERENCE)
    assert difference.dimension is Dimension.TEMPERATURE_DIFFERENCE
    assert difference.unit.offset == 0


@pytest.mark.parametrize(
    ("text", "in_newton_metres"),
    [
        ("7 Nm", "7"),
        ("7 ±0.5 N·m", "7"),
        ("62 in-lb", "7.0050593997122354"),
        ("5.2 ft-lb", "7.05025333132328208"),
        ("5.2 lbf-ft", "7.05025333132328208"),
        ("7 N.m", "7"),
        ("7 N⋅m", "7"),
        ("62 in·lbf", "7.0050593997122354"),
    ],
)
def test_torques_that_a_general_library_misreads(text: str, in_newton_metres: str) -> None:
    """Spellings that a library of units takes for a product, a sum or a subtraction are the torques they mean."""
    quantity = read(text, Dimension.TORQUE)
    assert quantity.nominal is not None
    assert quantity.nominal * quantity.unit.factor == Fraction(in_newton_metres)


@pytest.mark.parametrize("text", ["30 °C", "-5 °C", "30..50 °C"])
def test_temperatures_that_a_general_library_cannot_read(text: str) -> None:
    """A temperature with an offset is read from a plain text."""
    assert read(text, Dimension.TEMPERATURE).unit.symbol == "°C"


HARD = st.text(alphabet=" .,0123456789eE+-\u2212±/%()<>=*^NmlbftincC°·to…–½\u00a0\u202f\"'", max_size=60)


@given(st.one_of(HARD, st.text(max_size=250)), st.sampled_from([None, *Dimension]))
@settings(max_examples=1500)
@example("9" * 5000 + " m", None)
@example("1" * 190 + " mm", Dimension.LENGTH)
@example("٤ mm", None)
@example("42 max", None)
@example("1/0 in", None)
@example("1/3 to 1/2 in", None)
@example("\ud800 m", None)
def test_reading_never_raises(text: str, dimension: Dimension | None) -> None:
    """Any text is a quantity of the dimension asked for, or a refusal with words and a place inside the text."""
    told = read_quantity(text, dimension)
    if isinstance(told, Quantity):
        assert dimension in (None, told.dimension)
        return
    assert told.reason.endswith(".")
    assert told.cure.endswith((".", "?"))
    assert 0 <= told.start <= told.end <= len(text)
    assert told.start < told.end or not text


@given(
    st.one_of(st.integers(), st.floats(), st.booleans(), st.none(), st.binary(), st.lists(st.integers())),
    st.sampled_from([None, *Dimension]),
)
@example(10**5000, Dimension.COUNT)
@example(10**5000, None)
def test_reading_anything_but_text_never_raises(value: object, dimension: Dimension | None) -> None:
    """Whatever stands there instead of a text is refused, but for a whole number of pieces."""
    told = read_quantity(value, dimension)
    if isinstance(told, Quantity):
        assert dimension is Dimension.COUNT
        assert type(value) is int
    else:
        assert isinstance(told, Refusal)
        assert told.reason
        assert told.cure


@pytest.mark.parametrize(
    "piece",
    [
        "1",
        "1 ",
        " ",
        "1.",
        "1\u202f111",
        "N",
        "N ",
        "N·",
        "-",
        "1-",
        "1/",
        "1,",
        "± ",
        "+",
        "(",
        "min ",
        "to ",
        "1 to ",
    ],
)
def test_grammar_takes_time_in_proportion(piece: str) -> None:
    """The pattern of a quantity does not back up: fifty thousand characters of any one piece take no time at all.

    A pattern whose time grows with the square would need minutes.
    """
    for text in (piece * (50_000 // len(piece)), "42 N·m " + piece * (50_000 // len(piece)) + "!"):
        start = time.process_time()
        QUANTITY.fullmatch(text)
        assert time.process_time() - start < 1
