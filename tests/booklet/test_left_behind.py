"""What a job leaves behind, as a booklet prints it: the closing count, what changed, who is told, what it stands on."""

from __future__ import annotations

import pytest
import yaml

from authoring.booklet.blocks import Form, Table
from authoring.cli.disk import read_library
from authoring.pipeline import check, compose
from tests.booklet.goldens import TREE
from tests.booklet.rare_booklet import anchors, booklet, chapter, plainly, rows

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
        ("drain plug", "15a or 15b"),
        ("spacer plate", "held in step 7, trapped in step 8"),
        ("two stay holes", "left empty on purpose in step 9"),
    ],
)
def test_the_closing_count_follows_what_became_of_each_thing(thing: str, told: str) -> None:
    """Methods count once, a held thing is not yet secured, an empty place was left so."""
    assert rows(booklet(), "closing", "count")[thing][2] == told


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


def test_what_is_undone_again_after_it_was_back_says_so_in_words() -> None:
    """The cover is off in steps 3 and 6, back in 8, and off and back once more; the plug's two methods are one way."""
    more = (
        "      - step: Remove the [outer-cover].\n        do: [{remove: outer-cover}]\n"
        "      - step: Fit the [outer-cover].\n        do: [{fit: outer-cover}]\n"
    )
    one = booklet(FL_310=("      - step: Set the [lever] to low", f"{more}      - step: Set the [lever] to low"))
    found = rows(one, "closing", "count")
    assert found["outer cover, over the spacer plate"][1:3] == (
        "3, 6; undone again in step 17, after it was back",
        "8, 18",
    )
    assert "again" not in found["drain plug"][1]


def test_only_fasteners_have_a_number_in_the_count() -> None:
    """The equipment states how many cover bolts there are, and of no item how many it is."""
    found = rows(booklet(), "closing", "count")
    assert (found["cover bolts"][0], found["breather cap"][0]) == ("4", "")


def test_what_a_modification_leaves_out_stays_off_and_nothing_else_does() -> None:
    """With the hose the cap stays off by the modification; a modification that does not name it leaves it undone."""
    hose = {"breather": "hose"}
    assert rows(booklet(hose), "closing", "count")["breather cap"][2] == "stays off: raised breather"
    both = rows(booklet(), "closing", "count")["breather cap"][2]
    assert both == "12 (only if chosen: cap on the case); stays off: raised breather (only if chosen: raised hose)"
    unsaid = booklet(hose, FL_310=("    leaves-out: [breather-cap]\n", ""))
    assert rows(unsaid, "closing", "count")["breather cap"][2] == "NOT DONE AGAIN"
    assert rows(booklet({"breather": "cap"}), "closing", "count")["breather cap"][2] == "12"


def test_what_a_modification_exchanges_is_told_with_the_new_part() -> None:
    """The old clip is gone, and the count names what sits in its place, as do the chapter and the note."""
    hose = booklet({"breather": "hose"})
    assert rows(hose, "closing", "count")["short clip"][2] == (
        "discarded in step 14; replaced in step 14 by the long clip: raised breather"
    )
    anchor = "modification-raised-breather"
    assert rows(hose, "modifications", anchor)["Exchanged"][0] == "short clip, now the long clip, FL-P-406"
    note = chapter(hose, "slips").blocks[0]
    assert isinstance(note, Form)
    assert {row.label: plainly(row.printed) for row in note.rows}["Exchanged"] == "the short clip, now the long clip"


def test_the_state_in_which_the_machine_is_left_has_a_box() -> None:
    """The lever is left in low range."""
    assert rows(booklet(), "closing", "left") == {"range lever": ("low range", "")}


def test_a_modification_is_told_with_a_note_to_tear_off() -> None:
    """As found, as left, added, off and told; the note says it again with a line for the machine and the name."""
    hose = booklet({"breather": "hose"})
    table, signed = chapter(hose, "modifications").blocks
    note, slip = chapter(hose, "slips").blocks
    assert isinstance(table, Table)
    heads = [plainly(row[0].text) for row in table.rows]
    assert heads == [
        *("Made", "As found", "As left", "Why", "Clearance"),
        *("Added", "Exchanged", "Stays off", "Told", "Told"),
    ]
    assert [row[2].tick for row in table.rows] == [False, True, True, False, *[True] * 6]
    assert plainly(table.rows[0][1].text) == "[ ] done [ ] not done "
    assert isinstance(signed, Form)
    assert isinstance(note, Form)
    assert note.cut
    assert {row.label: plainly(row.printed) for row in note.rows}["Stays off"] == "breather cap"
    assert [row.label for row in note.rows if row.lines] == ["Machine", "Name and date"]
    clear = "the breather hose clear of the chain case, at least 20 mm (at least 0.79 in)"
    assert {row.label: plainly(row.printed) for row in note.rows}["Clearance"] == clear
    assert isinstance(slip, Form)
    assert [row.label for row in slip.rows] == ["Machine", "Now", "Why", "Done after", "Name and date"]
    assert "modifications" not in anchors(booklet({"breather": "cap"}))


@pytest.mark.parametrize(
    ("told", "titles"),
    [
        ("customer", ["For the customer: raised breather"]),
        ("next-technician", ["For the next technician: raised breather"]),
        ("driver", ["For the driver: raised breather"]),
        ("lead", []),
    ],
)
def test_only_who_is_told_gets_a_slip(told: str, titles: list[str]) -> None:
    """The next technician has a note, customer and driver a short slip; the lead reads the booklet."""
    one = booklet(FL_310=("tell: [customer, next-technician]", f"tell: [{told}]"))
    forms = [block for page in one.chapters for block in page.blocks if isinstance(block, Form) and block.cut]
    assert [form.title for form in forms] == titles
    assert ("slips" in anchors(one)) == bool(titles)


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
