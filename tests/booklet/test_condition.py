"""Energy and condition along the steps: what is told of which thing, from which step to which."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from authoring.booklet.blocks import Table
from authoring.booklet.condition import SHOWN, START, Moment, Stretch, lanes
from authoring.booklet.shapes import Strip
from authoring.booklet.step_parts import Drawing
from authoring.booklet.words import Named, Paragraph
from tests.booklet.composed import chapter_of, plainly, table
from tests.rules.overlay import base_files

# --- the run of changes -----------------------------------------------------------------------------------

SWITCH = ("switch", "energy")
PORT = ("port", "pressure")


def test_a_stretch_goes_from_what_begins_it_to_what_ends_it() -> None:
    """What was on from the beginning begins there, and what nothing ends goes on."""
    told = lanes(
        [
            Moment(START, SWITCH, "isolated"),
            Moment(3, SWITCH, "live"),
            Moment(5, SWITCH, "isolated"),
            Moment(6, SWITCH, "isolated"),
        ]
    )
    assert told == ((SWITCH, (Stretch("isolated", START, 3), Stretch("isolated", 5, None))),)


def test_what_is_proved_dead_is_still_isolated() -> None:
    """One stretch under the last name, not two."""
    told = lanes(
        [Moment(1, SWITCH, "isolated"), Moment(2, SWITCH, "proved-dead"), Moment(9, SWITCH, "live")],
    )
    assert told == ((SWITCH, (Stretch("proved-dead", 1, 9),)),)


@pytest.mark.parametrize(("side", "state"), [(("engine", "motion"), "running"), (SWITCH, "live")])
def test_nothing_counts_as_without_pressure_once_something_runs(side: tuple[str, str], state: str) -> None:
    """A pump may bring the pressure back, and nobody has said that it does not."""
    told = dict(lanes([Moment(0, PORT, "without-pressure"), Moment(4, side, state)]))
    assert told[PORT] == (Stretch("without-pressure", 0, 4),)


def test_what_lasts_for_a_step_alone_ends_with_it() -> None:
    """Nobody knows how long a proof or a heat holds, so no more is told than that it was."""
    heated = ("bearing", "heat")
    assert lanes([Moment(2, heated, "heated"), Moment(7, heated, "heated")]) == (
        (heated, (Stretch("heated", 2, 2), Stretch("heated", 7, 7))),
    )


def test_what_is_not_told_of_leaves_nothing() -> None:
    """A lid that was only closed, and a thing that came off, have no lane."""
    assert lanes([Moment(0, ("lid", "lid"), "closed"), Moment(1, ("lid", "where"), "removed")]) == ()


@given(
    st.lists(st.tuples(st.sampled_from(["a", "b"]), st.sampled_from([*SHOWN, ("energy", "live"), ("hold", "free")])))
)
def test_stretches_of_one_side_follow_one_another(done: list[tuple[str, tuple[str, str]]]) -> None:
    """Whatever happens, none begins before the one before it has ended, and only the last may go on."""
    told = lanes([Moment(at, (thing, side), state) for at, (thing, (side, state)) in enumerate(done)])
    order = [side for side, _ in SHOWN]
    assert [order.index(side) for (_, side), _ in told] == sorted(order.index(side) for (_, side), _ in told)
    for _, stretches in told:
        for before, after in pairwise(stretches):
            assert before.last is not None
            assert before.first <= before.last <= after.first


# --- a booklet --------------------------------------------------------------------------------------------

MACHINE = """\
features:
  brake:
    name: parking brake
    tell: Look behind the rear wheel.
    values: {drum: drum brake, disc: disc brake}
items:
  engine: {name: engine}
  drop-box: {name: drop box}
  isolator: {name: battery isolator}
  skip: {name: skip}
  hose: {name: cooler hose}
"""
WORK = """\
sections:
  - title: Prepare
    steps:
      - step: Run it.
        do: [{run: engine}]
      - step: Raise it.
        do: [{raise: skip}]
      - step: Stop and isolate it.
        do: [{stop: engine}, {isolate: isolator}]
      - step: Prop it.
        when: {brake: disc}
        do: [{support: skip}]
  - title: Work
    needs: {isolator: isolated}
    steps:
      - step: Part it.
        do: [{disconnect: hose}]
      - step: Join it.
        do: [{connect: hose}]
  - title: Close
    steps:
      - step: Lower it.
        do: [{lower: skip}]
      - step: Restore it.
        do: [{restore: isolator}]
"""


def lines(work: str = WORK, **selection: str) -> dict[str, str]:
    """Return what the table of the strip says, by the thing and how it is."""
    proof = chapter_of("proof", selection, equipment=MACHINE, procedure=work)
    return {f"{row[0]}: {row[1]}": row[2] for row in table(proof, "strip-table")}


def test_a_booklet_tells_from_which_step_to_which() -> None:
    """Each thing has its stretches; the prop is for some vehicles only, and the line says for which."""
    assert lines() == {
        "battery isolator: isolated": "from step 3 to step 8",
        "engine: runs": "from step 1 to step 3",
        "skip: raised": "from step 2 to step 7",
        "skip (only parking brake: disc brake): held": "from step 4 to step 7",
        "cooler hose: disconnected": "from step 5 to step 6",
    }


def test_a_booklet_for_one_vehicle_tells_its_own() -> None:
    """The drum brake has no prop; with the disc brake it needs no word of which vehicle."""
    assert "skip: held" in lines(brake="disc")
    assert [one for one in lines(brake="drum") if "held" in one] == []


def test_stretches_that_differ_have_a_line_for_each_vehicle() -> None:
    """What is isolated later on one machine is told apart, and neither line hides the other."""
    work = WORK.replace(
        "      - step: Stop and isolate it.\n",
        "      - step: Isolate it.\n        when: {brake: drum}\n"
        "        do: [{isolate: isolator}]\n      - step: Stop and isolate it.\n",
    )
    found = {words: told for words, told in lines(work).items() if "isolator" in words}
    assert found == {
        "battery isolator (only parking brake: drum brake): isolated": "from step 3 to step 9",
        "battery isolator (only parking brake: disc brake): isolated": "from step 4 to step 9",
    }


def test_what_is_so_on_every_vehicle_that_there_is_names_none() -> None:
    """No machine has the drum brake with the narrow axle, and the engine runs on all of the others alike."""
    axle = "  axle: {name: axle, tell: Measure the track., values: {wide: wide axle, narrow: narrow axle}}\n"
    machine = MACHINE.replace("items:\n", f"{axle}never: [{{brake: drum, axle: narrow}}]\nitems:\n", 1)
    work = WORK.replace("      - step: Part it.\n", "      - step: Part it.\n        when: {axle: narrow}\n").replace(
        "      - step: Join it.\n", "      - step: Join it.\n        when: {axle: narrow}\n"
    )
    proof = chapter_of("proof", {}, equipment=machine, procedure=work)
    assert [row[0] for row in table(proof, "strip-table")] == [
        "battery isolator",
        "engine",
        "skip",
        "skip (only parking brake: disc brake)",
        "cooler hose (only parking brake: disc brake; axle: narrow axle)",
    ]


def test_how_the_machine_comes_is_so_from_the_beginning() -> None:
    """What the procedure needs before its first step begins there, and what nothing ends goes on to the end."""
    work = "needs: {skip: raised, hose: fitted}\n" + WORK.replace(
        "        do: [{lower: skip}]\n", "        do: [{clean: skip}]\n"
    )
    assert lines(work)["skip: raised"] == "from the beginning to the end"


def test_the_drawing_has_a_track_for_each_line_and_the_numbers_where_sections_begin() -> None:
    """Eight steps share 102 mm: section 2 begins with step 5, at 51 mm; the engine runs in steps 1 to 3."""
    proof = chapter_of("proof", {}, equipment=MACHINE, procedure=WORK)
    [drawing] = [one for one in proof.blocks if isinstance(one, Drawing)]
    shape = drawing.shape
    assert isinstance(shape, Strip)
    assert list(shape.sections) == [0, 51, 76.5]
    assert list(shape.numbers) == [(0, "1"), (51, "5"), (76.5, "7")]
    assert [(" ".join(one.words), one.safe) for one in shape.tracks] == [
        ("battery isolator: isolated", True),
        ("engine: runs", False),
        ("skip: raised", False),
        ("skip: held (parking brake: disc brake)", True),
        ("cooler hose: disconnected", False),
    ]
    [runs] = shape.tracks[1].stints
    assert runs.start == pytest.approx(0.15 * 12.75, abs=0.01)
    assert runs.end == pytest.approx(2.85 * 12.75, abs=0.01)
    assert drawing.alt.startswith(
        "Drawing of the steps from 1 to 8. battery isolator: isolated: from step 3 to step 8."
    )


def test_the_numbers_lead_to_the_steps() -> None:
    """Whoever reads the table finds the step."""
    proof = chapter_of("proof", {}, equipment=MACHINE, procedure=WORK)
    [strip] = [one for one in proof.blocks if isinstance(one, Table) and one.id == "strip-table"]
    first = [piece for piece in strip.rows[0][2].text if isinstance(piece, Named)]
    assert [(one.text, one.target) for one in first] == [("3", "step-3"), ("8", "step-8")]


def test_a_procedure_carried_out_stands_where_it_is_called() -> None:
    """The engine that the annex runs stands still again before the job goes on."""
    work = WORK.replace("        do: [{connect: hose}]\n", "        do: [{connect: hose}, {carry-out: FL-111}]\n")
    before, _, after = base_files()["procedure.yaml"].decode().partition("sections:\n")
    trial = "trial:" + after.partition("\ntrial:")[2]
    warm = "sections:\n  - title: Warm\n    steps:\n      - step: Let it run.\n        do: [{run: engine}]\n"
    other = f"{before.replace('FL-110', 'FL-111')}{warm}      - step: Stop it.\n        do: [{{stop: engine}}]\n{trial}"
    proof = chapter_of("proof", {}, equipment=MACHINE, procedure=work, other=other)
    found = {row[0]: row[2] for row in table(proof, "strip-table")}
    assert found["engine"] == "from step 1 to step 3; from step A1 to step A2"


def test_a_job_that_changes_nothing_says_so() -> None:
    """No drawing and no table, but a sentence, so that nobody looks for them."""
    work = "sections:\n  - title: Look\n    steps:\n      - step: Clean it.\n        do: [{clean: skip}]\n"
    proof = chapter_of("proof", {}, equipment=MACHINE, procedure=work)
    told = [plainly(one.text) for one in proof.blocks if isinstance(one, Paragraph)]
    assert any(text.startswith("No step isolates, holds") for text in told)
    assert not [one for one in proof.blocks if isinstance(one, Drawing)]
