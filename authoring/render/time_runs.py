"""Steps on the clock: those from which time runs to a step that must be done in time."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.blocks import Booklet, Chapter
from authoring.booklet.step_parts import Step

LONGEST_RUN = 4
"""Steps of the longest run that is kept on one page; more of them seldom fit."""


def time_runs(chapter: Chapter) -> Iterator[tuple[Step, ...]]:
    """Yield the steps of each run of time, the one where the clock starts first and the one with the deadline last."""
    steps = [block for block in chapter.blocks if isinstance(block, Step)]
    place = {step.id: at for at, step in enumerate(steps)}
    for at, step in enumerate(steps):
        start = place.get(step.clock, at)
        if start < at < start + LONGEST_RUN:
            yield tuple(steps[start : at + 1])


def on_the_clock(booklet: Booklet) -> frozenset[str]:
    """Return the ids of the steps after which nobody should have to turn the page."""
    runs = (run for chapter in booklet.chapters for run in time_runs(chapter))
    return frozenset(step.id for run in runs for step in run[:-1])
