"""The story of a few things: how each may stand at every point of the track, on all machines and ways at once.

A state of these things is a tuple of settings, one for each side; with it goes the set of machines and ways on which
the job may come to a point in that state. A point moves sets from one state to another, a jump carries them along,
and where the job leads back they go round until nothing is new: there are finitely many states, so it ends.
This is exact: a state belongs to a machine at a point just if some way through the job leads there in it.

Only the points that touch these things are gone through, and only the features that they and the jumps between them
name are told apart, so that the cost follows what stands together in the job and not what the machine comes in.
The sets are whole numbers with a bit for each machine (`model/space.py`): decision diagrams would do as well, but a
story names few features, and for those the AND of two numbers is as fast as the machine can be.
"""

from __future__ import annotations

import bisect
import heapq
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.model.ends import Side
from authoring.model.lacking import taken_as_all
from authoring.model.space import Cells, Space
from authoring.model.specification import When
from authoring.model.ways import Ways
from authoring.proof.following import Asked, Following
from authoring.proof.settings import Key, Setting, Settings
from authoring.proof.track import Fork, Jump, Point, Track

_States = dict[Key, Cells]
_From = tuple[int, Key, "Jump | None"] | None


class Held(Struct, frozen=True, eq=False):
    """One state at a point, on which machines and ways, and the way by which the job came to it."""

    settings: Mapping[Side, Setting]
    cells: Cells
    path: Sequence[Point | Jump]
    key: Key


class Story:
    """How some sides stand at every point that touches them, and at those that are asked about."""

    def __init__(
        self, track: Track, ways: Ways, settings: Settings, asked: Iterable[Point] = (), more: Iterable[When] = ()
    ) -> None:
        """Go through the job; `told` is False where nothing can be said, which other rules tell."""
        self._track = track
        self._settings = settings
        self._following = Following(track, ways, settings)
        self._forks = track.forks
        self._stations = self._laid_out({point.number for point in (*settings.points(track), *asked)})
        self._at = {number: at for at, number in enumerate(self._stations)}
        self._points = [track.points[number] for number in self._stations if number < len(track.points)]
        whens = [*more, *(jump.when for jump in self._jumps)]
        whens += [when for fork in self._forks for when in (*fork.found, *fork.onward)]
        space = ways.space(self._points, [step for jump in self._jumps for step in jump.steps], whens)
        self.told = space is not None
        self.space = space if space is not None else taken_as_all(ways.vehicle)
        self._states: list[_States] = [{} for _ in self._stations]
        self._came: list[dict[Key, _From]] = [{} for _ in self._stations]
        self._done: list[Cells] = []
        self._asked: list[list[Asked]] = []
        if self.told:
            self._done += [
                self.space.where(one.when) & self._following.done(one.steps, self.space) for one in self._points
            ]
            self._asked += [self._following.asked(one.steps) for one in self._points]
            self._go(self.space)

    def _laid_out(self, stations: set[int]) -> list[int]:
        """Return the numbers of the points to stop at, in order: what they ask of the way is among them, and jumps."""
        forks = {fork.source for fork in self._forks}
        while True:
            self._jumps = _across(self._track.jumps, stations, forks)
            steps = [self._track.points[number].steps for number in (*stations, *forks)]
            more = {one.number for one in self._following.points([*steps, *(jump.steps for jump in self._jumps)])}
            if more <= stations:
                break
            stations |= more
        ends = (place for jump in self._jumps for place in (jump.source, jump.target))
        return sorted({*stations, *forks, *ends, len(self._track.points)})

    def _go(self, space: Space) -> None:
        jumps: dict[int, list[tuple[Jump, Cells, list[Asked]]]] = {}
        for jump in self._jumps:
            cells = space.where(jump.when) & self._following.done(jump.steps, space)
            jumps.setdefault(jump.source, []).append((jump, cells, self._following.asked(jump.steps)))
        stays = {self._at[fork.source]: fork for fork in self._forks}
        start = self._settings.start()
        self._states[0][start] = space.every
        self._came[0][start] = None
        waiting = [0]
        while waiting:
            at = heapq.heappop(waiting)
            while waiting and waiting[0] == at:
                heapq.heappop(waiting)
            number = self._stations[at]
            if number == len(self._track.points):
                continue
            for key, (cells, before) in self._after(at).items():
                for jump, over, asked in jumps.get(number, ()):
                    led = cells & over if self._holds(asked, key) else 0
                    self._come(self._at[jump.target], key, led, (at, before, jump), waiting)
                left = self._left(stays[at], at, key) if at in stays else 0
                self._come(at + 1, key, cells & ~left, (at, before, None), waiting)

    def _holds(self, asked: Iterable[Asked], key: Key) -> bool:
        return all(one.holds(key, self._settings) for one in asked)

    def _left(self, fork: Fork, at: int, key: Key) -> Cells:
        """Return on which machines and ways the job does not go on at the next point."""
        cells = self.space.either(fork.found) & ~self.space.either(fork.onward)
        return cells if fork.whoever else cells & self._done_in(at, key)

    def _done_in(self, at: int, key: Key) -> Cells:
        """Return on which machines and ways a point is done to which the job comes in a state."""
        return self._done[at] if self._holds(self._asked[at], key) else 0

    def _after(self, at: int) -> dict[Key, tuple[Cells, Key]]:
        """Return the states after a station, each with its machines and one state before from which it came."""
        after: dict[Key, tuple[Cells, Key]] = {}
        for key, cells in self._states[at].items():
            done = self._done_in(at, key)
            for new, part in ((self._settings.after(self._points[at], key), cells & done), (key, cells & ~done)):
                if part:
                    known = after.get(new)
                    after[new] = (part, key) if known is None else (known[0] | part, known[1])
        return after

    def _come(self, at: int, key: Key, cells: Cells, came: _From, waiting: list[int]) -> None:
        """Add machines to a state at a station, and go on from there where they are new."""
        known = self._states[at].get(key, 0)
        if cells & ~known:
            self._states[at][key] = known | cells
            self._came[at].setdefault(key, came)
            heapq.heappush(waiting, at)

    def done(self, point: Point) -> Cells:
        """Return the machines and ways on which a point is done where the job comes to it."""
        at = self._at[point.number]
        if not self._asked[at]:
            return self._done[at]
        cells = 0
        for held in self.before(point):
            cells |= held.cells
        return cells

    def due(self, point: Point, later: Held) -> Cells:
        """Return the machines and ways on which a point was to be done, by how the job stands later."""
        return later.cells & self._done_in(self._at[point.number], later.key)

    def before(self, point: Point) -> Iterator[Held]:
        """Yield each state in which the job may come to a point, on the machines and ways on which it is done."""
        at = self._at[point.number]
        for key, cells in self._states[at].items():
            done = cells & self._done_in(at, key)
            if done:
                yield Held(self._settings.told(key), done, self._path(at, key), key)

    def at_the_end(self) -> Iterator[Held]:
        """Yield each state in which the job may end; where it was stopped it does not end."""
        at = len(self._stations) - 1
        for key, cells in self._states[at].items():
            yield Held(self._settings.told(key), cells, self._path(at, key), key)

    def _path(self, at: int, key: Key) -> Sequence[Point | Jump]:
        """Return the points that changed something and the jumps on one way to a state, in order."""
        path: list[Point | Jump] = []
        came = self._came[at][key]
        while came is not None:
            before, old, jump = came
            if jump is not None and jump.outcome is not None:
                path.append(jump)
            if self._settings.differ(key, old):
                path.append(self._track.points[self._stations[before]])
            key, came = old, self._came[before][old]
        return path[::-1]


def _across(jumps: Iterable[Jump], stations: Collection[int], forks: Collection[int]) -> list[Jump]:
    """Return the jumps that pass over a station or a fork or lead back before one, and those that start at a fork."""
    ordered = sorted({*stations, *forks})
    kept = []
    for jump in jumps:
        low, high = sorted((jump.source + 1, jump.target))
        place = bisect.bisect_left(ordered, low)
        if jump.source in forks or (place < len(ordered) and ordered[place] < high):
            kept.append(jump)
    return kept
