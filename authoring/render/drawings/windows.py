"""Windows of temperature: a lane for each kind of vehicle, above one scale."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.shapes import Band, Lane, Windows
from authoring.render.drawings.svg import GREY, PAPER, THIN, box, hatching, line, lines_of, text, wide

EDGE = 6.0
_NAME = 5.0
_LANE = 9.0
_BETWEEN = 3.0
_SCALE = 8.0


def size_of(shown: Windows) -> tuple[float, float]:
    """Return how wide and how high the drawing is."""
    return shown.width + 2 * EDGE, sum(_height(lane, shown.width) for lane in shown.lanes) + _SCALE


def windows(shown: Windows) -> Iterator[str]:
    """Yield the lines of the lanes and of their scale."""
    foot = sum(_height(lane, shown.width) for lane in shown.lanes)
    y = 0.0
    for lane in shown.lanes:
        yield from _lane(lane, y, shown.width)
        y += _height(lane, shown.width)
    yield line(EDGE, foot, EDGE + shown.width, foot)
    for place, told in shown.ticks:
        yield line(EDGE + place, foot, EDGE + place, foot + 1.6, width=THIN)
        yield text(EDGE + place, foot + 4.6, told, anchor="middle")


def _names(lane: Lane, width: float) -> list[str]:
    return lines_of(lane.words, width + EDGE) if lane.words else []


def _height(lane: Lane, width: float) -> float:
    return (len(_names(lane, width)) + _rows(lane)) * _NAME + _LANE + _BETWEEN


def _lane(lane: Lane, y: float, width: float) -> Iterator[str]:
    for words in _names(lane, width):
        yield text(EDGE, y + _NAME / 2, words)
        y += _NAME
    foot = y + _rows(lane) * _NAME
    yield box(EDGE, foot, width, _LANE, fill=PAPER, stroke=THIN)
    if lane.open:
        yield from hatching(EDGE, foot, lane.open, _LANE)
        yield line(EDGE + lane.open, foot, EDGE + lane.open, foot + _LANE, width=THIN)
    for band, row in zip(lane.bands, _row_of(lane), strict=True):
        half = wide(band.words) / 2
        x = min(max(EDGE + _middle(band), half), width + 2 * EDGE - half)
        yield text(x, foot - (row + 0.5) * _NAME, band.words, anchor="middle", tone="bold")
        yield box(EDGE + band.low, foot, band.high - band.low, _LANE, fill=GREY, stroke=1)


def _rows(lane: Lane) -> int:
    return max(_row_of(lane), default=0) + 1


def _row_of(lane: Lane) -> list[int]:
    """Return for each band the row of its words: those that would run into one another take turns."""
    rows: list[int] = []
    for at, band in enumerate(lane.bands):
        taken = {
            row
            for other, row in zip(lane.bands[:at], rows, strict=True)
            if abs(_middle(band) - _middle(other)) < (wide(band.words) + wide(other.words)) / 2
        }
        rows.append(min(set(range(len(rows) + 1)) - taken))
    return rows


def _middle(band: Band) -> float:
    return (band.low + band.high) / 2
