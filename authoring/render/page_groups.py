"""The page rules for groups of blocks: what fits one page together stands on one page.

The contents are whole; a heading stands with all that comes before the instruction of its first step; and a step
that must be done in time stands with the step where its clock starts.
Sources: S5 and Y1 for what is read together; nobody turns a page while the clock runs (common practice).
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.blocks import Block, Booklet, Chapter, Methods
from authoring.booklet.step_parts import Aside, Caution, Step
from authoring.booklet.words import Bullets, Paragraph
from authoring.render.page_rules import Landing, Parted
from authoring.render.places import (
    CONTENTS,
    before_place,
    block_place,
    heading_place,
    placed_parts,
    text_place,
)
from authoring.render.time_runs import time_runs

_HAIR = 1.0
"""Boxes that miss by less than this many CSS px do not miss."""

_FULL = 0.9
"""The share of a page that boxes may fill by their heights; the rest is for the room between them."""

_LEADS_IN = Aside | Caution | Paragraph | Bullets | Methods
"""The blocks that lead in to the first step of a chapter."""


def parted_groups(booklet: Booklet, places: Landing) -> list[Parted]:
    """Return every group that is parted although it fits a page, in reading order."""
    parted = list(_contents(places))
    for chapter in booklet.chapters:
        parted += _heading(places, chapter)
        parted += _in_time(places, chapter)
    return parted


def _contents(places: Landing) -> Iterator[Parted]:
    """Yield a break where the contents are cut or run off their page, where lines would be lost."""
    spots = places[CONTENTS]
    pages = tuple(spot.page for spot in spots)
    if len(spots) > 1:
        yield Parted(pages, CONTENTS, f"The contents are cut: they stand on pages {pages[0]} and {pages[-1]}.")
    elif spots[0].bottom > spots[0].limit + _HAIR:
        yield Parted(pages, CONTENTS, f"The contents run off the foot of page {pages[0]}.")


def _heading(places: Landing, chapter: Chapter) -> Iterator[Parted]:
    led = _led_in(chapter)
    if led is None:
        return
    step, above = led
    heading = heading_place(chapter)
    here, there = places[heading][0].page, places[text_place(step)][0].page
    if here != there and _fit(places, [*above, *_needed(step)]):
        sentence = f'The heading "{chapter.title}" is on page {here}, and its first step on page {there}.'
        yield Parted((here, there), heading, sentence)


def _in_time(places: Landing, chapter: Chapter) -> Iterator[Parted]:
    led = _led_in(chapter)
    for run in time_runs(chapter):
        first, last = run[0], run[-1]
        here, there = places[text_place(first)][0].page, places[text_place(last)][0].page
        above = led[1] if led is not None and led[0] is first else []
        if here != there and _fit(places, [*above, *(step.id for step in run)]):
            sentence = f"Time runs from step {first.number} on page {here} to step {last.number} on page {there}."
            yield Parted((here, there), last.id, sentence)


def _led_in(chapter: Chapter) -> tuple[Step, list[str]] | None:
    """Return the first step and the places of the heading and all that leads in to it; None where there is more."""
    above = [heading_place(chapter)]
    for at, block in enumerate(chapter.blocks, start=1):
        if isinstance(block, Step):
            return block, above
        if not _leads_in(block):
            return None
        above.append(block_place(chapter, block, at))
    return None


def _leads_in(block: Block) -> bool:
    return isinstance(block, _LEADS_IN)


def _needed(step: Step) -> Iterator[str]:
    """Yield the places of what must stand with the instruction of a step, and of the instruction."""
    if step.before:
        yield before_place(step)
    yield from (message.id for message in step.cautions)
    yield text_place(step)
    yield from (placed.place for placed in placed_parts(step) if placed.kept)


def _fit(places: Landing, group: list[str]) -> bool:
    """Tell whether boxes fit a page together."""
    spots = [spot for place in group for spot in places[place]]
    page = min(spot.limit - spot.begin for spot in spots)
    return sum(spot.bottom - spot.top for spot in spots) <= _FULL * page
