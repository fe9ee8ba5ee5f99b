"""Booklets as people can read them, compared whole, and what must hold of every booklet."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from authoring.booklet.blocks import Booklet, Caution, Chapter, Step, TorqueCallout
from authoring.pipeline import compose
from tests.booklet.goldens import BOOKLETS, checked, written

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


def test_step_numbers_run_on(booklet: Booklet) -> None:
    """The steps of the job count from 1 without a gap, and so do those of each annex."""
    numbers = [step.number for _, step in steps(booklet)]
    for letter in {number.rstrip("0123456789") for number in numbers}:
        mine = [number for number in numbers if number.rstrip("0123456789") == letter]
        assert mine == [f"{letter}{n}" for n in range(1, len(mine) + 1)]


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
    """With the brake settled, no line says for which brake it is, and each choice of parts has one row."""
    one = compose(checked("procedures"), "FL-120", {"brake": "disc"})
    assert one.fitment == "Only parking brake: disc brake"
    assert {step.applies for _, step in steps(one)} == {""}
    words = str([step for _, step in steps(one)])
    assert "drum" not in words.replace("drum brake or", "")
    everything = compose(checked("procedures"), "FL-120", {})
    assert len(list(steps(one))) < len(list(steps(everything)))


def test_every_tightening_step_has_its_torque() -> None:
    """Requirement T1: wherever the text tightens a group, its limits stand at that step in both units."""
    for _, step in steps(compose(checked("procedures"), "FL-120", {})):
        if any(word in str(step.text) for word in ("Tighten", "tighten")):
            callouts = [part for part in step.parts if isinstance(part, TorqueCallout)]
            assert callouts, step.number
            assert all([row.unit for row in one.rows] == ["N·m", "lbf·ft"] for one in callouts)
