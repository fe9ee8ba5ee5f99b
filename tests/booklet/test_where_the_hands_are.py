"""What is near the hands, what they hold meanwhile, whom they ask, and what they may use again."""

from __future__ import annotations

from authoring.booklet.markup import said
from authoring.booklet.step_parts import Checkpoint
from authoring.cli.disk import read_library
from authoring.pipeline import check, compose
from tests.booklet import rare_booklet
from tests.booklet.goldens import TREE
from tests.booklet.steps_booklet import booklet, step, told

STOP = "      - step: Stop the [engine] and set the [switch].\n"
HOT = "up to 350 °C; bare metal burns from 51 °C on, touched for 60 s"


def test_what_is_near_is_named_with_its_hazard_before_the_instruction() -> None:
    """The thing stands with the kinds of hazard that the equipment gives it; a thing without one stands alone."""
    files, unread = read_library(str(TREE / "procedures"))
    found = {}
    for hazards in ("hazards: [hot]", "hazards: [hot, crushing]"):
        text = files["hob.yaml"].replace(b"hazards: [hot]", hazards.encode())
        one = compose(check(files | {"hob.yaml": text}, unread), "FL-110", {})
        found[hazards] = told("Near", step("Remove the level plug", one).before)
    assert found == {
        "hazards: [hot]": [f"exhaust pipe (hot surface; {HOT})"],
        "hazards: [hot, crushing]": [f"exhaust pipe (hot surface and crushing; {HOT})"],
    }
    plain = booklet({}, (STOP, f"{STOP}        near: [hose, plug]\n"))
    assert told("Near", step("Stop the engine", plain).before) == ["brake hose, sensor plug"]


def test_what_the_instruction_says_is_held_is_not_said_twice() -> None:
    """A sentence that names the thing and how it is kept needs no line; one that leaves out how does."""
    for text, lines in (
        ("While the [arm] is pressed in with the thumb, remove the [cover-bolts] and the [cover].", 0),
        ("While the [arm] is held, remove the [cover-bolts] and the [cover].", 1),
    ):
        book = booklet({}, ("Remove the [cover-bolts] and the [cover].", text))
        assert len(told("While", step("While the catch", book).before)) == lines


def test_a_checkpoint_says_where_it_is_seen() -> None:
    """The word is the instruction's own: through where it looks through, else at."""
    for text, words in (
        ("Look at the [hub].", "hub at the gear case"),
        ("Look at the [hub] through the [case].", "hub through the gear case"),
    ):
        book = booklet({}, ("Look at the [hub].", text), ("against: pads", "against: pads\n              at: case"))
        (look,) = [part for part in step("Look at the hub", book).parts if isinstance(part, Checkpoint)]
        assert said(look.what) == words


def test_a_place_of_a_thing_is_told_as_its_place() -> None:
    """The slot is the gear case's; a place with a preposition of its own follows the thing."""
    for place, words in (
        ("the slot", "its lug into the slot of the gear case"),
        ("its slot", "its lug into the slot of the gear case"),
        ("slot", "its lug into the slot of the gear case"),
        ("at the top", "its lug into the gear case, at the top"),
    ):
        book = booklet({}, ("at: the slot}", f"at: {place}}}"))
        assert told("Engages", step("Stick the thrust washer", book).parts) == [words]


def test_what_is_held_is_not_yet_secured() -> None:
    """The aid, and the thing that traps it."""
    assert told("Held", step("Stick the thrust washer", booklet({})).parts) == [
        "Not yet secured: by the assembly grease, until the cover is in place"
    ]


def test_reuse_is_told_where_a_thing_comes_off_and_goes_back_but_not_where_it_is_discarded() -> None:
    """The cover has its line twice; the washer is discarded at the step that takes it off, and is put up later."""
    book = booklet({})
    cover = ["cover: used again on a condition. Only where its face is flat."]
    assert told("Reuse", step("Remove the cover bolts", book).parts) == cover
    assert told("Reuse", step("Fit the", book).parts) == []
    assert cover[0] in told("Reuse", step("Fit the coupling", book).parts)
    assert told("Reuse", step("Remove the thrust washer", book).parts) == []
    assert told("Reuse", step("Stick the thrust washer", book).parts) == ["thrust washer: never used again"]


def test_who_is_asked_has_a_box_for_each_answer_and_a_line_for_the_name() -> None:
    """A booklet for one answer has that box alone."""
    support = "      - step: Support the [tracks].\n"
    ask = "      - step: Ask about the [breather].\n        do: [{ask: {what: breather, who: customer}}]\n"
    change = {"FL_310": (support, f"{ask}{support}")}
    for selection, boxes in (({}, "[ ] cap on the case [ ] raised hose "), ({"breather": "hose"}, "[ ] raised hose ")):
        one = rare_booklet.booklet(selection, **change)
        assert told("Ask", step("Ask about", one).parts) == [
            f"the customer: Does the machine work in water? {boxes}Name ____"
        ]


def test_what_the_fasteners_of_an_item_are_among_is_left_alone_as_well() -> None:
    """Painted bolts that hold one thing and sit among the bolts of another are told at both."""
    files, unread = read_library(str(TREE / "tests" / "booklet" / "steps"))
    equipment = files["alder.yaml"]
    for place, count in ((b"on: flange\n    among: case", 1), (b"on: flange", 0)):
        changed = equipment.replace(b"on: case\n    untouched", place + b"\n    untouched")
        assert changed != equipment
        book = compose(check(files | {"alder.yaml": changed}, unread), "FL-320", {})
        lines = told("Leave alone", step("Remove the cover bolts", book).parts)
        assert ["painted case bolts" in line for line in lines].count(True) == count


def test_what_comes_off_in_one_method_only_says_so_in_the_count() -> None:
    """What one of two methods takes off is marked; what both take off is not."""
    for other, words in (("spacer", ", by this method only"), ("case", "")):
        methods = (
            "      - either:\n"
            "          - step: Remove the [case].\n            do: [{remove: case}]\n"
            f"          - step: Take off the [{other}].\n            do: [{{remove: {other}}}]\n"
        )
        one = rare_booklet.booklet(FL_310=("      - either:\n", f"{methods}      - either:\n"))
        undone = rare_booklet.rows(one, "closing", "count")["chain case"][1]
        assert undone.partition(",")[1:] == words.partition(",")[1:]


def test_combinations_that_never_occur_stand_below_the_vehicles() -> None:
    """The note names what no machine has, as long as the booklet is not for one of the two."""
    drum = "  drum: {name: drum, tell: Look., values: {big: big drum, small: small drum}}\n"
    never = ("features:\n", f"never:\n  - {{cover: square, drum: big}}\nfeatures:\n{drum}")
    note = "No machine has cover: square cover together with drum: big drum."
    assert rare_booklet.booklet(rowan=never).cover.fitments.note == note
    assert rare_booklet.booklet({"cover": "round"}, rowan=never).cover.fitments.note == ""
    assert rare_booklet.booklet().cover.fitments.note == ""


def test_where_a_thing_is_that_the_hands_come_near_to_or_fit_into() -> None:
    """The place of what is near, and of what a part goes into, stands at the first step that names it."""
    plain = booklet({}, (STOP, f"{STOP}        near: [flange]\n"))
    assert "flange: at the rear of the gear case" in told("Where", step("Stop the engine", plain).parts)
    into = booklet({}, ("with: case, at: the slot", "with: flange, at: the slot"))
    assert told("Where", step("Stick the thrust washer", into).parts) == ["flange: at the rear of the gear case"]


def test_bolts_that_stay_are_told_with_their_length() -> None:
    """Where their length is known, it tells them from their neighbours."""
    files, unread = read_library(str(TREE / "tests" / "booklet" / "steps"))
    longer = files["alder.yaml"].replace(b"on: case\n    untouched", b"length: 55 mm\n    on: case\n    untouched")
    book = compose(check(files | {"alder.yaml": longer}, unread), "FL-320", {})
    assert (
        "4 × painted case bolts, M10 x 1.5, 55 mm long: They hold"
        in told("Leave alone", step("Remove the cover bolts", book).parts)[0]
    )


def test_what_is_meant_to_be_open_says_when() -> None:
    """Open while the engine runs, opened before it does, and shut again before it does, where it serves nobody."""
    run = "      - step: Run the [engine] until the oil has [window].\n"
    loosen = "      - step: Loosen the [level-plug].\n        do: [{loosen: level-plug}]\n"
    tighten = "      - step: Tighten the [level-plug].\n        do: [{tighten: level-plug}]\n"
    why = "The level counts only while the pump runs."
    for more, words in (
        (loosen, [f"level plug: later, while the engine runs, it is meant to be open. {why}"]),
        (loosen + tighten, []),
    ):
        assert told("Open", step("Loosen the level plug", booklet({}, (run, f"{more}{run}"))).parts) == words
    plain = booklet({})
    assert told("Open", step("Remove the level plug", plain).parts) == [
        f"level plug: meant to be open while the engine runs. {why}"
    ]
    stopped = booklet(
        {},
        (run, run.replace("Run the [engine]", "Stop the [engine]")),
        ("[{run: {what: engine, until: window}}]", "[{stop: engine}]"),
        ("needs: {engine: running, oil: window}", "needs: {oil: window}"),
    )
    assert told("Open", step("Remove the level plug", stopped).parts) == []


def test_an_engine_that_runs_from_the_beginning_runs_where_a_thing_is_opened() -> None:
    """What the procedure itself needs holds before its first step."""
    run = "      - step: Run the [engine] until the oil has [window].\n"
    loosen = "      - step: Loosen the [level-plug].\n        do: [{loosen: level-plug}]\n"
    runs_on = (
        ("hazards: none", "hazards: none\nneeds: {engine: running}"),
        ("do: [{stop: engine}, ", "do: ["),
        ("needs: {engine: stopped, arm: in}", "needs: {arm: in}"),
        ("needs: {oil: filled, engine: stopped}", "needs: {oil: filled}"),
    )
    book = booklet({}, (run, loosen + run), *runs_on)
    assert told("Open", step("Loosen the level plug", book).parts) == [
        "level plug: meant to be open while the engine runs. The level counts only while the pump runs."
    ]
