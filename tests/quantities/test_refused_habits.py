"""Habits of the trade that are refused: each has its own reason, and a cure that says what is read instead."""

from __future__ import annotations

import re
import time

import pytest

from authoring.quantities.grammar import LONGEST
from authoring.quantities.misleading import MISLEADING, UNPLACED
from authoring.quantities.quantity import Quantity, Refusal
from authoring.quantities.read import read_quantity
from authoring.quantities.units import SPELLINGS, Dimension
from tests.quantities.quantity_texts import read

Case = tuple[str, str, str, str]

NUMBERS: list[Case] = [
    ("1,000.5 mm", "1,000.5", "comma and a point", '"1000.5 mm"'),
    ("1.000,5 mm", "1.000,5", "comma and a point", '"1000.5 mm"'),
    ("1,5.25 mm", "1,5.25", "comma and a point", "in full"),
    ("1.500.000 mm", "1.500.000", "more than one point", '"1500000 mm"'),
    ("1.5.2 mm", "1.5.2", "more than one point", "in full"),
    ("1'000 mm", "1'000", "split", '"1000 mm"'),
    ("1\u00a0000 mm", "1\u00a0000", "split", '"1000 mm"'),
    ("1_000 mm", "1_000", "split", '"1000 mm"'),
    ("1:30 h", "1:30 h", "colon", '"90 min"'),
    ("2:30 min", "2:30 min", "colon", '"150 s"'),
    ("12:00", "12:00", "colon", "clock face"),
    ("half a turn", "half a ", "digits", '"0.5 turn"'),
    ("quarter turn", "quarter ", "digits", '"0.25 turn"'),
    ("three-quarters of a turn", "three-quarters of a ", "digits", '"0.75 turn"'),
    ("half 5 mm", "half ", "digits", "one number and one unit"),
    ("–5 °C", "–", "dash", '"-5 °C"'),
    ("—5 °C", "—", "dash", '"-5 °C"'),
]
WINDOWS: list[Case] = [
    ("42 N·m +4/-2", "+4/-2", "no unit", '"42 +4/-2 N·m"'),
    ("42 +4 N·m/-2 N·m", "42 +4 N·m/-2 N·m", "each side", '"42 +4/-2 N·m"'),
    ("42 N·m +4 N·m / -2 N·m", "42 N·m +4 N·m / -2 N·m", "each side", '"42 +4/-2 N·m"'),
    ("42 +4 -2 N·m", "+4 -2", "not parted", '"42 +4/-2 N·m"'),
    ("42 N·m +4", "42 N·m +4", "one side", '"42 +4/-0 N·m"'),
    ("42 -2 N·m", "42 -2 N·m", "one side", '"42 +0/-2 N·m"'),
    ("40 -44 N·m", "40 -44 N·m", "one side", '"40 to 44 N·m"'),
    ("42 N·m ± 4", "± 4", "no unit", '"42 ± 4 N·m"'),
    ("40 N·m to 44", "to 44", "no unit", '"40 to 44 N·m"'),
    ("42 (±4) N·m", "42 (±4) N·m", "brackets", '"42 ±4 N·m"'),
    ("42 N·m (±4)", "42 N·m (±4)", "brackets", '"42 ±4 N·m"'),
    ("42 N·m (± 10 %)", "42 N·m (± 10 %)", "brackets", '"42 N·m ± 10 %"'),
    ("42 N·m (+4/-2)", "42 N·m (+4/-2)", "brackets", '"42 +4/-2 N·m"'),
    ("42 +10%/-5% N·m", "+10%/-5%", "before the unit", '"42 N·m +10%/-5%"'),
    ("≧ 40 N·m", "≧ ", "sign", '"≥ 40 N·m"'),
    ("42 N·m ± 10 percent", "percent", "sign", '"42 N·m ± 10 %"'),
    ("42 N·m ± 10 pct", "pct", "sign", '"42 N·m ± 10 %"'),
    ("42 N·m ± 4 blorg", "blorg", "not a unit", "such as"),
    ("42 N·m ± 4 lbf·ft", "lbf·ft", "different units", '"N·m"'),
    ("50 % ± 5 %", "± 5 %", "may mean points", '"(50 ± 5) %"'),
    ("40 - 44 N·m", "40 - 44", "hyphen", '"40 to 44 N·m"'),
    ("40\u221244 N·m", "40\u221244", "hyphen", '"40 to 44 N·m"'),
    ("40\u201144 N·m", "40\u201144", "hyphen", '"40 to 44 N·m"'),
    ("40 N·m - 44 N·m", "40 N·m - 44", "hyphen", '"40 N·m to 44 N·m"'),
    ("5 - 3 L", "5 - 3", "hyphen", '"3 to 5 L"'),
    ("from 5 to 3 L", "from 5 to ", "first number", '"3 to 5 L"'),
    ("between 40 N·m and 44 N·m", "between 40 N·m and ", "first number", '"40 N·m to 44 N·m"'),
]
LIMITS: list[Case] = [
    ("up to 50 °C", "up to ", "other words", '"at most 50 °C"'),
    ("no more than 50 °C", "no more than ", "other words", '"at most 50 °C"'),
    ("not above 50 °C", "not above ", "other words", '"at most 50 °C"'),
    ("maximum of 50 °C", "maximum of ", "other words", '"at most 50 °C"'),
    ("not less than 3 mm", "not less than ", "other words", '"at least 3 mm"'),
    ("min. of 3 mm", "min. of ", "other words", '"at least 3 mm"'),
    ("less than 3 mm", "less than ", "leaves", '"at most 3 mm"'),
    ("Under 3 mm", "Under ", "leaves", '"at most 3 mm"'),
    ("more than 3 mm", "more than ", "leaves", '"at least 3 mm"'),
    ("over 3 mm", "over ", "leaves", '"at least 3 mm"'),
    ("more than 5 to 6 mm", "more than ", "leaves", 'or a range "40'),
    ("over 5 ± 1 mm", "over ", "leaves", 'or a range "40'),
    ("5 to 6 mm max", "max", "behind", 'or a range "40'),
    ("=> 3 mm", "=> ", "wrong way", '"at least 3 mm"'),
    ("=<3 mm", "=<", "wrong way", '"at most 3 mm"'),
    ("50 °C or less", " or less", "behind", '"at most 50 °C"'),
    ("3 mm or more", " or more", "behind", '"at least 3 mm"'),
    ("3 mm and above", " and above", "behind", '"at least 3 mm"'),
    ("50 °C max.", "max.", "behind", '"at most 50 °C"'),
    ("3 L approx.", " approx.", "behind", '"about 3 L"'),
    ("3 L or so", " or so", "behind", '"about 3 L"'),
    ("c. 3 L", "c.", "rough", '"about 3 L"'),
    ("roughly 3 L", "roughly", "rough", '"about 3 L"'),
    ("around 3,5 L", "3,5", "comma", '"about 3.5 L"'),
]
UNITS_MISUSED: list[Case] = [
    ("42 kW·h", "kW·h", "energy", '"N·m"'),
    ("42 dNm", "dNm", "tenth", '"N·m"'),
    ("42 mN m", "mN m", "thousandth", '"N·m"'),
    ("42 kgm", "kgm", "mass", '"kgf·m"'),
    ("42 m-kg", "m-kg", "mass", '"kgf·m"'),
    ("4 kpm", "kpm", "kilopond", '"kgf·m"'),
    ("30 lb/in²", "lb/in²", "mass on an area", '"psi"'),
    ("3 kg/cm2", "kg/cm2", "kilograms", '"kgf/cm²"'),
    ("30 psig", "psig", "counted", '"30 psi". Say gauge'),
    ("30 psi a", "psi a", "counted", '"30 psi". Say gauge'),
    ("3 bar(g)", "bar(g)", "counted", '"3 bar". Say gauge'),
    ("300 kPa abs", "kPa abs", "counted", '"300 kPa". Say gauge'),
    ("12 V DC", "V DC", "alone", '"12 V". Say direct'),
    ("90 deg", "deg", "temperature to others", '"°C"'),
    ("90 degrees", "degrees", "temperature to others", '"°C"'),
    ("20 f", "f", "farad", '"°F"'),
    ("20 °K", "°K", "degree sign", '"K"'),
    ("5 k", "k", "prefix", '"kΩ"'),
    ("5 M", "M", "not a unit", '"min"'),
    ("30'", "'", "minutes of arc", '"arcmin"'),
    ("30''", "''", "seconds of arc", '"arcsec"'),
    ("90 degrees centigrade", "degrees centigrade", "old name", '"°C"'),
    ("5 gr", "gr", "grain", '"g"'),
    ("5 cups", "cups", "country", '"mL"'),
    ("5 gpm", "gpm", "US", '"US gal/min"'),
    ("8 US oz", "US oz", "weight", '"US fl oz"'),
    ("2 qt (US)", "qt (US)", "before the unit", '"2 US qt"'),
    ("2 gallons UK", "gallons UK", "before the unit", '"2 imp gallons"'),
    ("800 rpm/min", "rpm/min", "twice", '"r/min"'),
    ("800 U/min", "U/min", "other languages", '"r/min"'),
    ("5 kW", "kW", "power", "such as"),
    ("5 mm.", "mm.", "full stop", '"mm"'),
    ("42 N·m N·m", "N·m", "twice", "once"),
    ("5 ML", "ML", "million", '"mL"'),
    ("5 mph", "mph", "speed", "such as"),
    ("5 uA", "uA", "not a unit", "such as"),
]
TWO: list[Case] = [
    ("1 h 30 min", "1 h 30 min", "mixed", '"1.5 h" or "90 min"'),
    ("1 h 20 min", "1 h 20 min", "mixed", '"80 min"'),
    ("5 ft. 3 in.", "5 ft. 3 in.", "mixed", '"5.25 ft" or "63 in"'),
    ("1° 30'", "1° 30'", "mixed", '"1.5°" or "90 arcmin"'),
    ("-1° 30'", "-1° 30'", "mixed", '"-1.5°" or "-90 arcmin"'),
    ("42 N·m (31 lbf·ft)", "42 N·m (31 lbf·ft)", "twice", '"42 N·m"'),
    ("42 N·m / 31 lbf·ft", "42 N·m / 31 lbf·ft", "twice", '"42 N·m"'),
    ("42 N·m + 90°", "42 N·m + 90°", "one after the other", '["42 N·m", "90°"]'),
    ("42 N·m then 90°", "42 N·m then 90°", "one after the other", '["42 N·m", "90°"]'),
    ("42 N·m, 90°", "42 N·m, 90°", "one after the other", '["42 N·m", "90°"]'),
    ("-0° 30'", "-0° 30'", "mixed", '"-0.5°" or "-30 arcmin"'),
    ("1 h 59 min", "1 h 59 min", "mixed", '"119 min"'),
    ("70 °C 158 °F", "70 °C 158 °F", "twice", '"70 °C"; the other'),
    ("158 °F, 70 °C", "158 °F, 70 °C", "twice", '"158 °F"; the other'),
    ("-40 °C -40 °F", "-40 °C -40 °F", "twice", '"-40 °C"; the other'),
    ("-18 °C 0 °F", "-18 °C 0 °F", "twice", '"-18 °C"; the other'),
    ("20 °C 90 °F", "20 °C 90 °F", "differ", '"20 °C" or "90 °F"'),
    ("2 bar 200 kPa", "2 bar 200 kPa", "twice", '"2 bar"; the other'),
    ("2 in 50.8 mm", "2 in 50.8 mm", "twice", '"2 in"; the other'),
    ("1 in 25 mm", "1 in 25 mm", "twice", '"1 in"; the other'),
    ("1.5 L 1500 mL", "1.5 L 1500 mL", "twice", '"1.5 L"; the other'),
    ("0.5 h 30 min", "0.5 h 30 min", "twice", '"0.5 h"; the other'),
    ("1 h 90 min", "1 h 90 min", "differ", '"1 h" or "90 min"'),
    ("42 N·m (41 lbf·ft)", "42 N·m (41 lbf·ft)", "differ", '"42 N·m" or "41 lbf·ft"'),
    ("42 + 90°", "42 + 90°", "one after the other", "its own unit"),
    ("90° + 90°", "90° + 90°", "one after the other", '["90°", "90°"]'),
]
ALL = [*NUMBERS, *WINDOWS, *LIMITS, *UNITS_MISUSED, *TWO]


def _refused(text: str, dimension: Dimension | None = None) -> Refusal:
    refusal = read_quantity(text, dimension)
    assert isinstance(refusal, Refusal), refusal
    return refusal


@pytest.mark.parametrize(("text", "fault", "reason", "cure"), ALL, ids=[case[0] for case in ALL])
def test_each_habit_has_its_reason_cure_and_place(text: str, fault: str, reason: str, cure: str) -> None:
    """A refusal says why, what to write instead, and underlines the smallest stretch at fault."""
    refusal = _refused(text)
    assert text[refusal.start : refusal.end] == fault
    assert reason in refusal.reason
    assert cure in refusal.cure


@pytest.mark.parametrize("text", [case[0] for case in ALL])
def test_whatever_a_cure_quotes_is_read(text: str) -> None:
    """What stands in quotation marks in a cure is a quantity or a unit that is read; of stages, each of them."""
    for quoted in re.findall(r'"([^"]+)"', _refused(text).cure):
        assert quoted in SPELLINGS or isinstance(read_quantity(quoted), Quantity), quoted


@pytest.mark.parametrize("spelling", [*MISLEADING, *UNPLACED])
def test_every_misleading_spelling_is_told_as_such(spelling: str) -> None:
    """Behind a number each such spelling is refused, wherever it stands, and no cure offers it."""
    for dimension in (None, Dimension.TORQUE, Dimension.VOLUME):
        refusal = _refused(f"42 {spelling}", dimension)
        assert refusal.reason.endswith(".")
        assert f'"{spelling}"' not in refusal.cure


@pytest.mark.parametrize(
    "blank", [" ", "\u00a0", "\u2009", "\u202f", "\u2007", "\u200a", "\u3000", "\t", ""], ids=lambda blank: f"{blank!a}"
)
def test_any_blank_may_stand_between(blank: str) -> None:
    """A space, a thin or a hard one, or none stands between the number and its unit and round every sign."""
    assert read(f"42{blank}N·m").nominal == 42
    assert read(f"42{blank}±{blank}4{blank}N·m").low == 38
    assert read(f"40{blank}–{blank}44{blank}N·m").high == 44
    assert read(f"at least{blank or ' '}40{blank}mm").low == 40


@pytest.mark.parametrize("dash", ["–", "—", "..", "...", "…", " to "])
def test_a_range_is_read_with_a_dash_or_dots(dash: str) -> None:
    """A dash between two numbers is a range and nothing else; a hyphen is not read, as it may be a minus."""
    quantity = read(f"-5{dash}30 °C")
    assert quantity.low == -5
    assert quantity.high == 30


@pytest.mark.parametrize("minus", ["-", "\u2212"])
def test_both_signs_of_minus_are_read(minus: str) -> None:
    """A hyphen and a true minus before a number are its sign."""
    assert read(f"{minus}5 °C").nominal == -5
    assert read(f"42 +4/{minus}2 N·m").low == 40


@pytest.mark.parametrize(
    "piece",
    [
        "1",
        "1 ",
        " ",
        "1.",
        "1,",
        "1:1",
        "1/",
        "1-",
        "+1",
        "1 to ",
        "N·m ",
        "N",
        "half ",
        "max ",
        "1 m ",
        "1 N·m + ",
        "US ",
    ],
)
def test_a_refusal_takes_no_time(piece: str) -> None:
    """However a text of full length repeats itself, why it is refused is told within a fifth of a second."""
    for text in (piece * (LONGEST // len(piece)), "42 N·m " + piece * ((LONGEST - 8) // len(piece)) + "!"):
        start = time.process_time()
        _refused(text)
        assert time.process_time() - start < 0.2
