"""What a step says of the fluid that it drains, pours or looks at, worked out from what is stated once."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from authoring.diagnostics.diagnostic import Severity
from authoring.pipeline import check, compose
from tests.booklet.steps_booklet import step, told
from tests.rules.overlay import overlay

OIL = """fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil of our grade 2
    disposal: used-oil tank
    in: drop-box
"""
KEPT = """    capacity: {value: 1.15 to 1.25 L, source: plate, at: line 8}
    left-in: {value: 0.10 to 0.15 L, source: plate, at: line 8}
"""
DRAIN = """      - step: Drain the [box-oil].
        do: [{drain: box-oil}]
"""
LEVEL = """      - step: Add [box-oil] until it runs from the hole of the [level-plug].
        do: [{fill-to-level: {what: box-oil, at: level-plug, expected: about}}]
"""
LOOK = """      - step: Look at the level of the [box-oil].
        needs: {box-oil: warm}
        do:
          - inspect:
              what: box-oil
              outcomes:
                - {found: It stands at the edge., then: go-on}
                - {found: It stands lower., then: stop, say: Look for a leak.}
"""
ABOUT = {"about": "1.0 to 1.1 L"}
ASIDES = ("Filled", "Left in", "Warm", "Marks", "Circuit", "Window", "Never on")


def fill(name: str, more: str = "") -> str:
    """Return a step that pours a named amount."""
    begin = f"      - step: Pour in [{name}] of [box-oil].\n{more}"
    return f"{begin}        do: [{{fill: {{what: box-oil, amount: {name}}}}}]\n"


def _value(name: str, text: str) -> str:
    """Return a value of the procedure: one window, or several from their lines."""
    if text.startswith("      - "):
        return f"  {name}:\n    name: {name} amount\n    windows:\n{text}"
    return f"  {name}: {{name: {name} amount, value: {text}, source: plate, at: line 9}}\n"


def said(
    words: str, oil: str, values: Mapping[str, str], steps: str, selection: Mapping[str, str] | None = None
) -> dict[str, str]:
    """Return what stands under each label of fluids at the step that begins with these words.

    The machine comes drained and with its plug out, so that a stretch of a job may be shown alone.
    """
    stated = "".join(_value(name, text) for name, text in values.items())
    heads = f"values:\n{stated}" if stated else ""
    body = steps if steps.startswith("sections:") else f"sections:\n  - title: Fill\n    steps:\n{steps}"
    needs = "needs: {box-oil: drained, level-plug: removed}\n"
    files = overlay([("equipment", oil), ("procedure", f"{needs}{heads}{body}")]).files
    checked = check(files, [])
    assert [one.message for one in checked.findings if one.severity is Severity.ERROR] == []
    parts = step(words, compose(checked, "FL-110", selection or {})).parts
    return {label: " ".join(found) for label in ASIDES if (found := told(label, parts))}


def test_a_filling_says_what_is_in_and_what_is_to_come() -> None:
    """What stayed in is counted in, and what the level is expected to take is told less what was poured."""
    asides = said("Pour in 0.8", OIL + KEPT, {"first": "0.8 L", **ABOUT}, DRAIN + fill("first") + LEVEL)
    assert asides == {
        "Filled": "after this step 0.8 L is poured in, which makes about 0.90 L to 0.95 L with what stayed in; "
        "about 0.2 L to 0.3 L more is to be expected in step 3. Counted at one temperature, unverified."
    }


def test_a_level_says_what_is_in_already() -> None:
    """Also where it is filled again and again; where nothing was poured before there is nothing to say."""
    again = LEVEL + "        repeat: {until: the level stays, at-most: 3, else: Ask.}\n"
    asides = said("Add", OIL + KEPT, {"first": "0.8 L", **ABOUT}, DRAIN + fill("first") + again)
    assert asides == {
        "Filled": "0.8 L was poured before; about 0.2 L to 0.3 L more is to be expected. "
        "Counted at one temperature, unverified."
    }
    assert said("Add", OIL + KEPT, ABOUT, DRAIN + LEVEL) == {}


def test_stages_are_added_up() -> None:
    """Common practice: a first fill of 4 L and a later one of 3.5 L make 7.5 L."""
    capacity = "    capacity: {value: 7.4 to 7.6 L, source: plate, at: line 8}\n"
    steps = DRAIN + fill("first") + fill("second")
    asides = said("Pour in 3.5", OIL + capacity, {"first": "4 L", "second": "3.5 L"}, steps)
    assert asides["Filled"] == (
        "after this step 7.5 L is poured in; the dry system holds 7.4 L to 7.6 L. Counted at one temperature."
    )


def test_what_stays_in_is_told_where_it_is_drained_and_drawn_out() -> None:
    """An extraction takes from what stayed in, whatever that was inside its limits, and never more than all."""
    draw = "      - step: Draw out [drawn] of [box-oil].\n        do: [{extract: {what: box-oil, amount: drawn}}]\n"
    assert said("Drain", OIL + KEPT, {}, DRAIN) == {"Left in": "about 0.10 L to 0.15 L stays in."}
    drawn = said("Draw out", OIL + KEPT, {"drawn": "0.05 to 0.12 L"}, DRAIN + draw)
    assert drawn == {"Left in": "at most 0.10 L stays in, unverified."}


DRAW = "      - step: Draw out [drawn] of [box-oil].\n        do: [{extract: {what: box-oil, amount: drawn}}]\n"


def test_nothing_is_drawn_out_that_is_not_in() -> None:
    """Where more may be drawn than was poured, the count begins anew; no less than nothing is ever in."""
    holds = OIL + "    capacity: {value: 7.4 to 7.6 L, source: plate, at: line 8}\n"
    amounts = {"first": "1 L", "drawn": "3 L", "second": "1.5 L"}
    steps = fill("first") + DRAW + fill("second")
    assert said("Pour in 1.5", holds, amounts, steps)["Filled"].startswith("after this step 1.5 L is poured in.")
    assert said("Pour in 1.5", holds, {**amounts, "drawn": "0.4 L"}, steps)["Filled"].startswith(
        "after this step 2.1 L is poured in."
    )
    stays = OIL + "    left-in: {value: 0.10 to 0.15 L, source: plate, at: line 8}\n"
    drained = said("Draw out", stays, {**amounts, "drawn": "1.05 to 1.12 L"}, DRAIN + steps)
    assert drained == {"Left in": "at most 0.1 L stays in, unverified."}
    assert said("Draw out", stays, {**amounts, "drawn": "0.4 L"}, DRAIN + steps) == {
        "Left in": "about 0.70 L to 0.75 L stays in, unverified."
    }


def test_what_is_known_to_one_side_only_is_told_to_that_side() -> None:
    """A limit is not "about"; of what is open to both sides nothing is said."""
    open_ended = {"first": "at least 2 L", "drawn": "at least 1 L", "second": "1.5 L"}
    steps = DRAIN + fill("first") + DRAW + fill("second")
    assert said("Pour in 1.5", OIL, open_ended, steps) == {}
    some = OIL + "    left-in: {value: 0.10 to 0.15 L, source: plate, at: line 8}\n"
    assert said("Draw out", some, open_ended, steps) == {}
    stays = OIL + "    left-in: {value: at most 0.2 L, source: plate, at: line 8}\n"
    assert said("Drain", stays, {}, DRAIN) == {"Left in": "at most 0.2 L stays in."}
    asides = said("Pour in 0.8", stays, {"first": "0.8 L", "about": "0.8 to 1.0 L"}, DRAIN + fill("first") + LEVEL)
    assert asides["Filled"].startswith(
        "after this step 0.8 L is poured in, which makes about 0.8 L to 1.0 L with what stayed in; "
        "at most 0.2 L more is to be expected in step 3."
    )


def test_where_it_depends_on_the_vehicle_nothing_is_said() -> None:
    """A booklet for one vehicle knows what was poured; the one for all does not."""
    steps = DRAIN + fill("first", "        when: {brake: drum}\n") + fill("second")
    values = {"first": "0.5 L", "second": "0.6 L"}
    assert said("Pour in 0.6", OIL + KEPT, values, steps) == {}
    drum = said("Pour in 0.6", OIL + KEPT, values, steps, {"brake": "drum"})
    disc = said("Pour in 0.6", OIL + KEPT, values, steps, {"brake": "disc"})
    assert drum["Filled"].startswith("after this step 1.1 L is poured in, which makes about 1.20 L to 1.25 L")
    assert disc["Filled"].startswith("after this step 0.6 L is poured in, which makes about 0.70 L to 0.75 L")


@pytest.mark.parametrize("loose", ["        optional: Worth doing.\n", "        repeat: {times: 2}\n"])
def test_what_may_be_skipped_or_is_repeated_is_not_counted(loose: str) -> None:
    """Nobody knows then how much is in."""
    steps = DRAIN + fill("first", loose) + fill("second")
    assert said("Pour in 0.6", OIL + KEPT, {"first": "0.2 L", "second": "0.6 L"}, steps) == {}


def test_a_rinsing_that_is_drained_leaves_what_the_first_draining_left() -> None:
    """Whether it was done or not, as much stays in; a rinsing that nobody drains leaves nothing known."""
    parts = ("sections:\n  - title: Drain\n    steps:\n", "  - title: Rinse\n    optional: Worth doing.\n    steps:\n")
    refill = "  - title: Fill\n    steps:\n" + fill("second")
    values = {"first": "0.5 L", "second": "1.0 L"}
    rinse = parts[0] + DRAIN + parts[1] + fill("first")
    filled = said("Pour in 1.0", OIL + KEPT, values, rinse + DRAIN + refill)["Filled"]
    assert filled.startswith("after this step 1.0 L is poured in, which makes about 1.10 L to 1.15 L with")
    assert said("Pour in 1.0", OIL + KEPT, values, rinse + refill) == {}


def test_a_level_says_how_the_fluid_grows() -> None:
    """An engineering reference's worked example: 100 L of oil at 0.00070 grow by 1.4 L from 20 to 40 °C."""
    oil = OIL + "    capacity: {value: 100 L, source: plate, at: line 8}\n"
    grown = said("Look", oil + '    expansion: {value: "0.0007", source: plate, at: line 8}\n', {"warm": "40 °C"}, LOOK)
    assert grown == {
        "Warm": "the drop-box oil is about 1.4 L more at 40 °C than at 20 °C. Worked out from its expansion."
    }


def test_a_density_says_it_too() -> None:
    """By the formula of the measurement tables, worked out apart: 0.996388 / 0.981866 at 870 kg/m³, 1.48 % more."""
    oil = OIL + "    capacity: {value: 100 L, source: plate, at: line 8}\n"
    grown = said("Look", oil + "    density: {value: 870 kg/m³, source: plate, at: line 8}\n", {"warm": "40 °C"}, LOOK)
    more = "the drop-box oil is about 1.5 L more at 40 °C than at 20 °C"
    assert grown["Warm"] == f"{more}. Worked out from its density, unverified."


def test_marks_say_what_a_part_of_the_way_takes() -> None:
    """Of 4 L between the marks a quarter is 1 L; 0.7 L more is 17.5 % of the way, told to the next twentieth."""
    oil = OIL + "    capacity: {value: 50 L, source: plate, at: line 8}\n"
    oil += '    expansion: {value: "0.0007", source: plate, at: line 8}\n'
    marked = said("Look", oil + "    between-marks: {value: 4 L, source: plate, at: line 8}\n", {"warm": "40 °C"}, LOOK)
    assert "and stands higher by about 20 % of the way between its marks" in marked["Warm"]
    assert marked["Marks"].startswith("4 L (4.2 US qt) lies between the two marks; a quarter of the way takes")
    assert "takes about 1.0 L, half about 2.0 L. The machine stands level" in marked["Marks"]
    assert marked["Marks"].endswith("unverified.")


def test_a_level_that_leaves_its_marks_is_not_told_as_a_part_of_the_way() -> None:
    """Of 0.5 L between the marks 0.7 L more is beyond them, where nobody knows how wide the vessel is."""
    oil = OIL + "    capacity: {value: 50 L, source: plate, at: line 8}\n"
    oil += '    expansion: {value: "0.0007", source: plate, at: line 8}\n'
    marked = said(
        "Look", oil + "    between-marks: {value: 0.5 L, source: plate, at: line 8}\n", {"warm": "40 °C"}, LOOK
    )
    assert "than at 20 °C, which is more than lies between its marks. Worked out" in marked["Warm"]
    assert "%" not in marked["Warm"]


def test_a_circuit_says_from_where_on_a_level_counts() -> None:
    """Only where the window begins while the thermostat may be shut, and only for those that have it."""
    oil = OIL + "    circuit: {name: cooler, opens: 66 to 70 °C, source: plate, at: line 6, when: {brake: disc}}\n"
    assert said("Look", oil, {"warm": "60 to 80 °C"}, LOOK)["Circuit"] == (
        "Only parking brake: disc brake: read the level at 70 °C or above. Below it the cooler may still be shut, "
        "and what it takes is missing, unverified."
    )
    assert said("Look", oil, {"warm": "60 to 80 °C"}, LOOK, {"brake": "drum"}) == {}
    assert said("Look", oil, {"warm": "75 to 85 °C"}, LOOK) == {}
    begins = oil.replace("66 to 70 °C", "at least 66 °C")
    assert said("Look", begins, {"warm": "60 to 80 °C"}, LOOK) == {}
    ends = oil.replace("66 to 70 °C", "at most 70 °C")
    assert "read the level at 70 °C or above" in said("Look", ends, {"warm": "60 to 80 °C"}, LOOK)["Circuit"]


def test_a_circuit_says_why_a_window_is_closed() -> None:
    """The author's own reason goes before it."""
    oil = OIL + "    circuit: {name: cooler, opens: 66 to 70 °C, source: plate, at: line 6, when: {brake: disc}}\n"
    cold = "      - {value: 30 to 50 °C, source: plate, at: line 5, when: {brake: drum}WHY}\n"
    hot = "      - {value: 75 to 85 °C, source: plate, at: line 6}\n"
    plain = said("Look", oil, {"warm": cold.replace("WHY", "") + hot}, LOOK, {"brake": "disc"})
    assert plain["Window"] == (
        "Not 30 °C to 50 °C: The thermostat of the cooler opens at 66 °C to 70 °C only, "
        "and what the cooler takes is missing from the level."
    )
    own = said("Look", oil, {"warm": cold.replace("WHY", ", otherwise: It lies.") + hot}, LOOK)
    assert own["Window"] == "30 °C to 50 °C. Not for the others: It lies."


def test_another_kind_in_the_same_item_is_told_where_one_is_poured() -> None:
    """What may come to it is not."""
    others = """  ester-oil: {name: ester oil, kind: gear oil of ester, in: drop-box}
  additive: {name: additive, kind: friction modifier, in: drop-box, mixes-with: [box-oil]}
"""
    told_apart = said("Pour in 0.8", OIL + others, {"first": "0.8 L"}, DRAIN + fill("first"))
    assert told_apart["Never on"] == "the ester oil: another kind"
