"""The rules for what fits one page together, on planted places and on pages that were really set."""

from __future__ import annotations

import pytest
from msgspec import structs

from authoring.booklet.blocks import Block, Booklet, Chapter
from authoring.booklet.step_parts import Step
from authoring.booklet.words import Bullets, Paragraph
from authoring.render.landing import Spot
from authoring.render.page_groups import parted_groups
from authoring.render.page_rules import Landing
from authoring.render.paged import as_paged_html
from authoring.render.pdf import as_pdf
from authoring.render.press import press
from authoring.render.time_runs import LONGEST_RUN, on_the_clock
from tests.render.sample import sample
from tests.render.sample_parts import MEASURE, PLUG_TORQUE, TIP, TOOLS, say

Places = dict[str, tuple[Spot, ...]]

FIRST = Step("a", "1", "", (), say("Warm it."), ())
SECOND = Step("b", "2", "", (), say("Fit it."), (), clock="a")
INTRO = Paragraph(say("It is done warm."))


def booklet(*blocks: Block) -> Booklet:
    """Return the sample with one chapter of these blocks."""
    return structs.replace(sample(), chapters=(Chapter("c", "1", "Fit", 1, blocks),))


def at(page: int, top: float, bottom: float) -> Spot:
    """Return a spot on a page from 100 to 1000."""
    return Spot(page, top, bottom, 1000, 100)


def good() -> Places:
    """Return places of the contents, a heading, its intro and two steps that part nothing."""
    return {
        "contents~whole": (at(1, 300, 900),),
        "c~heading": (at(2, 100, 140),),
        "c~1": (at(2, 150, 170),),
        "a": (at(2, 180, 300),),
        "a~text": (at(2, 190, 210),),
        "b": (at(2, 300, 500),),
        "b~text": (at(2, 310, 330),),
    }


def told(places: Landing, *blocks: Block) -> list[tuple[str, str]]:
    """Return the element and the sentence of each parted group."""
    return [(one.element, one.sentence) for one in parted_groups(booklet(*blocks), places)]


def test_good_places_part_nothing() -> None:
    """What fits stands together."""
    assert told(good(), INTRO, FIRST, SECOND) == []


@pytest.mark.parametrize(
    ("spots", "words"),
    [
        ((at(1, 900, 1000), at(2, 100, 200)), "The contents are cut: they stand on pages 1 and 2."),
        ((at(1, 300, 1100),), "The contents run off the foot of page 1."),
    ],
)
def test_contents_that_are_not_whole_are_told(spots: tuple[Spot, ...], words: str) -> None:
    """They are looked at beside one another, and a line below the foot is lost."""
    assert told(good() | {"contents~whole": spots}, INTRO, FIRST, SECOND) == [("contents~whole", words)]


def test_a_heading_away_from_its_first_step_is_told() -> None:
    """With its intro or without; not where more than text leads in, nor where no page holds all."""
    foot = {"c~heading": (at(1, 900, 940),)}
    words = 'The heading "Fit" is on page 1, and its first step on page 2.'
    for intro in (at(1, 950, 970), at(2, 100, 120)):
        places = good() | foot | {"c~1": (intro,)}
        assert told(places, INTRO, FIRST, SECOND) == [("c~heading", words)]
    table = structs.replace(TOOLS, id="c~1")
    assert told(good() | foot, table, FIRST, SECOND) == []
    assert told(good() | foot | {"a~text": (at(2, 150, 990),)}, INTRO, FIRST, SECOND) == []


def test_a_step_in_time_away_from_the_start_of_its_clock_is_told() -> None:
    """Nobody turns the page while the clock runs, unless both are longer than a page, or there are too many between."""
    over = {"b": (at(3, 100, 300),), "b~text": (at(3, 110, 130),)}
    words = "Time runs from step 1 on page 2 to step 2 on page 3."
    assert told(good() | over, INTRO, FIRST, SECOND) == [("b", words)]
    assert told(good() | over | {"b": (at(3, 100, 990),)}, INTRO, FIRST, SECOND) == []
    assert told(good() | over, INTRO, FIRST, structs.replace(SECOND, clock="")) == []
    between = [structs.replace(FIRST, id=f"x{n}") for n in range(LONGEST_RUN)]
    assert on_the_clock(booklet(FIRST, *between[2:], SECOND)) == {"a", "x2", "x3"}
    assert on_the_clock(booklet(FIRST, *between, SECOND)) == frozenset()


@pytest.mark.slow
def test_a_heading_goes_with_its_first_step_and_a_clock_keeps_its_steps() -> None:
    """Wherever a section begins, its heading, its intro and its first step are together, and so is a run."""
    chapters = []
    for lines in range(18, 44, 2):
        filler = Bullets(tuple(say("Oil the lever.") for _ in range(lines)))
        first, second = (
            structs.replace(one, id=f"{one.id}{lines}", parts=parts)
            for one, parts in ((FIRST, (structs.replace(MEASURE, id=f"m{lines}"),)), (SECOND, (PLUG_TORQUE,)))
        )
        second = structs.replace(second, clock=first.id)
        chapters += [
            Chapter(f"f{lines}", "", "Oil", 1, (filler,), new_page=True),
            Chapter(f"c{lines}", "", "Fit", 1, (TIP, INTRO, first, second)),
        ]
    made = structs.replace(sample(), chapters=tuple(chapters))
    _, places = press(as_paged_html(made), made.assets)
    assert parted_groups(made, places) == []
    pages = [
        [places[place][0].page for place in (f"c{lines}~heading", f"a{lines}~text", f"b{lines}~text")]
        for lines in range(18, 44, 2)
    ]
    assert all(len(set(three)) == 1 for three in pages)


@pytest.mark.slow
def test_contents_longer_than_a_page_stop_the_build() -> None:
    """Two columns hold some hundred lines; with more, the booklet is told to be too long."""
    chapters = tuple(Chapter(f"c{n}", str(n), "Fit", 2, (INTRO,)) for n in range(150))
    _, parted = as_pdf(structs.replace(sample(), chapters=chapters))
    assert [one.element for one in parted] == ["contents~whole"]
