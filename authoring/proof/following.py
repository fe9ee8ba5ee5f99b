"""Which steps follow others: `if-done` and `unless-done`, where a way may lead past the step that they name.

Where no jump passes over a step that is named, it is known from the machine and the decisions whether it was done
(`model/ways.py`). Where one does, it depends on the way, and the story has to remember it.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from msgspec import Struct

from authoring.model.procedure import Step
from authoring.model.space import Cells, Space
from authoring.model.ways import Ways
from authoring.proof.settings import Key, Settings
from authoring.proof.track import Point, Track


class Asked(Struct, frozen=True):
    """What must have been done before: the places of the marks of which one must be passed, and none may be."""

    any_of: tuple[int, ...] | None
    none_of: tuple[int, ...]

    def holds(self, key: Key, settings: Settings) -> bool:
        """Tell whether it is so in a state."""
        some = self.any_of is None or any(settings.is_passed(key, place) for place in self.any_of)
        return some and not any(settings.is_passed(key, place) for place in self.none_of)


class Following:
    """What the steps of a story ask of the way, and the points that the story must come by to know it."""

    def __init__(self, track: Track, ways: Ways, settings: Settings) -> None:
        self._track = track
        self._ways = ways
        self._settings = settings
        self._asked: dict[tuple[Step, ...], Asked | None] = {}
        self._depends: dict[Point, bool] = {}

    def points(self, chains: Iterable[tuple[Step, ...]]) -> list[Point]:
        """Return the points at which the steps begin that these ask for where a way may lead past one of them.

        A chain is a step with the steps that lead to it before it.
        """
        found: dict[int, Point] = {}
        waiting = [chain[:end] for chain in chains for end in range(1, len(chain) + 1)]
        while waiting:
            chain = waiting.pop()
            if chain not in self._asked:
                begins = self._follow(chain)
                found |= {point.number: point for point in begins}
                waiting += [point.steps for point in begins]
        return [found[number] for number in sorted(found)]

    def _follow(self, chain: tuple[Step, ...]) -> list[Point]:
        step = chain[-1]
        some = self._begins(chain, step.if_done)
        none = self._begins(chain, step.unless_done)
        if not any(self._by_way(point) for point in (*some, *none)):
            self._asked[chain] = None
            return []
        any_of = tuple(self._mark(point) for point in some) if step.if_done else None
        self._asked[chain] = Asked(any_of, tuple(self._mark(point) for point in none))
        return [*some, *none]

    def _by_way(self, point: Point) -> bool:
        """Tell whether it depends on the way if the step that begins at a point was done."""
        if point not in self._depends:
            *within, step = point.steps
            begins = (self._track.begins.get((*within, one)) for one in self._ways.bearing([step]))
            self._depends[point] = any(one is not None and self._track.passed_over(one.number) for one in begins)
        return self._depends[point]

    def _begins(self, chain: tuple[Step, ...], names: Sequence[str]) -> list[Point]:
        steps = ((*chain[:-1], one) for one in self._ways.named(chain[-1], names))
        return [self._track.begins[one] for one in steps if one in self._track.begins]

    def _mark(self, point: Point) -> int:
        return self._settings.mark(("", f"done at {point.number}"), [point])

    def asked(self, chain: tuple[Step, ...]) -> list[Asked]:
        """Return what a step and those that lead to it ask of the way."""
        parts = [self._asked.get(chain[:end]) for end in range(1, len(chain) + 1)]
        return [one for one in parts if one is not None]

    def done(self, chain: tuple[Step, ...], space: Space) -> Cells:
        """Return on which machines and ways a step is done, as far as it does not depend on the way (`asked`)."""
        cells = space.every
        for end in range(1, len(chain) + 1):
            step = chain[end - 1]
            by_way = self._asked.get(chain[:end]) is not None
            cells &= self._ways.open(step, space) if by_way else self._ways.reached(step, space)
        return cells
