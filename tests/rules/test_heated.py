"""What a step has heated is hot for every hand until it has cooled, and a limit that burns is told once."""

from __future__ import annotations

import pytest

from authoring.diagnostics.diagnostic import Severity
from authoring.pipeline import check
from tests.rules.overlay import overlay

SHOP = """\
air: {value: 15 to 25 °C, source: bench-book, at: page 8}
hazards:
  hot: {name: hot surface, emergency: [Hold the burn under cool running water.]}
  crush: {name: crushing, emergency: [Call the first-aider.]}
safety:
  hot-bearing:
    harm: person
    severity: moderate
    likelihood: could
    hazard: The warmed bearing does not look hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets].
    sign: hot-surface
  crushed:
    harm: person
    severity: serious
    likelihood: could
    hazard: The bearing drops.
    consequence: It crushes a toe.
    avoidance: Wear the [gauntlets].
    of: crush
"""
STOCK = """\
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  bearing: {name: ball bearing, number: FL-P-020}
"""
EQUIPMENT = """\
items:
  drop-box: {name: drop box}
  bore: {name: bore, part-of: carrier}
  carrier: {name: carrier, cooling: {value: 10 min, source: plate, at: line 3}}
"""
VALUES = """\
values:
  warm: {name: warm, value: 110 to 120 °C, source: bench-book, at: page 8}
  hand-warm: {name: hand warm, value: 30 to 40 °C, source: bench-book, at: page 8}
  long: {name: a long pause, value: 30 to 40 min, source: bench-book, at: page 8}
  short: {name: a short pause, value: 3 to 40 min, source: bench-book, at: page 8}
hazards: none
choices:
  ring:
    name: ring
    question: Which brake has it?
    no-matter: Both look alike.
    parts:
      - {part: bearing, when: {brake: drum}, tell: It is wide.}
      - {part: plug-ring, when: {brake: disc}, tell: It is narrow.}
sections:
  - title: Warm it
    steps:
"""
WARM = "      - {{step: Warm the {0}., {1}do: [{{heat: {{what: {0}, to: warm}}}}]}}\n"
FIT = "      - {step: Fit it., do: [{fit: bearing}]}\n"
CLEAN = "      - {step: Clean it., do: [{clean: carrier}]}\n"
TOLD = "safety: [hot-bearing], with: [gauntlets], "


def unmet(steps: str, shop: str = SHOP) -> list[str]:
    """Return the message of each demand that is not met, and see that it is an error."""
    parts = [("shop", shop), ("stock", STOCK), ("equipment", EQUIPMENT), ("procedure", VALUES + steps)]
    told = [one for one in check(overlay(parts).files, []).findings if one.rule == "policy-unmet"]
    assert {one.severity for one in told} <= {Severity.ERROR}
    return [one.message.partition(", but")[0] for one in told]


def test_a_warmed_part_is_hot_where_it_is_warmed_and_where_it_is_fitted() -> None:
    """The default asks for a message at both steps, and says how hot the part is."""
    assert unmet(WARM.format("bearing", "") + FIT) == [
        'Step 1 touches "bearing", heated to 110 to 120 °C',
        'Step 2 touches "bearing", heated to 110 to 120 °C',
    ]


@pytest.mark.parametrize(
    ("heated", "hands"),
    [
        pytest.param("ring", "fit: bearing", id="a choice is warmed, and its part is fitted"),
        pytest.param("bearing", "fit: ring", id="a part is warmed, and its choice is fitted"),
        pytest.param("carrier", "seat: {what: bearing, in: carrier}", id="a cold part goes into a warm one"),
        pytest.param("carrier", "clean: bore", id="a bore is part of what is warm"),
        pytest.param("drop-box", "start: level-plug", id="a plug goes into a warm box"),
    ],
)
def test_what_is_warmed_is_known_by_each_of_its_names(heated: str, hands: str) -> None:
    """The step after the warming asks for a message as well, and a message meets it."""
    bare = f"      - {{step: Go on., do: [{{{hands}}}]}}\n"
    assert [one[:6] for one in unmet(WARM.format(heated, TOLD) + bare)] == ["Step 2"]
    assert unmet(WARM.format(heated, TOLD) + bare.replace("do:", f"{TOLD}do:")) == []


@pytest.mark.parametrize(
    ("between", "missed"),
    [
        pytest.param("", ["Step 2"], id="at once"),
        pytest.param("      - {step: Wait., do: [{wait: long}]}\n", [], id="a wait that is long enough"),
        pytest.param("      - {step: Wait., do: [{wait: short}]}\n", ["Step 3"], id="a wait that may be too short"),
        pytest.param("      - {step: Wait., when: {brake: drum}, do: [{wait: long}]}\n", ["Step 3"], id="some wait"),
        pytest.param(
            "      - {step: Look., safety: [hot-bearing], with: [gauntlets], do: [{measure: {what: carrier, "
            "value: hand-warm, outcomes: [{found: In., then: go-on}, {found: Out., then: stop}]}}]}\n",
            [],
            id="it is measured",
        ),
        pytest.param("      - {step: Go on., needs: {carrier: hand-warm}, do: [{clean: drop-box}]}\n", [], id="needed"),
        pytest.param(WARM.format("carrier", TOLD).replace("to: warm", "to: hand-warm"), [], id="chilled"),
    ],
)
def test_what_is_warmed_cools(between: str, missed: list[str]) -> None:
    """It is hot until a wait that is sure to be long enough, a measurement, a need, or another temperature."""
    assert [one[:6] for one in unmet(WARM.format("carrier", TOLD) + between + CLEAN)] == missed


def test_each_machine_goes_by_its_own_window_of_heat() -> None:
    """What is warmed less on one machine asks for nothing there; what is hot on both is told for both."""
    warm = "value: 110 to 120 °C, source: bench-book, at: page 8"
    windows = (
        "  warm: {name: warm, windows: [{value: %s, when: {brake: [drum]}, source: bench-book, at: page 8, why: So.}, "
        "{value: 80 to 90 °C, when: {brake: [disc]}, source: bench-book, at: page 8, why: So.}]}\n"
    )
    told = []
    for drum in ("30 to 40 °C", "110 to 120 °C"):
        values = VALUES.replace(f"  warm: {{name: warm, {warm}}}\n", windows % drum)
        parts = [("shop", SHOP), ("stock", STOCK), ("equipment", EQUIPMENT)]
        found = check(overlay([*parts, ("procedure", values + WARM.format("bearing", ""))]).files, []).findings
        told.append([one.fitments for one in found if one.rule == "policy-unmet"])
    assert told == [["parking brake: disc brake"], ["parking brake: drum brake", "parking brake: disc brake"]]


def test_a_message_of_another_hazard_does_not_tell_of_the_heat() -> None:
    """A message of the kind that hot items have will do, and one of crushing will not."""
    crushed = WARM.format("bearing", TOLD.replace("hot-bearing", "crushed"))
    assert len(unmet(crushed)) == 1
    by_kind = SHOP.replace("    sign: hot-surface\n", "    of: hot\n")
    pipe = "  pipe: {name: pipe, hazards: [hot], hot: {value: 90 °C, source: plate, at: line 9, surface: bare-metal}}\n"
    parts = [("shop", by_kind), ("stock", STOCK), ("equipment", EQUIPMENT + pipe)]
    told = check(overlay([*parts, ("procedure", VALUES + WARM.format("bearing", TOLD))]).files, []).findings
    assert [one for one in told if one.rule == "policy-unmet"] == []


LIMITED = """\
values:
  {0}: {{name: temperature for the hand, value: {1}, source: bench-book, at: page 8}}
hazards: none
sections:
  - title: Wipe
    needs: {{pipe: {0}}}
    steps:
      - {{step: Clean the pipe., do: [{{clean: pipe}}]}}
      - {{step: Clean it again., do: [{{clean: pipe}}]}}
"""
POLICY = """\
policy:
  by-hand: {hazard: hot, hotter-than: %s, wear: [gauntlets], hold: true, persons: 2, why: A burn costs a week.}
"""
PIPE = "  pipe: {{name: pipe, hazards: [hot], hot: {{value: 90 °C, source: plate, at: l, surface: bare-metal{}}}}}\n"
MINUTE = ", touch: 1 min"
ASKED = ["policy-too-few", "policy-unmet", "policy-without-hold", "policy-without-protection"]


@pytest.mark.parametrize(
    ("limit", "bound", "touch", "told"),
    [
        pytest.param("at most 60 °C", "55 °C", MINUTE, ["touch-limit-burns"], id="the limit is the cause"),
        pytest.param("at most 45 °C", "55 °C", MINUTE, [], id="the limit is low enough"),
        pytest.param("at most 60 °C", "40 °C", MINUTE, ["touch-limit-burns", *ASKED], id="the policy asks for less"),
        pytest.param("at most 70 °C", "66 °C", "", ["touch-limit-burns", *ASKED], id="how long is not stated"),
        pytest.param("at least 60 °C", "55 °C", MINUTE, ASKED, id="no limit at all"),
    ],
)
def test_a_limit_that_burns_is_told_once(limit: str, bound: str, touch: str, told: list[str]) -> None:
    """Where the limit is an error for certain, what only follows from it is not told as well."""
    parts = [("shop", SHOP + POLICY % bound), ("equipment", EQUIPMENT + PIPE.format(touch))]
    findings = check(overlay([*parts, ("procedure", LIMITED.format("cool", limit))]).files, []).findings
    wanted = {*ASKED, "touch-limit-burns"}
    assert {one.rule for one in findings if one.rule in wanted} == set(told)
    certain = {one.severity for one in findings if one.rule == "touch-limit-burns"}
    assert certain <= {Severity.ERROR if touch else Severity.WARNING}


def test_what_a_step_leaves_is_no_limit_that_is_told() -> None:
    """A temperature under "leaves" is not looked at by the rule of limits, so that it excuses nothing."""
    text = LIMITED.format("cool", "at most 60 °C").replace("    needs: {pipe: cool}\n", "")
    text = text.replace("the pipe., do", "the pipe., leaves: {pipe: cool}, do", 1)
    parts = [("shop", SHOP + POLICY % "55 °C"), ("equipment", EQUIPMENT + PIPE.format(MINUTE)), ("procedure", text)]
    assert [one.rule for one in check(overlay(parts).files, []).findings].count("policy-unmet") == 2
