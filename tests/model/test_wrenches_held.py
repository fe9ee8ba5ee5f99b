"""What an adapter does to a setting when its size is stated as a span, and how far a wrench may be off."""

from __future__ import annotations

from fractions import Fraction

import pytest

from authoring.model.clamping import clamp_of, stripping_of, turn_of
from authoring.model.things import FastenerGroup, Tool
from authoring.model.wrenches import share_off, with_adapters
from authoring.pipeline import check
from authoring.workshop.impossible import Impossible


def tool(more: str) -> Tool:
    """Return a tool of a small stock file."""
    stock = check({"stock.yaml": f"stock: Stores\ntools:\n  it: {{name: it, {more}}}\n".encode()}, []).library.stock
    assert stock is not None
    return stock.tools["it"]


def group(more: str) -> FastenerGroup:
    """Return a group of bolts of a small equipment file."""
    text = f"""\
equipment: hob
name: Hob
sources: {{plate: {{title: Plate, edition: "1", kind: maker}}}}
items:
  box: {{name: box}}
fasteners:
  bolts:
    name: bolts
    count: 4
    thread: M10 x 1.5
    class: "8.8"
    torque: {{value: 46 ± 4 N·m, source: plate, at: l}}
    {more}
"""
    return check({"hob.yaml": text.encode()}, []).library.equipment["hob"].fasteners["bolts"]


WRENCH = "range: {value: 10 to 100 N·m, source: s}, length: 300 mm"

RATIOS = {
    "length: 100 mm": Fraction(3, 4),
    "length: 99 to 101 mm": Fraction(3, 4),
    "length: 100 ± 1 mm": Fraction(3, 4),
    "length: 80 to 120 mm": None,
    "length: at least 100 mm": None,
    "length: 100 mm, angle: 90 °": Fraction(1),
    "length: 100 mm, angle: 89 to 91 °": Fraction(1),
    "length: 100 mm, angle: 80 to 90 °": None,
    "length: 100 mm, angle: at most 90 °": None,
    "length: at least 100 mm, angle: 90 °": Fraction(1),
    "length: at least 100 mm, angle: 89 to 91 °": None,
}


@pytest.mark.parametrize("adapter", RATIOS)
def test_an_adapter_that_is_stated_as_a_span_is_never_taken_for_none(adapter: str) -> None:
    """Near enough to one number the middle counts; else nobody can work the setting out."""
    [held] = with_adapters([tool(WRENCH)], [tool(f"adapter: {{{adapter}}}")])
    expected = RATIOS[adapter]
    assert held.ratio == expected if expected is not None else isinstance(held.ratio, Impossible)


@pytest.mark.parametrize(("length", "reason"), [("", "not stated"), (", length: 200 to 400 mm", "stated as a span")])
def test_a_wrench_without_one_length_says_why(length: str, reason: str) -> None:
    """A length that is stated is never called unstated."""
    wrench = tool("range: {value: 10 to 100 N·m, source: s}" + length)
    [held] = with_adapters([wrench], [tool("adapter: {length: 100 mm}")])
    assert isinstance(held.ratio, Impossible)
    assert reason in held.ratio.reason


OFF = {"": "0.04", "3 %": "0.03", "at most 5 %": "0.05", "2 to 6 %": "0.06", "at least 5 %": "0.04"}


@pytest.mark.parametrize("accuracy", OFF)
def test_a_wrench_is_off_by_the_most_that_is_stated(accuracy: str) -> None:
    """What ISO 6789 permits counts only where nothing limits it."""
    stated = f", accuracy: {{value: {accuracy}, source: s}}" if accuracy else ""
    assert share_off(tool(WRENCH + stated)) == Fraction(OFF[accuracy])


@pytest.mark.parametrize("friction", ["at most 0.16", "at least 0.10"])
def test_a_friction_that_is_open_on_the_side_that_counts_gives_no_force(friction: str) -> None:
    """With both ends there is a force; with one there is none to be sure of."""
    both = clamp_of(group("friction: {value: 0.10 to 0.16, source: plate, at: l}"), [])
    assert both is not None
    assert clamp_of(group(f"friction: {{value: {friction}, source: plate, at: l}}"), []) is None


def test_a_turn_counts_at_its_most_for_the_greatest_force() -> None:
    """12 ± 8 ° is up to 20 °, which draws a pitch of 1.5 mm together by 1.5 * 20 / 360 mm."""
    turn = turn_of(group("stages: [20 N·m, 12 ± 8 °]\n    grip: {value: 30 mm, source: plate, at: l}"))
    plain = turn_of(group("stages: [20 N·m, 20 °]\n    grip: {value: 30 mm, source: plate, at: l}"))
    small = turn_of(group("stages: [20 N·m, 4 °]\n    grip: {value: 30 mm, source: plate, at: l}"))
    assert turn is not None
    assert plain is not None
    assert small is not None
    assert float(turn.take_up_mm) == pytest.approx(1.5 * 20 / 360)
    assert turn.greatest_newton == plain.greatest_newton
    assert turn.least_newton == small.least_newton
    assert turn_of(group("stages: [20 N·m, at most 90 °]")) is not None


STAGES = {
    "[20 N·m, 90 °]": (90, 90),
    "[20 N·m, at most 90 °]": (0, 90),
    "[20 N·m, 60 ° , at most 30 °]": (60, 90),
    "[20 N·m, 40 to 60 °, 30 °]": (70, 90),
    "[20 N·m, 70 ± 80 °]": (0, 150),
    "[20 N·m, at least 90 °]": (90, None),
    "[20 N·m, at least 60 °, 30 °]": (90, None),
}


@pytest.mark.parametrize("stages", STAGES)
def test_the_ends_of_the_turns_are_summed_apart(stages: str) -> None:
    """A turn of 1 ° gives a force in proportion; where a turn has no most, neither has its force."""
    grip = "grip: {value: 30 mm, source: plate, at: l}"
    one, turn = turn_of(group(f"stages: [20 N·m, 1 °]\n    {grip}")), turn_of(group(f"stages: {stages}\n    {grip}"))
    least, most = STAGES[stages]
    assert one is not None
    assert turn is not None
    assert turn.endless is (most is None)
    assert turn.degree == (least if most is None else most)
    if one.least_newton is None or one.greatest_newton is None or most is None:
        assert (turn.least_newton, turn.greatest_newton) == (None, None)
        assert most is None
    else:
        assert turn.least_newton == pytest.approx(one.least_newton * least)
        assert turn.greatest_newton == pytest.approx(one.greatest_newton * most)


@pytest.mark.parametrize("grip", ["at most 30 mm", "at least 30 mm", "0 to 30 mm"])
def test_a_grip_that_is_open_at_an_end_that_counts_gives_no_force(grip: str) -> None:
    """The shortest grip decides the greatest force, the longest the least."""
    turn = turn_of(group(f"stages: [20 N·m, 90 °]\n    grip: {{value: {grip}, source: plate, at: l}}"))
    assert turn is not None
    assert turn.degree == 90
    assert turn.least_newton is None
    assert turn.greatest_newton is None


@pytest.mark.parametrize("tapped", ["engaged: at most 12 mm", "engaged: 12 mm", "engaged: 0 mm"])
def test_a_hole_of_which_no_least_is_known_is_not_judged(tapped: str) -> None:
    """The least engagement counts; where none is stated there is no force, and no division by nothing."""
    force = stripping_of(group(f"tapped: {{material: aluminium, {tapped}, shear-strength: 140 MPa, source: plate}}"))
    assert (force is not None) is (tapped == "engaged: 12 mm")
