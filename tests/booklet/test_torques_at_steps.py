"""What a torque callout says beside the torque: what to set, and what it does to the bolt, by other arithmetic."""

from __future__ import annotations

import math
import re

import pytest

from authoring.booklet.blocks import Booklet
from authoring.booklet.markup import said
from authoring.booklet.step_parts import TorqueCallout
from authoring.diagnostics.diagnostic import Severity
from authoring.pipeline import check, compose
from tests.booklet.plain_text import plain_text
from tests.booklet.steps_booklet import step
from tests.rules.overlay import overlay

BOLTS = """fasteners:
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M10 x 1.5
    class: "10.9"
    on: drop-box
"""
TORQUE = "    torque: {value: 40 ± 4 N·m, source: plate, at: line 4}\n"
BOLT_SNUG = "    torque: {value: 20 ± 2 N·m, source: plate, at: line 4}\n"
FRICTION = '    friction: {value: "0.10 to 0.16", source: plate, at: line 5}\n'
WRENCH = "  wrench: {name: torque wrench, range: {value: 10 to 100 N·m, source: bench-book, at: page 2}"
TOOLS = "tools:\n  spanner: {name: 19 mm ring spanner}\n  gauntlets: {name: heat gauntlets}\n"
PITCH, DIAMETER = 1.5, 10.0
PROOF = 830 * math.pi / 4 * (DIAMETER - 0.938194 * PITCH) ** 2
"""ISO 898-1, class 10.9; the stress area by the one formula of the published values."""


def book(bolts: str, wrench: str = "}", adapter: str = "", uses: str = "wrench") -> Booklet:
    """Return the booklet of a job that tightens the lid bolts with the wrench and what is listed beside it."""
    tools = f"{TOOLS}{WRENCH}{wrench}\n{adapter}"
    steps = f"      - step: Tighten the [lid-bolts].\n        with: [{uses}]\n        do: [{{tighten: lid-bolts}}]\n"
    body = f"sections:\n  - title: Tighten\n    steps:\n{steps}"
    files = overlay([("equipment", BOLTS + bolts), ("stock", tools), ("procedure", body)]).files
    checked = check(files, [])
    assert [one.message for one in checked.findings if one.severity is Severity.ERROR] == []
    return compose(checked, "FL-110", {})


def callout(bolts: str, wrench: str = "}", adapter: str = "", uses: str = "wrench") -> TorqueCallout:
    """Return the callout of the lid bolts in that booklet."""
    parts = step("Tighten", book(bolts, wrench, adapter, uses)).parts
    return next(part for part in parts if isinstance(part, TorqueCallout))


def line(label: str, told: TorqueCallout) -> str:
    """Return what stands under a label, or nothing."""
    found = [said(text) for name, text in (*told.lines, *told.derived) if name == label]
    return found[0].replace("\u00a0", " ") if found else ""


def numbers(text: str) -> list[float]:
    """Return the numbers of a text."""
    return [float(one) for one in re.findall(r"\d+(?:\.\d+)?", text)]


def force(torque: float, friction: float) -> float:
    """Return T over its lever in N, with the sums of the flank and the face written out for M10."""
    flank = friction * (DIAMETER - 0.649519 * PITCH) / math.sqrt(3)
    face = friction * 1.3 * DIAMETER / 2
    return 1000 * torque / (PITCH / (2 * math.pi) + flank + face)


def test_the_torque_itself_is_set_where_it_is_a_mark() -> None:
    """40 N·m on a scale of half newton metres; on one of three the nearest mark is told as such."""
    assert line("Set", callout(TORQUE, ", resolution: 0.5 N·m}")) == "40.0 N·m on the torque wrench"
    assert line("Set", callout(TORQUE, ", resolution: 3 N·m}")) == "39 N·m (the nearest mark) on the torque wrench"
    assert line("Set", callout(TORQUE)) == ""


def test_behind_an_adapter_the_mark_is_the_levers() -> None:
    """400 mm and 50 mm more: 40 N·m need 40 * 400/450 = 35.56, so 35.5, which gives 35.5 * 450/400 = 39.9 N·m."""
    adapter = "  foot: {name: crow-foot, adapter: {length: 50 mm}}\n"
    told = callout(TORQUE, ", resolution: 0.5 N·m, length: 400 mm}", adapter, "wrench, foot")
    assert line("Set", told) == (
        "35.5 N·m (the nearest mark) on the torque wrench, with the crow-foot straight ahead of it, "
        "which gives 39.9 N·m at the lid bolts"
    )
    assert line("Pull", told) == (
        "at the middle of the grip of the torque wrench, 400 mm from its square. Only there is the setting right."
    )
    assert told.note == "Do not set the torque wrench to this: the crow-foot changes what it gives."
    assert told.adapted
    assert not callout(TORQUE, ", resolution: 0.5 N·m, length: 400 mm}").adapted


@pytest.mark.parametrize(
    ("angle", "mark", "sits"),
    [
        ("90 °", "40.0 N·m", "at a right angle to it"),
        ("270 °", "40.0 N·m", "at a right angle to it"),
        ("180 °", "45.5 N·m (the nearest mark)", "pointing back along it"),
        ("60 °", "37.5 N·m (the nearest mark)", "at 60° to it"),
    ],
)
def test_the_angle_of_the_adapter_counts(angle: str, mark: str, sits: str) -> None:
    """40 * 400 / (400 + 50 cos): over 350 it is 45.7, over 425 it is 37.6; across nothing changes and nothing warns."""
    adapter = f"  foot: {{name: crow-foot, adapter: {{length: 50 mm, angle: {angle}}}}}\n"
    told = callout(TORQUE, ", resolution: 0.5 N·m, length: 400 mm}", adapter, "wrench, foot")
    assert line("Set", told).startswith(f"{mark} on the torque wrench, with the crow-foot {sits}")
    assert (told.note == "") is ("right angle" in sits)


def test_every_stage_is_set_behind_an_adapter() -> None:
    """15 N·m need 15 * 400/450 = 13.3, below a fifth of 100, and 40 N·m need 35.6."""
    adapter = "  foot: {name: crow-foot, adapter: {length: 50 mm}}\n"
    bolts = f"{TORQUE}    stages: [15 N·m, 40 N·m]\n"
    told = callout(bolts, ", resolution: 1 N·m, length: 400 mm}", adapter, "wrench, foot")
    assert line("Set", told).startswith("13 N·m (the nearest mark), then 36 N·m (the nearest mark) on")


def test_every_stage_is_set_without_an_adapter() -> None:
    """Who reads 40 N·m alone sets it for the first round; a wrench that cannot do the first says so."""
    bolts = f"{TORQUE}    stages: [15 N·m, 30 N·m, 40 N·m]\n"
    marked = callout(bolts, ", resolution: 0.5 N·m}")
    assert line("Set", marked) == "15.0 N·m, then 30.0 N·m, then 40.0 N·m on the torque wrench"
    long = (
        "  long: {name: long wrench, range: {value: 20 to 60 N·m, source: bench-book, at: p. 2}, resolution: 1 N·m}\n"
    )
    told = line("Set", callout(bolts, ", resolution: 0.5 N·m}", long, "wrench, long"))
    assert told.endswith(", or 30 N·m, then 40 N·m on the long wrench (another wrench for the 15 N·m before)")


def test_without_the_length_of_the_wrench_nothing_is_set() -> None:
    """A setting that nobody can work out is not printed."""
    adapter = "  foot: {name: crow-foot, adapter: {length: 50 mm}}\n"
    assert line("Set", callout(TORQUE, ", resolution: 0.5 N·m}", adapter, "wrench, foot")) == ""


def test_each_wrench_that_can_do_it_has_its_mark() -> None:
    """Of three wrenches the one that is too weak is not offered."""
    more = (
        "  weak: {name: weak wrench, range: {value: 2 to 20 N·m, source: bench-book, at: p. 2}, resolution: 0.1 N·m}\n"
        "  long: {name: long wrench, range: {value: 30 to 150 N·m, source: bench-book, at: p. 2}, resolution: 1 N·m}\n"
    )
    told = callout(TORQUE, ", resolution: 0.5 N·m}", more, "weak, wrench, long")
    assert line("Set", told) == "40.0 N·m on the torque wrench, or 40 N·m on the long wrench"


@pytest.mark.parametrize(
    ("error", "low", "high", "words"),
    [
        (
            ", accuracy: {value: 6 %, source: bench-book, at: page 2}}",
            36 * 0.94,
            44 * 1.06,
            "may be off by 6 %",
        ),
        (", accuracy: {value: 2 N·m, source: bench-book, at: page 2}}", 34, 46, "may be off by 2 N·m"),
        ("}", 36 * 0.96, 44 * 1.04, "is off by 4 % at most, as ISO 6789 permits, unverified"),
    ],
)
def test_the_clamp_force_spans_limits_friction_and_wrench(error: str, low: float, high: float, words: str) -> None:
    """From the lower limit at the highest friction to the upper at the lowest; what is printed reaches no less far."""
    told = line("Clamp force", callout(TORQUE + FRICTION, error))
    least, greatest, share, most = numbers(told)[:4]
    assert least * 1000 == pytest.approx(force(low, 0.16), abs=1000)
    assert least * 1000 <= force(low, 0.16)
    assert greatest * 1000 == pytest.approx(force(high, 0.10), abs=1000)
    assert greatest * 1000 >= force(high, 0.10)
    assert (share, most) == (
        math.floor(100 * force(low, 0.16) / PROOF),
        math.ceil(100 * force(high, 0.10) / PROOF),
    )
    assert "kN, unverified:" in told
    assert told.endswith(f"at a friction of 0.10 to 0.16 and a wrench that {words}.")


def test_a_nut_factor_stands_for_the_friction() -> None:
    """F = T / (K d): 36 * 0.96 N·m at K = 0.20 and 44 * 1.04 at 0.16, over 0.010 m."""
    told = line("Clamp force", callout(f"{TORQUE}    nut-factor: {{value: 0.16 to 0.20, source: plate, at: line 5}}\n"))
    least, greatest = numbers(told)[:2]
    assert (least, greatest) == (math.floor(36 * 0.96 / 2.0), math.ceil(44 * 1.04 / 1.6))
    assert "at a nut factor K of 0.16 to 0.20 and" in told


def test_nothing_is_said_of_a_bolt_of_which_nothing_is_known() -> None:
    """Without a friction there is no force, and without an angle no turn."""
    assert callout(TORQUE).derived == ()


def test_a_turn_is_told_with_the_force_that_it_adds() -> None:
    """90° of M10 x 1.5 are 0.375 mm; a steel bolt of 60 mm in a joint four to eight times as stiff takes that up."""
    bolts = f"{TORQUE}{FRICTION}    stages: [40 N·m, 45 °]\n    grip: {{value: 60 mm, source: plate, at: line 6}}\n"
    told = line("Turn", callout(f"{bolts}    reuse: {{is: never}}\n"))
    area = PROOF / 830
    soft, stiff = 207_000 * area / 60, 207_000 * math.pi / 4 * DIAMETER**2 / 60
    least, greatest = 0.1875 * soft * 4 / 5, 0.1875 * stiff * 8 / 9
    snug, tight = force(36 * 0.96, 0.16), force(44 * 1.04, 0.10)
    drawn, each, low, high, total = numbers(told)[:5]
    assert (drawn, each) == (0.19, 0.0042)
    assert low * 1000 <= least < low * 1000 + 1000
    assert snug + least < PROOF < tight + greatest
    assert high == math.floor(min(greatest, PROOF - snug) / 1000)
    assert total == math.floor((snug + least) / 1000)
    since = math.floor(45 * (PROOF - tight) / greatest)
    assert f"It may go beyond what the bolt bears from {since}° on, {math.floor(PROOF / 1000)} kN" in told
    assert told.endswith("then it stays longer, and how far it pulls cannot be said by this.")


@pytest.mark.parametrize(("friction", "grip"), [(FRICTION, "240 mm"), ("", "200 mm")])
def test_beyond_the_proof_load_no_force_is_told(friction: str, grip: str) -> None:
    """180° of M10 x 1.5 are 0.75 mm: what springs back would pull 60 mm with 120 kN at least, and the bolt bears 48.

    Whatever the torque before it gave; as the grip is longer the same turn pulls less, and may go beyond.
    """
    bolts = f"{TORQUE}{friction}    reuse: {{is: never}}\n    stages: [40 N·m, 180 °]\n"
    told = line("Turn", callout(f"{bolts}    grip: {{value: 60 mm, source: plate, at: line 6}}\n"))
    assert told == (
        "draws head and nut together by 0.75 mm, 0.0042 mm for each degree. It takes the bolt beyond what it bears, "
        f"{math.floor(PROOF / 1000)} kN (its proof load); then it stays longer, and how far it pulls cannot be said "
        "by this."
    )
    told = line("Turn", callout(f"{bolts}    grip: {{value: {grip}, source: plate, at: line 6}}\n"))
    assert "It may go beyond what the bolt bears" in told
    assert ("In all" in told) is bool(friction)


def test_a_turn_within_the_proof_load_tells_all_of_it() -> None:
    """10° of M10 x 1.5 over 60 mm add 7 to 10 kN to the torque's force; the bolt bears 48, and no wrench suits."""
    bolts = f"{BOLT_SNUG}    stages: [20 N·m, 10 °]\n    grip: {{value: 60 mm, source: plate, at: line 6}}\n"
    told = line("Turn", callout(f"{bolts}{FRICTION}    reuse: {{is: never}}\n"))
    assert "beyond" not in told
    area = PROOF / 830
    snug, tight = force(18, 0.16), force(22, 0.10)
    least = snug + 0.75 / 18 * 207_000 * area / 60 * 4 / 5
    greatest = tight + 0.75 / 18 * 207_000 * math.pi / 4 * DIAMETER**2 / 60 * 8 / 9
    assert told.endswith(f"In all {math.floor(least / 1000)} kN to {math.ceil(greatest / 1000)} kN.")


def test_a_turn_without_a_grip_says_what_is_missing() -> None:
    """How far it draws is known by the pitch; how hard it pulls is not."""
    told = line("Turn", callout(f"{TORQUE}    stages: [40 N·m, 45 °]\n"))
    assert told.startswith(
        "draws head and nut together by 0.19 mm, 0.0042 mm for each degree. How much force that adds"
    )


def test_a_soft_thread_says_when_it_strips() -> None:
    """15 mm of M10 in 140 MPa by FED-STD-H28/2, loose as 6g and 6H may be, against the greatest force."""
    tapped = "    tapped: {material: aluminium, engaged: 15 mm, shear-strength: 140 MPa, source: plate, at: line 7}\n"
    told = line("Tapped hole", callout(TORQUE + FRICTION + tapped))
    each = math.pi * DIAMETER / PITCH * (PITCH / 2 + math.tan(math.pi / 6) * 0.649519 * PITCH)
    strips = 0.74 * 15 * 140 * each
    assert numbers(told)[0] == math.floor(strips / 1000)
    assert f"may reach {math.ceil(100 * force(44 * 1.04, 0.10) / strips)} % of that" in told


@pytest.mark.parametrize(("bolts", "explained"), [(TORQUE, False), (TORQUE + FRICTION, True)])
def test_the_word_unverified_is_explained_where_it_stands(bolts: str, *, explained: bool) -> None:
    """With a clamp force it stands at the step, and the sources say what it means; else neither."""
    text = plain_text(book(bolts))
    assert (", unverified" in text) is explained
    assert ("What is marked “unverified”" in text) is explained


def test_the_table_of_torques_says_what_it_leaves_out() -> None:
    """The turn stands behind the torque, and where an adapter changes the setting the step is named."""
    adapter = "  foot: {name: crow-foot, adapter: {length: 50 mm}}\n"
    wrench = ", resolution: 0.5 N·m, length: 400 mm}"
    table = plain_text(book(f"{TORQUE}    stages: [40 N·m, 45 °]\n", wrench, adapter, "wrench, foot"))
    row = next(line for line in table.replace("\u00a0", " ").splitlines() if "lid bolts, on the drop box" in line)
    assert ", then 45°; the wrench is set otherwise, as told in step 1" in row
    assert "is set otherwise" not in plain_text(book(TORQUE, wrench))


def test_the_table_of_torques_tells_every_round() -> None:
    """Each torque in turn, the last with its limits, and the turn behind them."""
    text = plain_text(book(f"{TORQUE}    stages: [15 N·m, 30 N·m, 40 N·m, 45 °]\n")).replace("\u00a0", " ")
    row = next(line for line in text.splitlines() if "lid bolts, on the drop box" in line)
    first, second, last, turn = row.split("|")[3].split(", then ")
    assert (first.strip().startswith("15"), second.startswith("30"), turn.strip()) == (True, True, "45°")
    assert "±" in last or "to" in last


def test_new_bolts_are_among_the_parts_to_have_ready() -> None:
    """Thrown away and put on again they are brought; taken off and put back, or thrown away for good, they are not."""
    for waste, back, brought in ((True, True, True), (False, True, False), (True, False, False)):
        steps = "      - step: Remove the [lid-bolts].\n        do: [{remove: lid-bolts}]\n"
        steps += "      - step: Discard the [lid-bolts].\n        do: [{discard: lid-bolts}]\n" * waste
        steps += "      - step: Start the [lid-bolts] by hand.\n        do: [{start: lid-bolts}]\n" * back
        body = f"sections:\n  - title: Renew\n    steps:\n{steps}"
        text = plain_text(compose(check(overlay([("equipment", BOLTS), ("procedure", body)]).files, []), "FL-110", {}))
        assert ("lid bolts, new each time | M10 x 1.5, class 10.9 | 4 |" in text) is brought
