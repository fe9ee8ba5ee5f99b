"""What findings of torque say: how grave they are, which unit and which wrench they name."""

from __future__ import annotations

import pytest

from authoring.diagnostics.diagnostic import Diagnostic, Severity
from tests.rules.overlay import findings, overlay

BOLTS = """fasteners:
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M10 x 1.5
    class: "8.8"
    on: drop-box
    friction: {value: 0.12 to 0.16, source: plate, at: line 5}
"""
TOOLS = """tools:
  spanner: {name: 19 mm ring spanner}
  gauntlets: {name: heat gauntlets}
  small: {name: small wrench, range: {value: 2 to 20 N·m, source: bench-book, at: page 2}, resolution: 0.1 N·m}
  large: {name: large wrench, range: {value: 10 to 100 N·m, source: bench-book, at: page 2}, resolution: 0.5 N·m}
  coarse: {name: coarse wrench, range: {value: 10 to 100 N·m, source: bench-book, at: page 2}, resolution: 50 N·m}
"""


def told(rule: str, torque: str, uses: str = "large") -> Diagnostic:
    """Return the one finding of a rule where the lid bolts are tightened to a torque with some tools."""
    bolts = f"{BOLTS}    torque: {{value: {torque}, source: plate, at: line 4}}\n"
    steps = f"      - step: Tighten the [lid-bolts].\n        with: [{uses}]\n        do: [{{tighten: lid-bolts}}]\n"
    body = f"sections:\n  - title: Tighten\n    steps:\n{steps}"
    found = findings(overlay([("equipment", bolts), ("stock", TOOLS), ("procedure", body)]).files)
    (one,) = [one for one in found if one.rule == rule]
    return one


@pytest.mark.parametrize(
    ("torque", "severity", "share", "unit"),
    [
        ("54 ± 4 N·m", Severity.WARNING, "up to 110 %", ""),
        ("90 ± 4 N·m", Severity.ERROR, "at least 116 %", ""),
        ("43 ± 3 lbf·ft", Severity.WARNING, "up to 118 %", "in N·m"),
    ],
)
def test_an_overload_is_as_grave_as_it_is_sure(torque: str, severity: Severity, share: str, unit: str) -> None:
    """By the formulas written out: 58 * 1.04 N·m at 0.12 is 36.7 kN of 33.6, and 86 * 0.96 at 0.16 is 39.2 kN."""
    one = told("bolt-overloaded", torque)
    assert (one.severity, share in one.message) == (severity, True)
    assert ("the bolt bears that number in" in one.cure) is bool(unit)
    assert unit in one.cure


def test_a_wrench_that_is_too_coarse_says_its_marks() -> None:
    """The distance of its marks stands in the message, and the wrench that would do in the cure."""
    one = told("wrench-unfit", "43 ± 3 N·m", "coarse")
    assert "none of its marks, one every 50\u00a0N·m, lies between the limits" in one.message
    assert one.cure == 'List "large" under with instead.'


def test_where_no_wrench_is_listed_the_right_one_is_named() -> None:
    """Neither the one that is too weak nor the one that is too coarse."""
    assert told("wrench-not-listed", "43 ± 3 N·m", "spanner").cure == 'Add "large" under with.'


def test_where_none_can_do_it_all_that_there_are_are_shown() -> None:
    """Each wrench of the stock is pointed at beside the torque."""
    one = told("wrench-not-in-stock", "43.1 to 43.3 N·m", "spanner")
    assert "43.1 to 43.3 N·m" in one.message
    assert [related.message for related in one.related] == [
        "the torque",
        "the small wrench",
        "the large wrench",
        "the coarse wrench",
    ]


@pytest.mark.parametrize(
    ("written", "asked"),
    [
        ("1.9", 'did you mean "10.9" or "12.9"?'),
        ("8,8", 'did you mean "8.8"?'),
        ("9.10", '"4.6", "4.8", "5.6", "5.8", "6.8", "8.8", "9.8", "10.9" or "12.9".'),
    ],
)
def test_every_class_that_may_have_been_meant_is_asked_about(written: str, asked: str) -> None:
    """A digit that is missing may have been a 0 or a 2, and the harder class bears more; else all are named."""
    bolts = BOLTS.replace('"8.8"', f'"{written}"') + "    torque: {value: 43 ± 3 N·m, source: plate, at: line 4}\n"
    (one,) = [one for one in findings(overlay([("equipment", bolts)]).files) if one.rule == "class-unknown"]
    assert one.cure.startswith("Read the class on the head of the bolt or in the source")
    assert one.cure.endswith(asked)


def test_a_plug_is_told_no_unit() -> None:
    """420 N·m on M10 is more than any bolt of it takes; which unit was meant for a plug nobody knows."""
    plug = BOLTS.replace("count: 4", "count: 1") + "    torque: {value: 420 ± 9 N·m, source: plate, at: line 4}\n"
    (one,) = [one for one in findings(overlay([("equipment", plug)]).files) if one.rule == "unit-mistaken"]
    assert one.message == "420 ± 9 N·m is more than a bolt of M10 x 1.5, class 8.8, takes, and this is a plug."
