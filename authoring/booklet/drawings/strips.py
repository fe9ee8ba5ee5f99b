"""Energy and condition along the steps: a track for each thing and state, over one row of all steps."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from authoring.booklet.condition import START, Stretch
from authoring.booklet.shapes import Stint, Strip, Track
from authoring.booklet.step_parts import Drawing
from authoring.booklet.words import Words

_WORDS = 52.0  # mm of paper for what a track is of
_LETTERS = 25  # of the drawing's type that have room there
_STEPS = 102.0
_MOST_TRACKS = 24
_INSET = 0.15  # of the room of a step, so that two stints that follow one another are seen to be two
_LETTER = 2.6  # mm for a letter of a step's number, and the room beside it

_TITLE = "Energy and condition along the steps"
_NOTES = (
    "The steps stand from left to right in the order in which they are done; a number stands where a section begins.",
    "Grey: made safe. Hatched: it runs, is up, open, apart, drained or heated.",
)


class Row(Struct, frozen=True):
    """What one track shows: its words, whether it is safe so, its stretches of steps, and those in words."""

    words: str
    safe: bool
    stretches: tuple[Stretch, ...]
    told: str


def strips(rows: Sequence[Row], numbers: Sequence[str], sections: Sequence[int]) -> Iterator[Drawing]:
    """Yield the drawing, or several where there are more tracks than can be followed across a page.

    `numbers` are the numbers of the steps in the order in which they are done, `sections` the places in it at which
    a section begins.
    """
    step = _STEPS / len(numbers)
    shown = tuple(_apart([(round(step * at, 2), numbers[at]) for at in sections]))
    pages = [rows[at : at + _MOST_TRACKS] for at in range(0, len(rows), _MOST_TRACKS)]
    for page, some in enumerate(pages, 1):
        told = " ".join(f"{row.words}: {row.told}." for row in some)
        yield Drawing(
            f"{_TITLE}, {page} of {len(pages)}" if len(pages) > 1 else _TITLE,
            f"Drawing of the steps from {numbers[0]} to {numbers[-1]}. {told}",
            Strip(
                _WORDS,
                _STEPS,
                tuple(_track(row, step) for row in some),
                tuple(round(step * at, 2) for at in sections),
                shown,
            ),
            tuple((Words(note),) for note in _NOTES),
        )


def _track(row: Row, step: float) -> Track:
    return Track(_lines(row.words), row.safe, tuple(_stint(one, step) for one in row.stretches))


def _lines(words: str) -> tuple[str, ...]:
    if len(words) <= _LETTERS:
        return (words,)
    import textwrap  # noqa: PLC0415  # most words of a drawing fit their line

    return tuple(textwrap.wrap(words, _LETTERS))


def _stint(stretch: Stretch, step: float) -> Stint:
    start = 0.0 if stretch.first == START else step * (stretch.first + _INSET)
    end = _STEPS if stretch.last is None else step * (max(stretch.last, 0) + 1 - _INSET)
    return Stint(round(start, 2), round(end, 2))


def _apart(numbers: Sequence[tuple[float, str]]) -> Iterator[tuple[float, str]]:
    """Yield the numbers that leave one another room; one that would run into the number before it is left out."""
    free = 0.0
    for place, told in numbers:
        if place >= free:
            yield place, told
            free = place + _LETTER * len(told) + 1
