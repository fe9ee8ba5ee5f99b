"""A cure keeps what was meant: the text it quotes has the numbers of the habit that was refused."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from authoring.quantities.quantity import Form, Quantity, Refusal
from authoring.quantities.read import read_quantity
from tests.quantities.quantity_texts import numeral, read

UNITS = st.sampled_from(["N·m", "mm", "°C", "L", "bar", "US qt", "lbf·ft", "°", "kg/m³", "%"])
WHOLE = st.integers(1, 999)


def _offered(text: str) -> list[Quantity]:
    """Return what the cure of a refused text offers, each of it read."""
    refusal = read_quantity(text)
    assert isinstance(refusal, Refusal), refusal
    return [read(one) for one in re.findall(r'"([^"]+)"', refusal.cure)]


@given(WHOLE, st.integers(1, 99), UNITS)
def test_a_decimal_comma_is_a_point(whole: int, decimals: int, unit: str) -> None:
    """The comma of one or two decimals is the decimal sign."""
    (offered,) = _offered(f"{whole},{decimals} {unit}")
    assert offered.nominal == Fraction(f"{whole}.{decimals}")


@given(WHOLE, st.integers(0, 999), st.integers(1, 99), UNITS)
def test_thousands_and_decimals_are_told_apart(whole: int, group: int, decimals: int, unit: str) -> None:
    """Of a comma and a point in one number the last is the decimal sign, whichever nation wrote it."""
    for first, last in ((",", "."), (".", ",")):
        (offered,) = _offered(f"{whole}{first}{group:03}{last}{decimals} {unit}")
        assert offered.nominal == Fraction(f"{whole}{group:03}.{decimals}")


@given(WHOLE, st.integers(0, 999), UNITS)
def test_a_lone_group_of_three_is_offered_both_ways(whole: int, group: int, unit: str) -> None:
    """Three digits behind a comma may be thousands or decimals: the author chooses."""
    thousands, decimals = _offered(f"{whole},{group:03} {unit}")
    assert thousands.nominal == whole * 1000 + group
    assert decimals.nominal == Fraction(f"{whole}.{group:03}")


@given(
    WHOLE, st.integers(1, 999), st.integers(0, 3), UNITS, st.sampled_from(["-", " - ", "\u2010", "\u2011", "\u2212"])
)
def test_a_hyphen_between_two_numbers_is_a_range(low: int, more: int, places: int, unit: str, hyphen: str) -> None:
    """A hyphen or a minus between two rising numbers is offered as the range it is."""
    (offered,) = _offered(f"{numeral(low, places)}{hyphen}{numeral(low + more, places)} {unit}")
    assert (offered.form, offered.low, offered.high) == (
        Form.RANGE,
        Fraction(low, 10**places),
        Fraction(low + more, 10**places),
    )


@given(st.integers(0, 12), st.sampled_from([2, 4, 8, 16, 32, 64]), st.integers(1, 63), st.sampled_from([" ", "-"]))
def test_a_fraction_of_an_inch_is_its_decimal(whole: int, below: int, above: int, joint: str) -> None:
    """Any fraction on a rule is offered as exactly its decimal number."""
    (offered,) = _offered(f"{f'{whole}{joint}' if whole else ''}{above}/{below} in")
    assert offered.nominal == whole + Fraction(above, below)


@pytest.mark.parametrize(
    ("words", "form"),
    [
        ("up to {}", Form.MAXIMUM),
        ("not more than {}", Form.MAXIMUM),
        ("less than {}", Form.MAXIMUM),
        ("<{}", Form.MAXIMUM),
        ("=< {}", Form.MAXIMUM),
        ("{} max.", Form.MAXIMUM),
        ("{} or less", Form.MAXIMUM),
        ("no less than {}", Form.MINIMUM),
        ("over {}", Form.MINIMUM),
        ("> {}", Form.MINIMUM),
        ("=> {}", Form.MINIMUM),
        ("{} min", Form.MINIMUM),
        ("{} or more", Form.MINIMUM),
    ],
)
@given(WHOLE, st.integers(0, 3), st.sampled_from(["mm", "N·m", "°C", "L"]))
def test_a_limit_in_other_words_keeps_its_side(words: str, form: Form, number: int, places: int, unit: str) -> None:
    """However the limit is said, its cure is a limit on the same side, at the same number."""
    (offered,) = _offered(words.format(f"{numeral(number, places)} {unit}"))
    assert offered.form is form
    assert {offered.low, offered.high} == {None, Fraction(number, 10**places)}


@given(st.integers(1, 20), st.integers(1, 59), st.sampled_from([("h", "min"), ("min", "s"), ("°", "'")]))
def test_two_units_of_one_thing_are_added(large: int, small: int, units: tuple[str, str]) -> None:
    """Hours and minutes, or degrees and minutes, are offered as one exact number."""
    offered = _offered(f"{large} {units[0]} {small} {units[1]}")
    base = {one.nominal * one.unit.factor for one in offered if one.nominal is not None}
    assert len(base) == 1
    (whole,) = base
    assert whole == large * read(f"1 {units[0]}").unit.factor * (1 + Fraction(small, large * 60))
