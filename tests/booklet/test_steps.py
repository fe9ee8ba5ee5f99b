"""What a step says beside its instruction, in a small library that says everything once."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import pytest

from authoring.booklet.blocks import Booklet, Methods
from authoring.booklet.markup import said
from authoring.booklet.step_parts import Aside, Checkpoint, Choice, Figure, Step, StepPart, TorqueCallout
from authoring.booklet.words import Blank, Paragraph
from authoring.cli.disk import read_library
from authoring.diagnostics.diagnostic import Severity
from authoring.pipeline import check, compose
from authoring.render.html import as_html
from tests.booklet.goldens import TREE, checked

FOLDER = "tests/booklet/steps"
GEAR = {"drive": "gear"}


def booklet(selection: Mapping[str, str], *changes: tuple[str, str]) -> Booklet:
    """Return the booklet for a selection, of the library with some words of its procedure replaced."""
    if not changes:
        return compose(checked(FOLDER), "FL-320", selection)
    files, unread = read_library(str(TREE / FOLDER))
    text = files["FL-320.yaml"].decode()
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return compose(check(files | {"FL-320.yaml": text.encode()}, unread), "FL-320", selection)


def step(words: str, book: Booklet) -> Step:
    """Return the step whose instruction begins with these words."""
    return next(one for one in steps(book) if said(one.text).startswith(words))


def steps(book: Booklet) -> Iterator[Step]:
    """Yield the steps of a booklet."""
    return (block for chapter in book.chapters for block in chapter.blocks if isinstance(block, Step))


def told(label: str, parts: tuple[StepPart, ...]) -> list[str]:
    """Return what stands under a label, as plain characters."""
    found = []
    for part in parts:
        if isinstance(part, Aside) and part.label == label:
            texts = [[one.text] if isinstance(one, Paragraph) else one.entries for one in part.passage]
            found.append(" ".join(said(text).strip() for some in texts for text in some).replace("\u00a0", " "))
    return found


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
    assert told("While", before) == ["a helper holds the catch, pressed in with the thumb"]


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
        "flange; painted case bolts: They hold the halves of the case together."
    ]
    assert told("Leave alone", step("Loosen the cover bolts", book).parts) == ["painted case bolts"]
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
            "Not 30 °C to 40 °C (86 °F to 104 °F): The thermostat is still shut. 65",
        ),
        (
            {"cooler": "open"},
            "30 °C to 40 °C (86 °F to 104 °F): Oil that runs out does not scald. 65",
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
    (choice,) = [part for part in step("Press in", booklet({"drive": "chain"})).parts if isinstance(part, Choice)]
    assert [(row.number, row.tick) for row in choice.rows] == [
        ("FL-P-301", True),
        ("FL-P-302", True),
        ("FL-P-303", False),
    ]
    assert said(choice.rows[2].decides).startswith("NOT THIS ONE")
    (choice,) = [part for part in step("Press in", booklet(GEAR)).parts if isinstance(part, Choice)]
    assert [row.tick for row in choice.rows] == [False, False, False]
    assert [said(row.decides).startswith("NOT THIS ONE") for row in choice.rows] == [False, True, True]


def test_numbers_on_one_thing_have_no_legend() -> None:
    """Grades of wear are told apart by the step; with another thing among them the numbers are named."""

    def legend(book: Booklet) -> bool:
        (figure,) = [part for part in step("Look at the hub", book).parts if isinstance(part, Figure)]
        return f'<li><span class="index">1</span> {figure.callouts[0].label}</li>' in as_html(book)

    assert not legend(booklet({}))
    assert legend(booklet({}, ("{on: hub, across: 50, down: 90}", "{on: case, across: 50, down: 90}")))
