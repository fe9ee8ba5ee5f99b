"""The page rules, measured in the finished layout: what must be read together stands together.

Sources: S5 and Y1 (caution, step, torque and record box without turning the page), F1 (figure at its words).
"""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from msgspec import Struct

from authoring.booklet.blocks import Block, Booklet, Chapter, End
from authoring.booklet.step_parts import Caution, Checkpoint, Drawing, Figure, Step, TorqueCallout
from authoring.diagnostics.words import joined
from authoring.render.landing import Spot
from authoring.render.places import (
    before_place,
    block_place,
    caption_place,
    heading_place,
    picture_place,
    placed_parts,
    text_place,
)

Landing = Mapping[str, tuple[Spot, ...]]

_HAIR = 1.0
"""Boxes that miss by less than this many CSS px (0.26 mm) do not miss."""


class Parted(Struct, frozen=True):
    """A broken page rule: the pages at fault, the id of the element, and the sentence that says what is wrong."""

    pages: tuple[int, ...]
    element: str
    sentence: str


def _pages(spots: tuple[Spot, ...]) -> tuple[int, ...]:
    return tuple(spot.page for spot in spots)


def _listed(pages: tuple[int, ...]) -> str:
    numbers = [str(page) for page in pages]
    return f"page{'s' if len(numbers) > 1 else ''} {joined(numbers)}"


def _split(places: Landing, place: str, what: str) -> Iterator[Parted]:
    """Yield a break when an element that must be whole is cut, or runs off the foot of its page."""
    spots = places[place]
    if len(spots) > 1:
        yield Parted(_pages(spots), place, f"{what} is cut: it stands on {_listed(_pages(spots))}.")
    elif spots[0].bottom > spots[0].limit + _HAIR:
        yield Parted(_pages(spots), place, f"{what} runs off the foot of {_listed(_pages(spots))}.")


def _apart(places: Landing, place: str, other: str, sentence: str) -> Iterator[Parted]:
    """Yield a break when an element does not stand on the page where another one begins."""
    here, there = places[place][-1].page, places[other][0].page
    if here != there:
        yield Parted((here, there), place, f"{sentence}: {_listed((here,))} and {_listed((there,))}.")


def _caution_rules(places: Landing, step: Step) -> Iterator[Parted]:
    text = text_place(step)
    for message in step.cautions:
        named = f"The {message.word} block of step {step.number}"
        yield from _split(places, message.id, named)
        yield from _apart(places, message.id, text, f"{named} is not on the page of the step's instruction")
        spot, words = places[message.id][-1], places[text][0]
        if spot.page == words.page and spot.bottom > words.top + _HAIR:
            yield Parted((spot.page,), message.id, f"{named} does not stand above the step's instruction.")


def _step_rules(places: Landing, step: Step) -> Iterator[Parted]:
    text = text_place(step)
    begins, words = places[step.id][0].page, places[text][0].page
    if begins != words and not step.cautions:
        yield Parted((begins, words), step.id, f"Step {step.number} begins on a page without its instruction.")
    yield from _split(places, text, f"The instruction of step {step.number}")
    if step.before:
        named = f"What must be so before step {step.number}"
        yield from _apart(places, before_place(step), text, f"{named} is not on the page of the instruction")
    yield from _caution_rules(places, step)
    for placed in placed_parts(step):
        match placed.part:
            case TorqueCallout():
                named = f"The torque of step {step.number}"
            case Checkpoint():
                named = f"The checkpoint of step {step.number}"
            case Drawing(title=title):
                named = f'The drawing "{title}" of step {step.number}'
                yield from _near(places, step, placed.place, f'The drawing "{title}"')
            case Figure(number=number):
                yield from _near(places, step, placed.place, f"Figure {number}")
                continue
            case _:
                continue
        yield from _split(places, placed.place, named)
        if placed.kept:
            yield from _apart(places, placed.place, text, f"{named} is not on the page of the instruction")


def _near(places: Landing, step: Step, place: str, named: str) -> Iterator[Parted]:
    """F1: a figure stands on the page of the words that need it, or on the next."""
    here, words = places[place][0].page, places[text_place(step)][0].page
    if here - words > 1:
        yield Parted((words, here), place, f"{named} is more than a page away from step {step.number}.")


def _figure_rules(places: Landing, block: Block) -> Iterator[Parted]:
    figures = block.parts if isinstance(block, Step) else (block,)
    for figure in figures:
        if isinstance(figure, Figure):
            yield from _split(places, picture_place(figure), f"Figure {figure.number}")
            yield from _split(places, caption_place(figure), f"The caption of figure {figure.number}")
            apart = f"Figure {figure.number} and its caption are on different pages"
            yield from _apart(places, picture_place(figure), caption_place(figure), apart)


def _end_rule(places: Landing, chapter: Chapter, place: str) -> Iterator[Parted]:
    page = places[place][0].page
    others = (
        other
        for other, spots in places.items()
        if other not in (place, chapter.id) and any(spot.page == page for spot in spots)
    )
    if next(others, None) is None:
        yield Parted((page,), place, "The line that ends the procedure stands alone on its page.")


def _guards(chapter: Chapter) -> bool:
    return any(isinstance(block, Step) for block in chapter.blocks)


def _first_words(block: Block, place: str) -> str:
    """Return the place of the words of a block that a caution above it guards."""
    return text_place(block) if isinstance(block, Step) else place


def _chapter_rules(places: Landing, chapter: Chapter) -> Iterator[Parted]:
    marked = [(block_place(chapter, block, at), block) for at, block in enumerate(chapter.blocks, start=1)]
    for at, (place, block) in enumerate(marked):
        yield from _figure_rules(places, block)
        if isinstance(block, Caution):
            named = f'The {block.word} block in "{chapter.title}"'
            yield from _split(places, place, named)
            # A message guards the first step below it; where none follows, as on the safety page, it stands for itself.
            for after, follower in marked[at + 1 : at + 2] if _guards(chapter) else ():
                apart = f"{named} is not on the page of what it guards"
                yield from _apart(places, place, _first_words(follower, after), apart)
        elif isinstance(block, Step):
            yield from _step_rules(places, block)
        elif isinstance(block, Drawing):
            yield from _split(places, place, f'The drawing "{block.title}" in "{chapter.title}"')
        elif isinstance(block, End):
            yield from _end_rule(places, chapter, place)


def stranded_headings(booklet: Booklet, places: Landing) -> list[Parted]:
    """Return each chapter heading that stands on the page before its chapter begins.

    That is bad setting, to be mended where it can be, but no rule: above a step as tall as a page it must happen.
    """
    return [
        parted
        for chapter in booklet.chapters
        if chapter.blocks
        for parted in _apart(
            places,
            heading_place(chapter),
            block_place(chapter, chapter.blocks[0], 1),
            f'The heading "{chapter.title}" is not on the page of what it heads',
        )
    ]


def steps_on(booklet: Booklet, places: Landing, pages: Collection[int]) -> frozenset[str]:
    """Return the ids of the steps that have any part on these pages."""
    steps = (block for chapter in booklet.chapters for block in chapter.blocks if isinstance(block, Step))
    return frozenset(step.id for step in steps if any(spot.page in pages for spot in places[step.id]))


def broken_rules(booklet: Booklet, places: Landing) -> list[Parted]:
    """Return every broken page rule of a laid-out booklet, in reading order."""
    return [parted for chapter in booklet.chapters for parted in _chapter_rules(places, chapter)]
