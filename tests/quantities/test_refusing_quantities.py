"""What is refused: each with its reason, a cure that can be pasted, and the smallest stretch at fault."""

from __future__ import annotations

import re

import pytest

from authoring.quantities.misleading import MISLEADING, UNPLACED
from authoring.quantities.quantity import Quantity, Refusal
from authoring.quantities.read import read_quantity
from authoring.quantities.units import SPELLINGS, Dimension, unit_named
from tests.quantities.quantity_texts import read


def _refused(value: object, dimension: Dimension | None = None) -> Refusal:
    refusal = read_quantity(value, dimension)
    assert isinstance(refusal, Refusal), refusal
    return refusal


@pytest.mark.parametrize(
    ("text", "fault", "reason", "cure"),
    [
        ("42 mN", "mN", "millinewton", '"N·m"'),
        ("42 nm", "nm", "newton metre", '"N·m"'),
        ("42 m·N", "m·N", "millinewton", '"N·m"'),
        ("42 J", "J", "energy", '"N·m"'),
        ("4 kg·m", "kg·m", "mass", '"kgf·m"'),
        ("30 lb/ft", "lb/ft", "divides", '"lbf·ft"'),
        ("1,5 mm", "1,5", "decimal comma", '"1.5 mm"'),
        ("1,5 ± 0,5 mm", "1,5", "decimal comma", '"1.5 ± 0.5 mm"'),
        ("1,000 mm", "1,000", "country", '"1000 mm" or "1.000 mm"'),
        ("1,000,000 mm", "1,000,000", "commas", '"1000000 mm"'),
        ("1 1/4 in", "1 1/4", "fraction", '"1.25 in"'),
        ("1-1/4 in", "1-1/4", "fraction", '"1.25 in"'),
        ("1/4 in", "1/4", "fraction", '"0.25 in"'),
        ("1½ in", "1½", "fraction", '"1.5 in"'),
        ("1/3 in", "1/3", "fraction", "decimals"),
        ("42", "42", "without a unit", "42 N·m"),
        ("40 to 44", "40", "without a unit", "42 N·m"),
        ("2 gal", "gal", "US", '"US gal" or "imp gal"'),
        ("3 pints", "pints", "UK", '"US pt" or "imp pt"'),
        ("3 quarts", "quarts", "UK", '"US qt" or "imp qt"'),
        ("8 fl oz", "fl oz", "UK", '"US fl oz" or "imp fl oz"'),
        ("44 to 40 N·m", "44 to 40", "upside down", '"40 to 44 N·m"'),
        ("40 to 40 N·m", "40 to 40", "without any width", '"40 N·m"'),
        ("42 ± 0 N·m", "42 ± 0", "without any width", '"42 N·m"'),
        ("42 ± -4 N·m", "± -", "below zero", '"42 ± 4 N·m"'),
        ("42 +2/+1 N·m", "+2/+1", "same sign", '"+2/-1"'),
        ("42 N·m +10 %/-5", "+10 %/-5", "Only one side", '"+10/-5 %"'),
        ("42 ± 10 % N·m", "± 10 %", "before the unit", '"42 N·m ± 10 %"'),
        ("20 °C ± 10 %", "± 10 %", "scale", '"± 5 °C"'),
        ("4 ± 5 N·m", "4 ± 5", "below zero", "smaller"),
        ("-4 N·m", "-4", "below zero", "minus"),
        ("-300 °C", "-300", "absolute zero", "unit"),
        ("4.5 pieces", "4.5", "whole", '"4"'),
        ("42 kpa", "kpa", "not a unit", '"kPa"'),
        ("42 Nmm2", "Nmm2", "not a unit", '"N/mm2"'),
        ("42 KG", "KG", "not a unit", '"kg"'),
        ("42 m/s", "m/s", "speed", "such as"),
        ("42 blorg", "blorg", "not a unit", "such as"),
        ("20 C", "C", "coulomb", '"°C"'),
        ("5'", "'", "feet", '"ft"'),
        ("9**9**9 m", "9**9", "sum", "in full"),
        ("10^3 m", "10^3", "sum", "in full"),
        ("1e400 m", "1e400", "power of ten", "in full"),
        ("1E3 m", "1E3", "power of ten", "in full"),
        ("inf m", "inf", "measured", "in full"),
        ("nan", "nan", "measured", "in full"),
        ("1" * 17 + " m", "1" * 17, "digits", "can be measured"),
        ("0." + "1" * 17 + " m", "0." + "1" * 17, "digits", "can be measured"),
        ("1" * 4000 + " m", "1" * 4000 + " m", "4002 characters", "such as"),
        ("40-44 N·m", "40-44", "hyphen", '"40 to 44 N·m"'),
        ("12 000 mm", "12 000", "split", '"12000 mm"'),
        (".5 mm", ".5", "starts with", '"0.5 mm"'),
        ("5. mm", "5.", "ends with", '"5 mm"'),
        ("40 mm min", "min", "behind", '"at least 40 mm"'),
        ("40 max", "max", "behind", "unit behind the number"),
        ("<40 mm", "<", "leaves", '"at most 40 mm"'),
        ("> 40 mm", "> ", "leaves", '"at least 40 mm"'),
        ("circa 40 mm", "circa", "rough", '"about 40 mm"'),
        ("about 40 mm ± 2 mm", "about", "limits", "out"),
        ("about 42 N·m", "42", "held to it", "nominal"),
        ("≈ 90 °C", "90", "held to it", "limits"),
        ("between 40 and 44 N·m", "between 40 and ", "first number", '"40 to 44 N·m"'),
        ("42 plus or minus 4 N·m", "plus or minus", "sign", '"42 ± 4 N·m"'),
        ("at least 40 ± 3 mm", "± 3", "one number", '"at least 40 mm"'),
        ("30 mm to 4 cm", "cm", "different units", '"mm"'),
        ("42 N·m Nm", "Nm", "twice", "once"),
        ("(42 N·m)", "(42 N·m)", "Brackets", '"(42 ± 4) N·m"'),
        ("(42 ± 4 N·m", "(", "partner", '"(42 ± 4) N·m"'),
        ("5 ft 3 in", "5 ft 3 in", "Two units", '"5.25 ft" or "63 in"'),
        ("10 N·m and 4 N·m", "and", "behind the unit", "alone"),
        ("42 N·m;", ";", "no place", "out"),
        ("0 N·m", "0", "of nothing", "leave the key out"),
        ("0.0 min", "0.0", "of nothing", "leave the key out"),
        ("M10", "M", "start", "such as"),
        ("N·m", "N·m", "no number", "such as"),
        ("٤ mm", "٤", "0 to 9", '"4 mm"'),
        ("4\u200b mm", "\u200b", "seen", "again"),
        ("", "", "no number", "such as"),
    ],
)
def test_each_fault_has_its_reason_cure_and_place(text: str, fault: str, reason: str, cure: str) -> None:
    """A refusal says why, what to write instead, and underlines the smallest stretch at fault."""
    refusal = _refused(text)
    assert text[refusal.start : refusal.end] == fault
    assert reason in refusal.reason
    assert cure in refusal.cure


@pytest.mark.parametrize(
    "text",
    ["1,5 mm", "1,000 mm", "1 1/4 in", "½ in", "44 to 40 N·m", "42 ± -4 N·m", "40-44 N·m", "12 000 mm", ".5 mm",
     "5. mm", "40 mm min", "<40 mm", "42 plus or minus 4 N·m", "٤ mm", "42 ± 0 N·m", "1,5 to 2,5 mm"],
)  # fmt: skip
def test_a_cure_that_gives_a_text_gives_a_readable_one(text: str) -> None:
    """Whatever a cure quotes can be pasted in place of the text and is read."""
    offered = re.findall(r'"([^"]+)"', _refused(text).cure)
    assert offered
    for one in offered:
        read(one)


@pytest.mark.parametrize(
    ("text", "wanted", "given", "cure"),
    [
        ("42 mm", Dimension.TORQUE, "length", '"N·m"'),
        ("42 N·m", Dimension.LENGTH, "torque", '"mm"'),
        ("42 N", Dimension.TORQUE, "force", '"N·m"'),
        ("10 lb", Dimension.FORCE, "mass", '"lbf"'),
        ("10 oz", Dimension.VOLUME, "mass", '"US fl oz"'),
        ("5 m", Dimension.TIME, "length", '"min"'),
        ("20°", Dimension.TEMPERATURE, "angle", '"°C"'),
        ("20 °C", Dimension.ANGLE, "temperature", '"°"'),
        ("3 mm", Dimension.COUNT, "length", '"4"'),
        ("10 %", Dimension.TORQUE, "ratio", '"42 N·m ± 10 %"'),
    ],
)
def test_a_unit_in_the_wrong_place_names_both_dimensions(text: str, wanted: Dimension, given: str, cure: str) -> None:
    """The refusal names what the unit measures, what the place takes, and a unit that fits."""
    refusal = _refused(text, wanted)
    assert given in refusal.reason
    assert wanted.value in refusal.reason
    assert cure in refusal.cure
    assert unit_named(text[refusal.start : refusal.end]) is not None


@pytest.mark.parametrize("value", [42, 4.2, float("nan"), float("inf"), 10**5000], ids=type)
def test_a_bare_number_is_refused_with_the_unit_it_lacks(value: object) -> None:
    """A number that is no text has no unit; the cure shows one of the dimension asked for."""
    refusal = _refused(value, Dimension.VOLUME)
    assert "without a unit" in refusal.reason
    assert '"42 L"' in refusal.cure


@pytest.mark.parametrize("value", [True, None, ["42 N·m"], {"torque": 42}, b"42 mm", object()])
def test_what_is_no_text_is_refused(value: object) -> None:
    """Truth values, lists, mappings, nothing: no quantity, for a count neither."""
    assert "not a quantity" in _refused(value, Dimension.COUNT).reason


@pytest.mark.parametrize("value", [4.0, 10**12, "4.5", -4, "-4"])
def test_a_count_is_whole_and_sensible(value: object) -> None:
    """Half a bolt, minus four bolts and a billion bolts are refused."""
    assert "count" in _refused(value, Dimension.COUNT).reason.casefold()


def test_misleading_spellings_stay_out_of_the_table() -> None:
    """No spelling that has its own refusal is read as a unit as well."""
    assert not (set(MISLEADING) | set(UNPLACED)) & set(SPELLINGS)
    assert MISLEADING
    assert UNPLACED


def test_the_nearest_spelling_fits_the_place() -> None:
    """A mistyped unit is answered with one of the dimension asked for."""
    assert '"kPa"' in _refused("42 kPA", Dimension.PRESSURE).cure
    near = re.findall(r'"([^"]+)"', _refused("42 Nmn", Dimension.TORQUE).cure)
    assert near
    unit = unit_named(near[0])
    assert unit is not None
    assert unit.dimension is Dimension.TORQUE


def test_a_good_text_is_no_refusal() -> None:
    """The helper of these tests would notice a text that is read after all."""
    assert isinstance(read_quantity("42 N·m", Dimension.TORQUE), Quantity)
