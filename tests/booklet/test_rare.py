"""What a job asks for and decides, as a booklet prints it before the work: the cover, the lists, the emergency page."""

from __future__ import annotations

from authoring.booklet.blocks import FirstSteps
from authoring.booklet.step_parts import Figure, Step
from tests.booklet.plain_text import plain_text
from tests.booklet.rare_booklet import booklet, chapter, plainly, rows

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


def test_times_of_sections_that_no_vehicle_has_together_are_not_added_up() -> None:
    """Each cover has its own section: the span of both machines stands there, and one time in a booklet for one."""
    square = "  - title: Fill\n    phase: test\n    when: {cover: square}\n    time: 10 min\n"
    round_ = (
        "  - title: Look\n    phase: test\n    when: {cover: round}\n    time: 0.5 h\n    steps:\n"
        "      - step: Clean the [case].\n        do: [{clean: case}]\n"
    )
    changed = ("  - title: Fill\n    phase: test\n", f"{round_}{square}")
    for selection, told in (
        ({}, "60 min; the sections together 45 min to 65 min"),
        ({"cover": "square"}, "60 min; the sections together 45 min"),
        ({"cover": "round"}, "60 min; the sections together 65 min"),
    ):
        facts = dict(booklet(selection, FL_310=changed).cover.facts.rows)
        assert plainly(facts["Time"]) == told


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
    assert hose.fitment == "Only if chosen: raised hose"
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
    assert "breather hose, oil-proof rubber (only if chosen: raised hose)" in found


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
        "after step 14": ("The case is shut, without oil.",),
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
    assert "nobody starts the machine" in plain_text(booklet())
