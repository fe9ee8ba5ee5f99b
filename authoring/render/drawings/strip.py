"""Tracks over the steps of a job: grey where something is made safe, hatched where it runs, is up, open or empty."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.shapes import Strip, Track
from authoring.render.drawings.svg import GREY, PAPER, THIN, box, hatching, line, text

EDGE = 0.5
_LINE = 4.6
_GAP = 1.6
_BAR = 3.4
_FOOT = 6.0
_PITCH = 1.4


def size_of(shown: Strip) -> tuple[float, float]:
    """Return how wide and how high the drawing is; the last number may stand out to the right."""
    return shown.words + shown.width + _FOOT, sum(_height(one) for one in shown.tracks) + _FOOT


def strip(shown: Strip) -> Iterator[str]:
    """Yield the lines of the tracks and of the row of steps below them."""
    left, right = shown.words, shown.words + shown.width
    foot = sum(_height(one) for one in shown.tracks)
    for place in shown.sections:
        yield line(left + place, 0, left + place, foot + 1.2, width=THIN)
    y = 0.0
    for track in shown.tracks:
        yield from _track(track, y, shown)
        y += _height(track)
        yield line(EDGE, y, right, y, width=THIN)
    yield line(left, foot, right, foot)
    for place, told in shown.numbers:
        yield text(left + place, foot + 3.6, told)


def _height(track: Track) -> float:
    return len(track.words) * _LINE + _GAP


def _track(track: Track, y: float, shown: Strip) -> Iterator[str]:
    height = _height(track)
    for place, words in enumerate(track.words):
        yield text(EDGE, y + (_GAP + _LINE) / 2 + place * _LINE, words)
    top = y + (height - _BAR) / 2
    for stint in track.stints:
        left, wide = shown.words + stint.start, stint.end - stint.start
        yield box(left, top, wide, _BAR, fill=GREY if track.safe else PAPER)
        if not track.safe:
            yield from hatching(left, top, wide, _BAR, _PITCH)
