"""A job that can be gone through: its track, its ways, and what its names mean."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from functools import lru_cache

from msgspec import Struct

from authoring.model.ends import Side
from authoring.model.library import Library, Scope
from authoring.model.procedure import Procedure
from authoring.model.specification import When
from authoring.model.ways import Ways, ways_of
from authoring.proof.linked import Linked
from authoring.proof.settings import PASSED, Settings
from authoring.proof.story import Story
from authoring.proof.track import Point, Track, track_of


class Job(Struct, frozen=True, eq=False):
    """A procedure with its track and ways; `scope` is the job's own."""

    procedure: Procedure
    scope: Scope
    track: Track
    ways: Ways

    def story(
        self,
        sides: Iterable[Side],
        asked: Iterable[Point] = (),
        more: Iterable[When] = (),
        linked: Sequence[Linked] = (),
        passing: Sequence[Point] = (),
    ) -> Story | None:
        """Return how these sides stand wherever the job touches them, and at the points asked about.

        `more` are conditions that a question compares with, such as when a thing is there at all.
        `linked` is what else changes these sides; with `passing` the side PASSED tells whether it came by one of these.
        It is None where nothing can be said: a name is unknown, or there are too many combinations; both are told.
        """
        settings = Settings(sides, self.scope, linked)
        if passing:
            settings.mark(PASSED, passing)
        story = Story(self.track, self.ways, settings, asked, more)
        return story if story.told else None


@lru_cache(maxsize=64)
def job_of(procedure: Procedure, library: Library) -> Job | None:
    """Return the job that a procedure is; None where nothing can be said of it, which other rules tell.

    Its equipment is not known, it is too long to follow, or an action names what nobody knows, so that what the steps
    do to the thing that was meant is lost.
    """
    ways = ways_of(procedure, library)
    track = track_of(procedure, library) if ways is not None else None
    if ways is None or track is None or not all(_is_known(point, library) for point in track.points):
        return None
    return Job(procedure, library.scope(procedure), track, ways)


def _is_known(point: Point, library: Library) -> bool:
    things = library.scope(point.procedure).things
    return point.action is None or all(name in things for _, name in point.action.names())
