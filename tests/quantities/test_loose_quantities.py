"""Numbers with a unit in prose are found; numbers and words that only look like them are not."""

from __future__ import annotations

import time

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from authoring.quantities.loose import find_loose


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("Tighten to 42 N·m.", ["42 N·m"]),
        ("Tighten to 42\u00a0N·m, then 90°.", ["42\u00a0N·m", "90°"]),
        ("Tighten the bolt 42 Nm", ["42 Nm"]),
        ("between 40 to 44 N·m", ["40 to 44 N·m"]),
        ("42 ± 4 lb-ft", ["42 ± 4 lb-ft"]),
        ("at 70°C or 70 C", ["70°C", "70 C"]),
        ("down to -5 °C", ["-5 °C"]),
        ("add 2.4 L of oil", ["2.4 L"]),
        ("add 2 quarts", ["2 quarts"]),
        ("oil of 870 kg/m³ or 0.87 kg/L", ["870 kg/m³", "0.87 kg/L"]),
        ("at 20 N/mm² and 900 1/min", ["20 N/mm²", "900 1/min"]),
        ("off by 10 arcmin", ["10 arcmin"]),
        ("a 10mm spanner, a 10-mm spanner", ["10mm", "10-mm"]),
        ("3 bar, (30 min)", ["3 bar", "30 min"]),
        ("1,5 mm or 1/4 turn or ½ turn", ["1,5 mm", "1/4 turn", "½ turn"]),
        ("an M10 x 1.5 mm thread", ["1.5 mm"]),
        ("step 3: 40 N·m", ["40 N·m"]),
        ("step 3 - 40 N·m", ["40 N·m"]),
        ("a gap of 2 in.", ["2 in."]),
        ("2 in long, 0.25 in, 2in", ["2 in", "0.25 in", "2in"]),
        ('12" long', ['12"']),
        ("back it off 2 turns", ["2 turns"]),
        ("wait 5 s, 2 h, 3 days", ["5 s", "2 h", "3 days"]),
        ("5 kg/20 lb", ["5 kg"]),
    ],
)
def test_a_number_with_a_unit_is_found(text: str, found: list[str]) -> None:
    """Each number with its unit is found whole, a range with both its ends."""
    assert [text[start:end] for start, end in find_loose(text)] == found


@pytest.mark.parametrize(
    "text",
    [
        "M10",
        "an M10 bolt of class 8.8",
        "Put 2 in the box.",
        "Fold 2 in, 2 out.",
        "3 in 1",
        "bolts 2 to 5 in order",
        "No. 2 in the row",
        "4 bolts",
        "4 pieces",
        "step 3",
        "In step 3 turn the bolt.",
        "step 3 turns it",
        "Fit bolt 2 L side up",
        "page 2",
        "at 3 a.m.",
        "at 12 o'clock",
        'Press "Mode 2" once.',
        "Press “Mode 2” once.",
        "4 × 4",
        "50 %",
        "2024-11-25",
        "the 3 mounts",
        "part 12-34",
        "terminal 3 C of the plug",
        "2 and 3",
        "",
    ],
)
def test_what_only_looks_like_one_is_left_alone(text: str) -> None:
    """Threads, labels, counts, clock positions and everyday words are no quantities."""
    assert find_loose(text) == []


@given(st.one_of(st.text(), st.text(alphabet="0123456789 .,/-–±toin\"mNL°½'C·", max_size=80)))
@settings(max_examples=600)
@example("1" * 5000)
@example("1 to " * 1000)
def test_finding_never_raises_and_stays_in_the_text(text: str) -> None:
    """Whatever the text, the stretches lie inside it, in order, apart, and hold a digit or a fraction sign."""
    end = 0
    for start, stop in find_loose(text):
        assert end <= start < stop <= len(text)
        assert any(sign.isdigit() or sign in "½¼¾⅛⅜⅝⅞" for sign in text[start:stop])
        end = stop


@pytest.mark.parametrize("piece", ["1", "1 ", "1 to ", "1/", "1.", "-", "1 -", "1,1", "1 m", " ", "12\u202f000", '1"'])
def test_finding_takes_time_in_proportion(piece: str) -> None:
    """Fifty thousand characters of any one piece take no time worth naming."""
    text = piece * (50_000 // len(piece))
    start = time.process_time()
    find_loose(text)
    assert time.process_time() - start < 2
