"""Booklets as people can read them, compared whole, and what must hold of every booklet."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from authoring.booklet.blocks import Booklet, Chapter, Table
from authoring.booklet.markup import said
from authoring.booklet.step_parts import Caution, Choice, Step, TorqueCallout
from authoring.cli.disk import read_library
from authoring.pipeline import check, compose
from tests.booklet.goldens import BOOKLETS, TREE, checked, written

DEMO = TREE / "procedures"
NAMES = [name for name, *_ in BOOKLETS]


@pytest.mark.parametrize("place", range(len(BOOKLETS)), ids=NAMES)
def test_the_booklet_reads_as_the_golden_one(place: int) -> None:
    """A change of a booklet is a change of its golden file, read before it is committed (`./run golden`)."""
    path, text = list(written())[place]
    assert text == path.read_text(encoding="utf-8")


def steps(booklet: Booklet) -> Iterator[tuple[Chapter, Step]]:
    """Yield every step of a booklet with its chapter."""
    for chapter in booklet.chapters:
        for block in chapter.blocks:
            if isinstance(block, Step):
                yield chapter, block


@pytest.fixture(params=BOOKLETS, ids=NAMES)
def booklet(request: pytest.FixtureRequest) -> Booklet:
    """Give each golden booklet in turn."""
    _, folder, number, selection = request.param
    return compose(checked(folder), number, selection)


def test_anchors_are_unique(booklet: Booklet) -> None:
    """No two steps or chapters answer to one anchor."""
    anchors = [step.id for _, step in steps(booklet)] + [chapter.id for chapter in booklet.chapters]
    assert len(anchors) == len(set(anchors))


def test_step_numbers_run_on() -> None:
    """For all fitments the steps of the job count from 1 without a gap, and so do those of each annex."""
    for name in ("FL-110", "FL-120"):
        numbers = [step.number for _, step in steps(compose(checked("procedures"), name, {}))]
        for letter in {number.rstrip("0123456789") for number in numbers}:
            mine = [number for number in numbers if number.rstrip("0123456789") == letter]
            assert mine == [f"{letter}{n}" for n in range(1, len(mine) + 1)]


def test_a_number_means_the_same_step_in_every_booklet() -> None:
    """A booklet for one fitment keeps the numbers of the whole, and says that some are missing."""
    library = checked("procedures")
    whole = {step.number: step.id for _, step in steps(compose(library, "FL-120", {}))}
    for brake in ("disc", "drum"):
        one = compose(library, "FL-120", {"brake": brake})
        mine = {step.number: step.id for _, step in steps(one)}
        assert mine.items() < whole.items()
        assert "Steps" in dict(one.cover.facts.rows)
    assert "Steps" not in dict(compose(library, "FL-120", {}).cover.facts.rows)


def test_groups_that_are_easily_swapped_are_told_apart_at_the_step() -> None:
    """Where another group has the same thread and another torque, the callout names it with its torque."""
    files, unread = read_library(str(DEMO))
    mixed = files["hob.yaml"].replace(b"thread: M10 x 1.5\n", b"thread: M8 x 1.25\n")
    assert mixed != files["hob.yaml"]
    booklet = compose(check(files | {"hob.yaml": mixed}, unread), "FL-120", {})
    notes = {
        part.fasteners: part.note
        for _, step in steps(booklet)
        for part in step.parts
        if isinstance(part, TorqueCallout)
    }
    assert "Not the guard bolts, 20\u00a0mm long: the same thread, but 22" in notes["flange bolts"]
    assert "Not the flange bolts, 40\u00a0mm long: the same thread, but 46" in notes["guard bolts"]
    assert notes["drain plug"] == ""


def test_the_closing_count_vouches_only_for_what_was_tightened() -> None:
    """Bolts that are only started by hand are not done again, and neither is an item that stays off."""
    files, unread = read_library(str(DEMO))
    text = files["FL-120.yaml"].decode()
    loose = text.replace("          - tighten: guard-bolts\n", "          - start: guard-bolts\n")
    assert loose != text
    booklet = compose(check(files | {"FL-120.yaml": loose.encode()}, unread), "FL-120", {})
    closing = next(chapter for chapter in booklet.chapters if chapter.id == "closing")
    count = closing.blocks[0]
    assert isinstance(count, Table)
    rows = {said(row[0].text): said(row[3].text) for row in count.rows}
    assert rows["guard bolts"] == "NOT DONE AGAIN"
    assert rows["drain plug"] != "NOT DONE AGAIN"


def test_the_worst_caution_comes_first(booklet: Booklet) -> None:
    """Before a step its caution blocks stand in the order DANGER, WARNING, CAUTION, NOTICE."""
    order = ["DANGER", "WARNING", "CAUTION", "NOTICE"]
    for _, step in steps(booklet):
        ranks = [order.index(caution.word) for caution in step.cautions]
        assert ranks == sorted(ranks)


def test_the_safety_page_explains_the_words_in_use_and_no_other(booklet: Booklet) -> None:
    """Requirement S6: the words explained are those of the caution blocks."""
    text = "\n".join(str(block) for block in booklet.chapters[0].blocks)
    used = {caution.word for _, step in steps(booklet) for caution in step.cautions}
    used |= {block.word for chapter in booklet.chapters for block in chapter.blocks if isinstance(block, Caution)}
    assert used
    for word in ("DANGER", "WARNING", "CAUTION", "NOTICE"):
        assert (word in text) == (word in used)


def test_a_booklet_for_one_fitment_asks_nothing_that_is_settled() -> None:
    """With the brake settled, no line says for which brake it is, and the part of the other brake is marked."""
    one = compose(checked("procedures"), "FL-120", {"brake": "disc"})
    assert one.fitment == "Only parking brake: disc brake"
    assert {step.applies for _, step in steps(one)} == {""}
    choices = [part for _, step in steps(one) for part in step.parts if isinstance(part, Choice)]
    assert choices
    for choice in choices:
        wide, narrow = choice.rows
        assert said(narrow.decides).startswith("NOT THIS ONE: parking brake: drum brake")
        assert said(wide.decides).startswith("parking brake: disc brake")
    words = [said(step.text) for _, step in steps(one)]
    assert not any("drum" in text for text in words)
    everything = compose(checked("procedures"), "FL-120", {})
    assert len(list(steps(one))) < len(list(steps(everything)))


def test_every_tightening_step_has_its_torque() -> None:
    """Requirement T1: wherever the text tightens a group, its limits stand at that step in both units."""
    for _, step in steps(compose(checked("procedures"), "FL-120", {})):
        if any(word in str(step.text) for word in ("Tighten", "tighten")):
            callouts = [part for part in step.parts if isinstance(part, TorqueCallout)]
            assert callouts, step.number
            assert all([row.unit for row in one.rows] == ["N·m", "lbf·ft"] for one in callouts)
