"""The page rules, on planted places and on pages that were really set."""

from __future__ import annotations

import random
from pathlib import Path

import pytest
from msgspec import structs

from authoring.booklet.blocks import Block, Booklet, Chapter, End, Table
from authoring.booklet.step_parts import Caution, Checkpoint, Drawing, Figure, Outcome, Step, StepPart
from authoring.booklet.words import Blank, Bullets, Paragraph
from authoring.render.landing import Spot
from authoring.render.page_rules import broken_rules, steps_on, stranded_headings
from authoring.render.paged import as_paged_html
from authoring.render.pdf import as_pdf
from authoring.render.press import press
from tests.outside_checkers.pdf_text import pdf_text
from tests.render.sample import sample
from tests.render.sample_drawings import FACE, LEVEL_AT, PATTERN, ROW, SEALS, STRIP
from tests.render.sample_parts import (
    BURN,
    HUB,
    LEVEL,
    MEASURE,
    NUT_TORQUE,
    PLUG_TORQUE,
    REASON,
    SEAL,
    THREAD,
    TIP,
    TOOLS,
    WEAR,
    WHICH,
    say,
)

Places = dict[str, tuple[Spot, ...]]

STEP = Step("s", "4", "", (BURN, THREAD), say("Fit it."), (PLUG_TORQUE, SEALS, PATTERN, MEASURE, LEVEL, HUB), (TIP,))
CHAPTER = Chapter("c", "1", "Fit", 1, (BURN, STEP, End("END")))


def at(page: int, top: float, bottom: float) -> Spot:
    """Return a spot on a page that ends at 1000."""
    return Spot(page, top, bottom, 1000)


def booklet(*blocks: Block) -> Booklet:
    """Return the sample with one chapter of these blocks."""
    chapter = Chapter("c", "1", "Fit", 1, blocks)
    return structs.replace(sample(), chapters=(chapter,))


def good() -> Places:
    """Return places of BLOCKS that break no rule."""
    return {
        "c": (at(1, 0, 900), at(2, 0, 300)),
        "c~heading": (at(1, 0, 40),),
        "warn": (at(1, 50, 150),),
        "s": (at(1, 160, 900), at(2, 0, 200)),
        "s~before": (at(1, 160, 165),),
        "burn": (at(1, 170, 260),),
        "thread": (at(1, 270, 360),),
        "s~text": (at(1, 370, 400),),
        "s~part1": (at(1, 410, 500),),
        "s~part2": (at(1, 510, 600),),
        "s~part5": (at(2, 91, 99),),
        "shaft": (at(1, 610, 900),),
        "level": (at(2, 0, 90),),
        "hub": (at(2, 100, 200),),
        "hub~picture": (at(2, 100, 150),),
        "hub~caption": (at(2, 150, 200),),
        "c~3": (at(2, 250, 300),),
    }


BLOCKS = booklet(structs.replace(BURN, id="warn"), STEP, End("END"))


def test_good_places_break_nothing() -> None:
    """What belongs together stands together; a checkpoint with nothing to write on and a figure may come overleaf."""
    assert broken_rules(BLOCKS, good()) == []


@pytest.mark.parametrize(
    ("place", "spots", "words"),
    [
        ("burn", (at(1, 900, 1000), at(2, 0, 50)), "The WARNING block of step 4 is cut: it stands on pages 1 and 2."),
        ("burn", (at(1, 160, 1100),), "The WARNING block of step 4 runs off the foot of page 1."),
        ("thread", (at(2, 0, 50),), "The NOTICE block of step 4 is not on the page of the step's instruction"),
        ("thread", (at(1, 390, 450),), "The NOTICE block of step 4 does not stand above the step's instruction."),
        ("s~before", (at(0, 900, 990),), "What must be so before step 4 is not on the page of the instruction"),
        ("s~text", (at(1, 980, 1000), at(2, 0, 10)), "The instruction of step 4 is cut"),
        ("s~part1", (at(2, 0, 50),), "The torque of step 4 is not on the page of the instruction"),
        ("s~part1", (at(1, 900, 1000), at(2, 0, 50)), "The torque of step 4 is cut"),
        ("shaft", (at(2, 0, 50),), "The checkpoint of step 4 is not on the page of the instruction"),
        ("level", (at(2, 990, 1000), at(3, 0, 9)), "The checkpoint of step 4 is cut"),
        (
            "s~part2",
            (at(2, 0, 50),),
            'The drawing "Order of tightening: wheel nuts" of step 4 is not on the page of the',
        ),
        ("s~part2", (at(1, 900, 1000), at(2, 0, 50)), 'The drawing "Order of tightening: wheel nuts" of step 4 is cut'),
        ("s~part5", (at(2, 990, 1000), at(3, 0, 9)), 'The drawing "Shaft seal: thickness" of step 4 is cut'),
        ("s~part5", (at(3, 0, 50),), 'The drawing "Shaft seal: thickness" is more than a page away from step 4.'),
        ("hub", (at(3, 0, 200),), "Figure 1 is more than a page away from step 4."),
        ("hub~picture", (at(1, 900, 1000),), "Figure 1 and its caption are on different pages: page 1 and page 2."),
        ("hub~picture", (at(2, 0, 1200),), "Figure 1 runs off the foot of page 2."),
        ("hub~caption", (at(2, 990, 1000), at(3, 0, 10)), "The caption of figure 1 is cut"),
        ("warn", (at(2, 0, 50),), 'The WARNING block in "Fit" is not on the page of what it guards'),
        ("c~3", (at(3, 0, 50),), "The line that ends the procedure stands alone on its page."),
    ],
)
def test_each_planted_break_is_told(place: str, spots: tuple[Spot, ...], words: str) -> None:
    """One element moved breaks its rule, and the break names the pages and says what is wrong."""
    parted = broken_rules(BLOCKS, good() | {place: spots})
    assert any(one.element == place and one.sentence.startswith(words) for one in parted), parted
    assert all(set(one.pages) >= {spots[0].page} or one.element != place for one in parted)


def test_a_stranded_heading_is_no_broken_rule_but_is_known() -> None:
    """A heading on the page before its chapter is told apart from the rules, for another try at the layout."""
    places = good() | {"c~heading": (at(0, 950, 1000),)}
    assert broken_rules(BLOCKS, places) == []
    (stranded,) = stranded_headings(BLOCKS, places)
    assert stranded.pages == (0, 1)
    assert stranded_headings(BLOCKS, good()) == []


def test_a_step_without_caution_keeps_its_line_of_fitments() -> None:
    """A step whose first line stands on the page before its instruction is told."""
    step = structs.replace(STEP, cautions=(), parts=(), before=())
    places = {"c": (), "c~heading": (at(1, 0, 9),), "s": (at(1, 980, 1000), at(2, 0, 50)), "s~text": (at(2, 0, 50),)}
    (parted,) = broken_rules(booklet(step), places)
    assert parted.sentence == "Step 4 begins on a page without its instruction."


@pytest.mark.parametrize(("drawing", "told"), [(PATTERN, 1), (FACE, 1), (LEVEL_AT, 1), (SEALS, 0)])
def test_a_drawing_is_not_overleaf_unless_a_table_is(drawing: Drawing, told: int) -> None:
    """What is read at the instruction stands on its page; look-alikes go with the table that tells them apart."""
    step = structs.replace(STEP, cautions=(), parts=(drawing,), before=())
    places = {"c": (), "c~heading": (at(1, 0, 9),), "s": (at(1, 980, 1000), at(2, 0, 50)), "s~text": (at(1, 980, 999),)}
    assert len(broken_rules(booklet(step), places | {"s~part1": (at(2, 0, 50),)})) == told


def test_a_drawing_that_stands_in_a_chapter_is_whole() -> None:
    """One that is cut over two pages is told of by its title, and one that is not is fine."""
    places = {"c": (), "c~heading": (at(1, 0, 9),), "c~1": (at(1, 20, 90),)}
    assert broken_rules(booklet(STRIP), places) == []
    (parted,) = broken_rules(booklet(STRIP), places | {"c~1": (at(1, 980, 1000), at(2, 0, 50))})
    assert parted.sentence == 'The drawing "Energy and condition" in "Fit" is cut: it stands on pages 1 and 2.'


def words(luck: random.Random, low: int, high: int) -> str:
    """Return a sentence of so many invented words."""
    return " ".join(luck.choice(("plug", "housing", "to", "the", "lever", "evenly", "ring", "seat", "of", "washer"))
                    for _ in range(luck.randint(low, high))).capitalize() + "."  # fmt: skip


def caution(luck: random.Random, name: str) -> Caution:
    """Return a caution block of ordinary length whose hazard names it."""
    word = luck.choice(("DANGER", "WARNING", "CAUTION", "NOTICE"))
    texts = (f"Hazard {name}. {words(luck, 4, 10)}", words(luck, 3, 10), words(luck, 5, 20))
    hazard, consequence, avoidance = map(say, texts)
    return Caution(name, word, "person", "general" if word != "NOTICE" else "", hazard, consequence, avoidance)


def parts(luck: random.Random, name: str) -> tuple[StepPart, ...]:
    """Return up to three different kinds of parts of a step."""
    outcomes = tuple(
        Outcome(say(words(luck, 2, 12)), say(words(luck, 2, 20)), good=n == 0) for n in range(luck.randint(2, 3))
    )
    pool: tuple[StepPart, ...] = (
        PLUG_TORQUE,
        Checkpoint(
            f"{name}-m", "Measure", say(words(luck, 3, 12)), (), ((Blank("mm"),),), outcomes, hold=luck.random() < 0.4
        ),
        structs.replace(luck.choice((HUB, SEAL, WEAR)), id=f"{name}-f"),
        structs.replace(WHICH, id=f"{name}-w"),
        luck.choice((TIP, REASON)),
        luck.choice((PATTERN, ROW, FACE, SEALS, LEVEL_AT)),
        Bullets(tuple(say(words(luck, 3, 14)) for _ in range(luck.randint(1, 5)))),
    )
    return tuple(luck.sample(pool, luck.choice((0, 0, 1, 1, 2, 3))))


def block(luck: random.Random, name: str) -> Block:
    """Return a step, or now and then something else that stands between steps."""
    dice = luck.random()
    if dice < 0.06:
        return caution(luck, f"{name}-c")
    if dice < 0.10:
        return Paragraph(say(words(luck, 10, 90)))
    if dice < 0.13:
        return Table(f"{name}-t", "Parts", TOOLS.heads, TOOLS.rows * luck.randint(1, 6), TOOLS.widths)
    cautions = tuple(caution(luck, f"{name}-c{n}") for n in range(luck.choice((0, 0, 0, 1, 1, 2, 3))))
    applies = luck.choice(("", "", "Only drum brakes"))
    chosen = parts(luck, name)
    if any(isinstance(one, Checkpoint) for one in chosen):
        # Three safety messages, a torque and a measurement are no ordinary step, and do not fit a page.
        cautions = cautions[:2]
    return Step(name, name[1:], applies, cautions, say(f"Do {name}. {words(luck, 3, 30)}"), chosen)


def random_booklet(seed: int) -> Booklet:
    """Return a booklet of three chapters with some forty ordinary steps."""
    luck = random.Random(seed)  # noqa: S311  # a sample, no secret
    chapters = []
    for number in (1, 2, 3):
        blocks = [block(luck, f"x{number}{n:02}") for n in range(luck.randint(8, 18))]
        blocks.append(Step(f"x{number}99", f"{number}99", "", (), say("Do the last."), ()))
        if number == 3:
            blocks.append(End("END OF PROCEDURE"))
        chapters.append(Chapter(f"ch{number}", str(number), words(luck, 2, 6), luck.choice((1, 2)), tuple(blocks)))
    return structs.replace(sample(), chapters=tuple(chapters))


@pytest.mark.slow
@pytest.mark.parametrize("seed", range(6))
def test_ordinary_booklets_keep_every_rule(seed: int, tmp_path: Path) -> None:
    """S5, Y1, F1: with texts of ordinary length nothing is parted, and pdftotext finds the same pages."""
    made = random_booklet(seed)
    content, parted = as_pdf(made)
    assert parted == []
    path = tmp_path / "random.pdf"
    path.write_bytes(content)
    pages = pdf_text(path)
    steps = [one for chapter in made.chapters for one in chapter.blocks if isinstance(one, Step) and one.cautions]
    assert len(steps) > 5
    for step in steps:
        (page,) = [text for text in pages if f"Do {step.id}." in text]
        assert all(f"Hazard {message.id}." in page for message in step.cautions)


@pytest.mark.slow
def test_a_step_that_fits_a_page_is_whole() -> None:
    """Steps with a figure each, one after the other, are never cut: a step that does not fit goes overleaf."""
    steps = tuple(
        Step(f"s{n}", str(n), "", (), say("Look at it."), (structs.replace(HUB, id=f"f{n}"), PLUG_TORQUE))
        for n in range(4)
    )
    made = booklet(*steps)
    _, places = press(as_paged_html(made), made.assets)
    assert [len(places[step.id]) for step in steps] == [1, 1, 1, 1]
    assert steps_on(made, places, {places["s2"][0].page}) == {"s2"}


@pytest.mark.slow
def test_a_loose_step_keeps_what_it_must() -> None:
    """Wherever on its page a step begins that is taller than a page, its torque stays with its instruction."""
    figures = tuple(structs.replace(SEAL, id=f"figure{n}") for n in range(2))
    chapters = []
    for lines in range(26, 46, 2):
        filler = Bullets(tuple(say("Oil the lever.") for _ in range(lines)))
        parts = tuple(structs.replace(one, id=f"{one.id}-{lines}") for one in figures)
        step = Step(f"s{lines}", "1", "", (), say("Fit it."), (*parts, PLUG_TORQUE, NUT_TORQUE))
        chapters.append(Chapter(f"c{lines}", "1", "Fit", 1, (filler, step), new_page=True))
    made = structs.replace(sample(), chapters=tuple(chapters))
    loose = frozenset(f"s{lines}" for lines in range(26, 46, 2))
    _, places = press(as_paged_html(made, loose), made.assets)
    assert broken_rules(made, places) == []
    assert {len(places[step]) for step in loose} >= {2}


@pytest.mark.slow
def test_a_chain_of_cautions_taller_than_a_page_is_told() -> None:
    """Cautions that cannot stand on one page with their step are reported, each with its pages, and nothing else is."""
    luck = random.Random(1)  # noqa: S311  # a sample, no secret
    many = tuple(caution(luck, f"m{n}") for n in range(12))
    step = Step("s", "1", "", many, say("Fit it."), ())
    _, parted = as_pdf(booklet(step))
    assert parted
    assert {one.element for one in parted} <= {message.id for message in many}
    assert all(len(one.pages) == 2 for one in parted)
    assert "m0" in {one.element for one in parted}


@pytest.mark.slow
def test_a_caution_taller_than_a_page_is_told() -> None:
    """One caution block that no page can hold is reported as cut."""
    endless = structs.replace(BURN, avoidance=say("Keep clear of the hot side and wear gloves. " * 120))
    _, parted = as_pdf(booklet(Step("s", "1", "", (endless,), say("Fit it."), (PLUG_TORQUE,))))
    assert any("is cut" in one.sentence and one.element == "burn" for one in parted)


@pytest.mark.slow
def test_figures_stay_small_enough_for_their_step() -> None:
    """A step with a caution, a torque and the tallest picture there is still stands on one page."""
    tall: Figure = structs.replace(SEAL, width=900.0, height=3000.0)
    _, parted = as_pdf(booklet(Step("s", "1", "", (BURN, THREAD), say("Fit it."), (tall, PLUG_TORQUE))))
    assert parted == []
