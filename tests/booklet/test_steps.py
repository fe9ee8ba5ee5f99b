"""What a step says beside its instruction, in a small library that says everything once."""

from __future__ import annotations

import pytest

from authoring.booklet.blocks import Booklet, Methods
from authoring.booklet.markup import said
from authoring.booklet.step_parts import Checkpoint, Choice, Figure, TorqueCallout
from authoring.booklet.words import Blank
from authoring.diagnostics.diagnostic import Severity
from authoring.render.html import as_html
from tests.booklet.goldens import checked
from tests.booklet.steps_booklet import FOLDER, GEAR, booklet, step, steps, told


def test_the_library_has_no_error() -> None:
    """What the booklet shows is what an author may write."""
    assert [one.message for one in checked(FOLDER).findings if one.severity is Severity.ERROR] == []


def test_a_plain_step_says_nothing_more() -> None:
    """Where nothing is said beside the instruction, nothing stands beside it."""
    plain = step("Fit the hub", booklet({}))
    assert (plain.before, plain.cautions, plain.parts) == ((), (), ())


def test_what_must_be_so_stands_before_the_instruction() -> None:
    """States and positions in words, the helper, the persons: all before the words, none after them."""
    before = step("Remove the cover bolts", booklet({})).before
    assert [one.label for one in before] == ["Persons", "Must be", "While"]
    assert told("Must be", before) == ["engine: stopped; catch: pressed in"]
    assert told("While", before) == ["a helper holds the catch pressed in with the thumb"]


def test_of_several_actions_each_manner_says_whose_it_is() -> None:
    """With one action the manner stands alone; with several its action is named, by the verb of the instruction."""
    several = step("Remove the cover bolts", booklet({}))
    assert told("How", several.parts)[1] == "to remove the cover: straight back"
    assert told("How", step("Turn the cover", booklet({})).parts) == ["by hand no lever in the joint"]
    turned = booklet({}, ("do: [{align: {what: cover,", "do: [{mark: cover}, {align: {what: cover,"))
    assert told("How", step("Turn the cover", turned).parts) == ["to turn the cover: by hand no lever in the joint"]


def test_what_is_never_loosened_is_named_where_it_is_near() -> None:
    """The painted bolts hold the case, from which these bolts come; the reason stands there once."""
    again = ("      - step: Take off the [cover].\n        do: [{remove: cover}]\n", "")
    book = booklet(
        {}, (again[0], f"{again[0]}      - step: Loosen the [cover-bolts].\n        do: [{{loosen: cover-bolts}}]\n")
    )
    assert told("Leave alone", step("Remove the cover bolts", book).parts) == [
        "flange; 4 × painted case bolts, M10 x 1.5: They hold the halves of the case together."
    ]
    assert told("Leave alone", step("Loosen the cover bolts", book).parts) == ["4 × painted case bolts, M10 x 1.5"]
    assert told("Leave alone", step("Remove the thrust washer", book).parts) == []


def test_a_position_is_said_once() -> None:
    """An instruction that names the position needs no line for it."""
    assert told("Set to", step("Stop the engine", booklet({})).parts) == ["main switch: turned to the left"]
    named = booklet({}, ("set the [switch].", "set the [switch] so that it is turned to the left."))
    assert told("Set to", step("Stop the engine", named).parts) == []


def test_where_one_method_is_left_there_is_nothing_to_pick() -> None:
    """The line that asks to pick one of several stands only above several."""

    def picks(book: Booklet) -> list[tuple[str, ...]]:
        return [one.numbers for chapter in book.chapters for one in chapter.blocks if isinstance(one, Methods)]

    assert picks(booklet({})) == [("11a", "11b")]
    assert picks(booklet(GEAR)) == []
    assert "11a" in [one.number for one in steps(booklet(GEAR))]


def test_time_is_noted_where_it_starts_and_where_it_ends() -> None:
    """The step from which time runs has a line for it, and the step that must be in time says what to do when not."""
    book = booklet({})
    assert told("Time", step("Measure the temperature", book).parts) == [
        "Note the time: ____ From here time runs for step 13: at most 3 min."
    ]
    assert told("In time", step("Press in", book).parts) == [
        "at most 3 min from step 12: begun at ____, to be done by ____ Too late: Warm the hub once more."
    ]
    assert told("Time", step("Wait", book).parts) == [
        "begun at ____, not before ____ (30 min later), not after ____ (40 min later)"
    ]


@pytest.mark.parametrize(
    ("selection", "note"),
    [
        ({}, ["The result decides only for drive: gear drive; elsewhere it is a habit."]),
        (GEAR, []),
        ({"drive": "chain"}, ["Here a habit: the result decides only for drive: gear drive."]),
    ],
)
def test_a_habit_is_told_from_what_decides(selection: dict[str, str], note: list[str]) -> None:
    """Which it is follows from the selection; where it decides for sure, nothing needs saying."""
    (check_,) = [part for part in step("Look at the hub", booklet(selection)).parts if isinstance(part, Checkpoint)]
    assert [said(one) for one in check_.notes] == ["Compare it with figure 1.", *note]


@pytest.mark.parametrize(
    ("selection", "windows"),
    [
        (
            {"cooler": "shut"},
            "Not 30 °C to 40 °C: The thermostat is still shut. 65",
        ),
        (
            {"cooler": "open"},
            "30 °C to 40 °C: Oil that runs out does not scald. 65",
        ),
    ],
)
def test_a_closed_window_says_why(selection: dict[str, str], windows: str) -> None:
    """The reason stands at the first step that names the value, and nowhere again."""
    book = booklet(selection)
    assert told("Window", step("Run the engine", book).parts)[0].startswith(windows)
    assert told("Window", step("Fill the", book).parts) == []


def test_only_a_joint_on_which_life_depends_asks_for_two_hands() -> None:
    """Class A has a line for each of two people; class B says only what depends on it."""
    lines = {}
    for words in ("Tighten the cover bolts", "Start the level plug", "Loosen the hose clip"):
        (callout,) = [part for part in step(words, booklet({})).parts if isinstance(part, TorqueCallout)]
        lines[callout.fasteners] = dict(callout.lines)
    assert sum(isinstance(one, Blank) for one in lines["cover bolts"]["Initials"]) == 2
    assert said(lines["level plug"]["Joint"]).startswith("class B")
    assert "Initials" not in lines["level plug"]


def test_equal_parts_have_a_box_each_and_others_none() -> None:
    """Either of two is ticked; the part of the other drive is marked as the wrong one."""
    (choice,) = [part for part in step("Measure the", booklet({"drive": "chain"})).parts if isinstance(part, Choice)]
    assert [(row.number, row.tick) for row in choice.rows] == [
        ("FL-P-301", True),
        ("FL-P-302", True),
        ("FL-P-303", False),
    ]
    assert said(choice.rows[2].decides).startswith("NOT THIS ONE")
    (choice,) = [part for part in step("Measure the", booklet(GEAR)).parts if isinstance(part, Choice)]
    assert [row.tick for row in choice.rows] == [False, False, False]
    assert [said(row.decides).startswith("NOT THIS ONE") for row in choice.rows] == [False, True, True]


def test_the_table_of_look_alikes_stands_once() -> None:
    """Where the part goes in, a line says which one it is and leads back to the table."""
    press = step("Press in", booklet(GEAR))
    assert not [part for part in press.parts if isinstance(part, Choice)]
    (which,) = told("Which one", press.parts)
    assert which.startswith("thick seal, FL-P-303: drive: gear drive; height 10.0 mm ± 0.1 mm")
    assert which.endswith("How to tell them apart: step 10.")
    assert "thick" not in told("Which one", step("Press in", booklet({"drive": "chain"})).parts)[0]


def test_a_picture_of_grades_tells_what_each_number_looks_like() -> None:
    """Numbers on one thing are told by the outcomes that look like them, and on several by their names."""

    def legend(book: Booklet) -> list[str]:
        (figure,) = [part for part in step("Look at the hub", book).parts if isinstance(part, Figure)]
        assert (f'<span class="index">1</span> {figure.callouts[0].label}' in as_html(book)) == figure.legend
        return [one.label for one in figure.callouts] if figure.legend else []

    assert legend(booklet({})) == ["It is smooth.", "It has a step."]
    assert legend(booklet({}, (", like: 1", ""), (", like: 2", ""))) == []
    assert legend(booklet({}, ("{on: hub, across: 50, down: 90}", "{on: case, across: 50, down: 90}")))[0] == "hub"


def test_each_reading_has_its_own_line() -> None:
    """One for a hub, one for each of six bolts and of two things, and one at each place; a count has one number."""
    old = "do: [{measure: {what: hub, value: bore-heat,"

    def lines(new: str) -> list[str]:
        shown = step("Measure the temperature", booklet({}, (old, new)))
        (check_,) = [part for part in shown.parts if isinstance(part, Checkpoint)]
        labels = [piece.label for entry in check_.entries for piece in entry if isinstance(piece, Blank)]
        assert len(set(labels)) == len(check_.entries)
        return [said(entry) for entry in check_.entries]

    assert lines(old) == ["____ °C"]
    assert lines(old.replace("hub", "cover-bolts")) == [f"{number} ____ °C" for number in range(1, 7)]
    assert lines(old.replace("hub", "[hub, cover]")) == ["hub ____ °C", "cover ____ °C"]
    assert lines(old.replace("value", "places: 3, value")) == ["1 ____ °C", "2 ____ °C", "3 ____ °C"]
    both = lines(old.replace("hub, value", "[hub, cover-bolts], places: 2, value"))
    assert (both[0], both[2], len(both)) == ("hub 1 ____ °C", "cover bolts 1 ____ °C", 2 + 12)
    assert lines("do: [{count: {what: cover-bolts,") == ["____"]


def test_a_figure_that_is_seen_again_has_its_title_once_in_a_section() -> None:
    """In the section that shows it, the number is enough; in the next one the title stands once."""
    wait, fit = "      - step: Wait [cooling].\n", "      - step: Fit the [hub].\n"
    book = booklet(
        {},
        (wait, f"{wait}        figures: [pads]\n"),
        ("without the [seal].\n", "without the [seal].\n        figures: [pads]\n"),
        (fit, f"{fit}        figures: [pads]\n"),
    )
    found = [told("See", step(words, book).parts) for words in ("Wait", "Try the cover", "Fit the hub")]
    assert found == [["figure 1"], ["figure 1, Two pads of the hub"], ["figure 1"]]
