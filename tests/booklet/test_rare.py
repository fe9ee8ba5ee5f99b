"""What a job asks for, decides and leaves behind, as a booklet prints it: the small library that says it all."""

from __future__ import annotations

import pytest
import yaml

from authoring.booklet.blocks import Booklet, Chapter, FirstSteps, Form, Table
from authoring.booklet.markup import said
from authoring.booklet.step_parts import Figure, Step
from authoring.booklet.words import Text
from authoring.cli.disk import read_library
from authoring.pipeline import check, compose
from tests.booklet.goldens import TREE
from tests.booklet.plain_text import plain_text

RARE = TREE / "tests" / "booklet" / "rare"


def booklet(selection: dict[str, str] | None = None, **changes: tuple[str, str]) -> Booklet:
    """Compose FL-310 after changes: for a file's stem (with _ for -), the text that is replaced and the new one."""
    files, unread = read_library(str(RARE))
    for stem, (old, new) in changes.items():
        name = f"{stem.replace('_', '-')}.yaml"
        text = files[name].decode()
        assert old in text, old
        files[name] = text.replace(old, new).encode()
    return compose(check(files, unread), "FL-310", selection or {})


def chapter(one: Booklet, anchor: str) -> Chapter:
    """Return a chapter by its anchor."""
    return next(chapter for chapter in one.chapters if chapter.id == anchor)


def rows(one: Booklet, anchor: str, table: str) -> dict[str, tuple[str, ...]]:
    """Return the rows of a table as text, by the text of the first cell."""
    block = next(block for block in chapter(one, anchor).blocks if getattr(block, "id", "") == table)
    assert isinstance(block, Table)
    found = [tuple(plainly(cell.text) for cell in row) for row in block.rows]
    return {row[0]: row[1:] for row in found}


def plainly(text: Text) -> str:
    """Return running text with plain spaces."""
    return said(text).replace("\u00a0", " ")


def anchors(one: Booklet) -> list[str]:
    """Return the anchors of a booklet's chapters."""
    return [chapter.id for chapter in one.chapters]


# --- the cover ------------------------------------------------------------------------------------------


def test_the_cover_says_for_whom_the_copy_is_and_from_where_left_is_left() -> None:
    """It has a line for the copy's number, how long it is kept, the hands and the time, and the viewpoint."""
    facts = {label: plainly(text) for label, text in booklet().cover.facts.rows}
    assert facts["This copy"] == "Number ____"
    assert facts["Kept filled in"] == "In the job folder of the machine, for ten years."
    assert facts["Persons"] == "2; together at step 1"
    assert facts["Time"] == "60 min; 2 of 3 sections together 35 min"
    assert facts["Left and right"] == "seen from the handles, looking forward"


def test_times_add_up_exactly_and_are_told_once() -> None:
    """Sections in hours and minutes add up (20 min and 0.25 h are 35 min); a sum equal to the whole is not repeated."""
    for written, told in (("0.25 h", "60 min; 2 of 3 sections together 35 min"), ("10 to 15 min", "30 min to 35 min")):
        facts = dict(booklet(FL_310=("time: 15 min", f"time: {written}")).cover.facts.rows)
        assert told in plainly(facts["Time"])
    facts = dict(booklet(FL_310=("time: 60 min", "time: 35 min")).cover.facts.rows)
    assert plainly(facts["Time"]) == "35 min"


def test_an_option_has_a_box_for_each_choice_and_a_booklet_for_one_says_so() -> None:
    """The cover tells the question, who decides and why; a chosen value is the only one left, and on every page."""
    whole, hose = booklet().cover.options, booklet({"breather": "hose"})
    assert whole is not None
    asked, who, choices = (plainly(cell.text) for cell in whole.rows[0])
    assert asked.startswith("Breather: Does the machine work in water? A hose breathes dry air")
    assert who == "the customer"
    assert choices == "[ ] cap on the case [ ] raised hose "
    assert hose.cover.options is not None
    assert plainly(hose.cover.options.rows[0][2].text) == "This booklet is for one choice:[ ] raised hose "
    assert hose.fitment == "Only breather: raised hose"
    assert booklet().fitment == "All fitments"


# --- before the start -----------------------------------------------------------------------------------


def test_conditions_say_by_what_they_are_reached_and_what_becomes_of_them() -> None:
    """A condition names its procedure and its end; one for other vehicles is left out."""
    found = rows(booklet(), "setup", "conditions")
    assert found["The chain case is warm."][0] == "By FL-300, Warm the chain case. It may cool down after the drain."
    assert "Only cover: square cover: The key for the square cover hangs at the bench." in found
    assert len(rows(booklet({"cover": "round"}), "setup", "conditions")) == len(found) - 1


def test_states_are_told_in_words() -> None:
    """A state of the language, a position of the item and the window of a value are what a reader calls them."""
    found = rows(booklet(), "setup", "needs")
    assert found["engine"][0] == "stopped"
    assert found["range lever"][0] == "neutral"
    assert found["chain oil"][0].startswith("30 °C to 40 °C")
    assert rows(booklet({"cover": "round"}), "setup", "needs")["chain oil"][0].startswith("50 °C to 60 °C")


def test_a_tool_says_what_it_can_do_who_made_it_and_how_to_do_without() -> None:
    """Range, smallest step, adapter, making, drawing and the way without it stand in the list of tools."""
    found = rows(booklet(), "setup", "tools")
    assert found["torque wrench"][1] == "10 N·m to 100 N·m, in steps of 0.5 N·m."
    assert found["19 mm crow-foot"][1] == "Moves the bolt 60 mm from the square of the wrench."
    assert found["peg key"][1] == (
        "Turned in the shop from round bar, with two pegs. See figure 2. "
        "Without it: Two screwdrivers held crosswise do as well."
    )


def test_the_drawing_of_a_tool_is_a_figure_after_those_of_the_steps() -> None:
    """Figure 1 belongs to a step, and figure 2 is the tool's, with a picture of its own."""
    one = booklet()
    drawn = [block for block in chapter(one, "drawings").blocks if isinstance(block, Figure)]
    in_steps = [
        part for chapter in one.chapters for step in chapter.blocks if isinstance(step, Step) for part in step.parts
    ]
    assert [part.number for part in in_steps if isinstance(part, Figure)] == ["1"]
    assert [(figure.number, figure.title) for figure in drawn] == [("2", "Peg key, from the front")]
    assert b"M210 46h26" in one.assets[drawn[0].asset].content


def test_the_parts_list_tells_what_is_critical_and_what_does_as_well() -> None:
    """Equal parts share a row, a critical one is marked with its reason, and methods are not added up."""
    found = rows(booklet(), "setup", "parts")
    equal = next(first for first in found if first.startswith("square cover seal"))
    assert (
        equal
        == "square cover seal or square cork seal, either will do, new each time, drawer 3 (only cover: square cover)"
    )
    assert found[equal][0] == "FL-P-403 or FL-P-405"
    critical = next(first for first in found if first.startswith("CRITICAL"))
    assert critical.startswith("CRITICAL round cover seal")
    assert critical.endswith("A pinched seal lets the chain run dry.")
    assert found["sealing ring of the drain plug, new each time"][1] == "1"
    assert "breather hose, oil-proof rubber (only breather: raised hose)" in found


def test_parts_of_steps_for_different_vehicles_are_not_added_up() -> None:
    """Two steps that fit the same part, each for its own cover, take one; without a condition they take two."""
    steps = """
      - step: Pour [refill] of [oil] into the case, and fit a [ring].
        when: {cover: square}
        do: [{fill: {what: oil, amount: refill}}, {fit: ring}]
      - step: Pour [refill] of [oil] into the case, and fit a [ring].
        when: {cover: round}
        do: [{fill: {what: oil, amount: refill}}, {fit: ring}]
      - step: Set the [lever]"""
    split = ("\n      - step: Set the [lever]", steps)
    name = "sealing ring of the drain plug, new each time"
    assert rows(booklet(FL_310=split), "setup", "parts")[name][1] == "2"
    both = (
        split[0],
        steps.replace("        when: {cover: square}\n", "").replace("        when: {cover: round}\n", ""),
    )
    assert rows(booklet(FL_310=both), "setup", "parts")[name][1] == "3"


def test_places_to_stop_have_the_number_of_their_last_step() -> None:
    """The list follows the steps of the selection."""
    assert rows(booklet(), "setup", "stops") == {
        "after step 4": ("The case is empty and open, under a clean rag.",),
        "after step 13": ("The case is shut, without oil.",),
    }
    assert "after step 12" in rows(booklet({"breather": "cap"}), "setup", "stops")


# --- when something happens -----------------------------------------------------------------------------


def test_the_emergency_page_knows_the_hazards_of_this_booklet_and_no_other() -> None:
    """It has the shop's own first steps, then each hazard of which a message warns here, by name."""
    page = chapter(booklet(), "emergency")
    steps = page.blocks[0]
    assert isinstance(steps, FirstSteps)
    assert [label for label, _ in steps.rows] == ["Whatever has happened", "Hot surface", "Spilled oil"]
    assert [plainly(move) for move in steps.rows[1][1]] == [
        "Hold the burn under cool running water.",
        "Leave on the skin what sticks to it.",
    ]
    assert page.new_page
    assert "nobody starts the machine" in plain_text(booklet())


# --- while the machine is open, and how it is left ------------------------------------------------------


def test_what_else_is_looked_at_stands_before_the_machine_is_closed() -> None:
    """The chapter comes before the first section that refits; each look has its vehicles and its use."""
    one = booklet()
    order = anchors(one)
    assert order.index("section-1") < order.index("while-open") < order.index("section-2")
    found = rows(one, "while-open", "while-open-table")
    assert (
        found["Look at the wear edge of the square cover."][0]
        == "Only cover: square cover. The machine works on gravel."
    )
    assert list(rows(booklet({"cover": "round"}), "while-open", "while-open-table")) == ["Look at the chain for rust."]


def test_without_phases_the_look_comes_before_the_work() -> None:
    """Nobody reads too late what is looked at while the machine is open."""
    order = anchors(booklet(FL_310=("    phase: ", "    # phase: ")))
    assert order.index("while-open") < order.index("section-1")


@pytest.mark.parametrize(
    ("thing", "told"),
    [
        ("drain plug", "13a or 13b"),
        ("spacer plate", "held in step 7, trapped in step 8"),
        ("two stay holes", "left empty on purpose in step 9"),
    ],
)
def test_the_closing_count_follows_what_became_of_each_thing(thing: str, told: str) -> None:
    """Methods count once, a held thing is not yet secured, an empty place was left so."""
    text = told.replace("13a", "14a").replace("13b", "14b")
    assert rows(booklet(), "closing", "count")[thing][2] == text


def test_what_is_held_and_never_trapped_is_not_secured() -> None:
    """Where nothing is put on that traps it, the count says so."""
    one = booklet(FL_310=("until: outer-cover", "until: stay-holes"))
    assert rows(one, "closing", "count")["spacer plate"][2] == "held in step 7, NOT SECURED"


def test_a_thing_that_is_kept_is_told_where_it_lies() -> None:
    """The count names the tray."""
    assert rows(booklet(), "closing", "count")["spacer plate"][1] == "3, kept in the oil tray"


def test_a_trial_fit_puts_nothing_back() -> None:
    """The cover that was only tried is off in step 3 and again in step 6, and back in step 8 alone."""
    assert rows(booklet(), "closing", "count")["outer cover, over the spacer plate"][1:3] == ("3, 6", "8")


def test_what_a_modification_leaves_out_stays_off_and_nothing_else_does() -> None:
    """With the hose the cap stays off by the modification; a modification that does not name it leaves it undone."""
    hose = {"breather": "hose"}
    assert rows(booklet(hose), "closing", "count")["breather cap"][2] == "stays off: raised breather"
    both = rows(booklet(), "closing", "count")["breather cap"][2]
    assert both == "12 (only breather: cap on the case); stays off: raised breather (only breather: raised hose)"
    unsaid = booklet(hose, FL_310=("    leaves-out: [breather-cap]\n", ""))
    assert rows(unsaid, "closing", "count")["breather cap"][2] == "NOT DONE AGAIN"
    assert rows(booklet({"breather": "cap"}), "closing", "count")["breather cap"][2] == "12"


def test_the_state_in_which_the_machine_is_left_has_a_box() -> None:
    """The lever is left in low range."""
    assert rows(booklet(), "closing", "left") == {"range lever": ("low range", "")}


def test_a_modification_is_told_with_a_note_to_tear_off() -> None:
    """As found, as left, added, off and told; the note says it again with a line for the machine and the name."""
    page = chapter(booklet({"breather": "hose"}), "modifications")
    table, signed, note = page.blocks
    assert isinstance(table, Table)
    heads = [plainly(row[0].text) for row in table.rows]
    assert heads == ["As found", "As left", "Why", "Added", "Stays off", "Told", "Told"]
    assert [row[2].tick for row in table.rows] == [True, True, False, True, True, True, True]
    assert isinstance(signed, Form)
    assert isinstance(note, Form)
    assert note.cut
    assert {row.label: plainly(row.printed) for row in note.rows}["Stays off"] == "breather cap"
    assert [row.label for row in note.rows if row.lines] == ["Machine", "Name and date"]
    assert "modifications" not in anchors(booklet({"breather": "cap"}))


def test_only_the_next_technician_gets_a_note() -> None:
    """Where the next technician is not to be told, there is nothing to tear off."""
    page = chapter(booklet(FL_310=("tell: [customer, next-technician]", "tell: [customer]")), "modifications")
    assert not [block for block in page.blocks if isinstance(block, Form) and block.cut]


def test_findings_for_others_are_gathered_on_a_sheet() -> None:
    """What the customer decides and what waits for the next time stand apart, each with lines to write on."""
    one = booklet()
    assert rows(one, "findings", "ask-customer")["“Drain”"][:2] == ("The tracks hang slack.", "Offer to tension them.")
    assert rows(one, "findings", "next-time")["step 2"][:2] == ("The oil is milky.", "Look again after a month.")
    forms = [block for block in chapter(one, "findings").blocks if isinstance(block, Form)]
    assert [max(row.lines for row in form.rows) for form in forms] == [3, 3]


def test_the_fault_report_goes_to_the_approver_and_names_the_revision() -> None:
    """The form stands before the last chapter, with the booklet's number filled in."""
    one = booklet()
    assert anchors(one)[-2:] == ["report", "revisions"]
    form = chapter(one, "report").blocks[0]
    assert isinstance(form, Form)
    printed = {row.label: plainly(row.printed) for row in form.rows if row.printed}
    assert printed == {"To": "Devan Marsh, workshop lead", "Booklet": "FL-310, revision A, 2026-05-04"}
    assert [row.label for row in form.rows if row.lines][:3] == ["Step", "What is wrong", "What was done instead"]


@pytest.mark.parametrize(
    "told",
    [
        "friction of the cover bolts, 0.12 to 0.16: page 9",
        "cooling of the chain case, 25 min: page 8",
        "expansion of chain oil for each kelvin, 0.0007: page 9",
        "range of the torque wrench: page 3",
        "time before the grease dries: page 9",
        "distance of the hose from the case: page 8",
        "temperature for draining: line 7; temperature for draining: line 8",
    ],
)
def test_every_value_has_its_source(told: str) -> None:
    """Friction, cooling, expansion, ranges, deadlines, distances and each window of a value are cited."""
    assert any(told in rest[1] for rest in rows(booklet(), "sources", "sources-table").values())


def test_the_window_of_other_vehicles_is_not_cited() -> None:
    """A booklet for the round cover states one window for draining, and cites one."""
    found = rows(booklet({"cover": "round"}), "sources", "sources-table")
    assert not any("line 7" in rest[1] for rest in found.values())


def test_materials_are_told() -> None:
    """Items and parts that the steps touch are told with what they are made of."""
    assert rows(booklet(), "sources", "materials") == {
        "chain case": ("cast aluminium",),
        "breather hose": ("oil-proof rubber",),
    }


def test_a_booklet_that_says_nothing_rare_has_no_page_for_it() -> None:
    """The plain library prints no emergency page, no modification, no findings, no drawing, no stop and no option."""
    files, unread = read_library(str(TREE / "tests" / "base"))
    shop = yaml.safe_load(files["shop.yaml"])
    files["shop.yaml"] = yaml.safe_dump(
        {key: value for key, value in shop.items() if key not in {"hazards", "emergency", "retention"}}
    ).encode()
    plain = compose(check(files, unread), "FL-110", {})
    rare = {"emergency", "while-open", "modifications", "findings", "drawings"}
    assert rare & set(anchors(plain)) == set()
    assert plain.cover.options is None
    tables = {getattr(block, "id", "") for chapter in plain.chapters for block in chapter.blocks}
    assert {"needs", "stops", "left", "materials"} & tables == set()
