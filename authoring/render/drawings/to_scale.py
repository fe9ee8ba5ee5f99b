"""Lengths to scale, one below the other from one edge, with their dimensions and a scale bar."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.shapes import Bar, ToScale
from authoring.render.drawings.svg import GREY, INK, LINE, PAPER, THIN, arrow_head, box, line, text, wide

LEFT = 0.5
_BAR = 7.0
_DIMENSION = 5.0
_BETWEEN = 2.4
_RULE = 5.0
_GAP = 3.0
_ROW = _BAR + _DIMENSION + _BETWEEN


def size_of(shown: ToScale) -> tuple[float, float]:
    """Return how wide and how high the drawing is."""
    beside = [bar.high + _GAP + wide(told) for bar in shown.bars for told in (bar.words, bar.size)]
    return LEFT + max([*beside, shown.rule + _GAP + wide(shown.reads)]), _ROW * len(shown.bars) + _RULE


def to_scale(shown: ToScale) -> Iterator[str]:
    """Yield the lines of a drawing to scale."""
    shortest = LEFT + min(bar.high for bar in shown.bars)
    foot = _ROW * len(shown.bars)
    for at, bar in enumerate(shown.bars):
        yield from _bar(bar, _ROW * at + THIN)
    # Where the shortest ends, each longer one is seen to go on.
    yield line(shortest, 0, shortest, foot - _BETWEEN, width=THIN, dashes="1.2 0.8")
    yield from _rule(shown, foot + 1.2)


def _bar(bar: Bar, y: float) -> Iterator[str]:
    tone = "bold" if bar.right else ""
    yield box(LEFT, y, bar.high, _BAR, fill=GREY if bar.right else PAPER)
    if bar.high - bar.low > LINE:
        yield line(LEFT + bar.low, y, LEFT + bar.low, y + _BAR, width=THIN)
    yield text(LEFT + bar.high + _GAP, y + _BAR / 2, bar.words, tone=tone)
    below = y + _BAR + _DIMENSION / 2
    for end in (LEFT, LEFT + bar.high):
        yield line(end, y + _BAR, end, below + 1, width=THIN)
    yield line(LEFT, below, LEFT + bar.high, below, width=THIN)
    yield arrow_head(LEFT, below, 270)
    yield arrow_head(LEFT + bar.high, below, 90)
    yield text(LEFT + bar.high + _GAP, below, bar.size, tone=tone)


def _rule(shown: ToScale, y: float) -> Iterator[str]:
    half = shown.rule / 2
    yield box(LEFT, y, half, 1.6, fill=INK, stroke=THIN)
    yield box(LEFT + half, y, half, 1.6, fill=PAPER, stroke=THIN)
    yield text(LEFT + shown.rule + _GAP, y + 0.8, shown.reads)
