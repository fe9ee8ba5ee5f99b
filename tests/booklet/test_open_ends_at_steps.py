"""What the small lines of a torque callout say where an end of a turn, a grip or an accuracy is open."""

from __future__ import annotations

import math

import pytest

from tests.booklet.test_torques_at_steps import BOLT_SNUG, FRICTION, TORQUE, callout, line, numbers


@pytest.mark.parametrize(
    ("turn", "grip", "words"),
    [
        ("45 °", "at most 60 mm", "on the length that is clamped, which is stated only as at most 60 mm."),
        ("45 °", "at least 60 mm", "on the length that is clamped, which is stated only as at least 60 mm."),
        ("at least 45 °", "60 mm", "on how far it is turned, and no most is stated."),
    ],
)
def test_a_turn_of_which_an_end_is_open_says_which(turn: str, grip: str, words: str) -> None:
    """Nobody reads that a grip is not stated where it is, and no force stands where an end is open."""
    bolts = f"{BOLT_SNUG}    stages: [20 N·m, {turn}]\n    grip: {{value: {grip}, source: plate, at: line 6}}\n"
    told = line("Turn", callout(f"{bolts}    reuse: {{is: never}}\n"))
    assert told.startswith(f"draws head and nut together by {'at least ' if 'at least' in turn else ''}0.19 mm")
    assert told.endswith(words)
    assert "kN" not in told


def test_a_turn_with_a_most_alone_may_add_nothing() -> None:
    """At most 10° of M10 x 1.5 over 60 mm add from nothing to as much as 10°."""
    bolts = f"{BOLT_SNUG}    grip: {{value: 60 mm, source: plate, at: line 6}}\n    reuse: {{is: never}}\n"
    most, plain = (
        numbers(line("Turn", callout(f"{bolts}    stages: [20 N·m, {turn}]\n"))) for turn in ("at most 10 °", "10 °")
    )
    assert most[2] == 0
    assert most[3] == math.ceil(plain[3])


def test_an_accuracy_that_limits_nothing_is_not_printed_as_if_it_counted() -> None:
    """At least 1 N·m is no limit of an error, so what ISO 6789 permits stands in, and the line says so."""
    told = line(
        "Clamp force",
        callout(TORQUE + FRICTION, ", accuracy: {value: at least 1 N·m, source: bench-book, at: page 2}}"),
    )
    assert told.endswith("and a wrench that is off by 4 % at most, as ISO 6789 permits, unverified.")
