"""How things stand, side by side: what the machine comes with, and what each point of the track makes of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.model.demands import Need
from authoring.model.effects import Effect
from authoring.model.ends import Side, rivals, side_of
from authoring.model.fluid import Fluid
from authoring.model.library import Scope
from authoring.model.on_and_off import meant
from authoring.model.specification import ALWAYS, When
from authoring.model.things import FastenerGroup, Item
from authoring.proof.linked import Linked
from authoring.proof.track import Point, Track

Key = tuple[int, ...]
"""A state of several sides: the number of the setting of each."""


class Setting(Struct, frozen=True, eq=False):
    """How one side stands, and the point or statement that left it so; None where the machine comes so.

    `state` is empty where nobody knows it.
    """

    state: str
    by: Point | Need | None = None

    @property
    def number(self) -> int:
        """The number of the point that left it so, -1 where the machine comes so: the last change has the highest."""
        return self.by.number if isinstance(self.by, Point) else -1


PASSED: Side = ("", "passed")
"""Whether the job has come by one of some points; no thing has an empty name."""


class Settings:
    """The sides that a story is about, and every setting they come to."""

    def __init__(self, sides: Iterable[Side], scope: Scope, linked: Sequence[Linked] = ()) -> None:
        """Begin as the machine comes; sides that are changed by the same action, or the other, belong together."""
        self._scope = scope
        self._linked = linked
        self._marks: dict[int, list[int]] = {}
        self._marking: list[Point] = []
        every = dict.fromkeys((thing, one) for thing, side in sides for one in (side, *sorted(rivals(side))))
        self.sides: tuple[Side, ...] = tuple(every)
        self._at = {side: at for at, side in enumerate(self.sides)}
        self._settings: list[Setting] = []
        self._numbers: dict[tuple[int, str, Point | Need | None], int] = {}
        self._after: dict[tuple[int, Key], Key] = {}
        self._changes: dict[int, list[tuple[Effect, int, str]]] = {}

    def mark(self, side: Side, passing: Iterable[Point]) -> int:
        """Follow one side more, which any of these points brings from "" to "passed"; return its place in a state."""
        if side not in self._at:
            self._at[side] = len(self.sides)
            self.sides = (*self.sides, side)
            for point in passing:
                self._marks.setdefault(point.number, []).append(self._at[side])
                self._marking.append(point)
        return self._at[side]

    def differ(self, one: Key, other: Key) -> bool:
        """Tell whether a thing stands otherwise in two states; marks are of no thing."""
        return any(now != then and side[0] for side, now, then in zip(self.sides, one, other, strict=True))

    def is_passed(self, key: Key, place: int) -> bool:
        """Tell whether the job has come by a point of a mark in a state."""
        return self._settings[key[place]].state == PASSED[1]

    def start(self) -> Key:
        """Return how the machine comes: as the job needs it, or else whole."""
        needed = {side: need for need in self._scope.procedure.needs for side in self._stated(need)}
        return tuple(
            self._number(at, needed[side].state, needed[side])
            if side in needed
            else self._number(at, comes(side, self._scope), None)
            for at, side in enumerate(self.sides)
        )

    def points(self, track: Track) -> list[Point]:
        """Return the points that may change one of the sides, in order."""
        things = dict.fromkeys((*(thing for thing, _ in self.sides), *(one.named for one in self._linked)))
        found = {point.number: point for thing in things for point in track.naming.get(thing, ()) if self._bears(point)}
        found |= {point.number: point for point in self._marking}
        return [found[number] for number in sorted(found)]

    def _bears(self, point: Point) -> bool:
        return bool(self._of(point)) or any(side in self._at for need in point.leaves for side in self._stated(need))

    def _stated(self, need: Need) -> Iterator[Side]:
        """Yield the sides that a statement is about."""
        yield from sides_of(need, self._scope)
        yield from (one.side for one in self._linked if one.named == need.thing and one.becomes == need.state)

    def _of(self, point: Point) -> list[tuple[Effect, int, str]]:
        """Return the effects of a point that are on these sides: each with the place of the side and its thing."""
        if point.number not in self._changes:
            found = []
            if point.action is not None:
                things = self._scope.library.scope(point.procedure).things
                for role, name in point.action.names():
                    for thing, _ in meant(name, things.get(name)):
                        found += [
                            (effect, self._at[thing, effect.side], thing)
                            for effect in point.action.effects(role)
                            if (thing, effect.side) in self._at
                        ]
                found += [
                    (Effect(one.side[1], one.becomes), self._at[one.side], one.side[0])
                    for one in self._linked
                    if one.done_by(point.action)
                ]
            self._changes[point.number] = found
        return self._changes[point.number]

    def after(self, point: Point, key: Key) -> Key:
        """Return the state that a point leaves."""
        known = self._after.get((point.number, key))
        if known is None:
            known = self._after[point.number, key] = self._changed(point, key)
        return known

    def _changed(self, point: Point, key: Key) -> Key:
        new = list(key)
        things = dict.fromkeys(thing for _, _, thing in self._of(point))
        for thing in things:
            mine = [(effect, at) for effect, at, of in self._of(point) if of == thing]
            for effect, at in (*((one, at) for one, at in mine if not one.only), *self._depending(mine, key)):
                state = (
                    point.action.details[effect.says] if effect.says and point.action is not None else effect.becomes
                )
                if not (effect.perhaps and self._settings[key[at]].state == state):
                    new[at] = self._number(at, state, point)
        for need in point.leaves:
            for side in self._stated(need):
                if side in self._at:
                    new[self._at[side]] = self._number(self._at[side], need.state, point)
        for place in self._marks.get(point.number, ()):
            new[place] = self._number(place, PASSED[1], point)
        return tuple(new)

    def _depending(self, mine: Sequence[tuple[Effect, int]], key: Key) -> Iterator[tuple[Effect, int]]:
        """Yield the effect that happens of those that depend on how the thing is: that of the side changed last.

        Where nothing is known of the thing, an action that does nothing else must be meant for the first of them.
        """
        fits = [(one, at) for one, at in mine if self._settings[key[at]].state in one.only]
        if fits:
            yield max(fits, key=lambda one: self._settings[key[one[1]]].number)
        elif mine and all(one.only for one, _ in mine):
            yield mine[0]

    def _number(self, at: int, state: str, by: Point | Need | None) -> int:
        known = (at, state, by)
        if known not in self._numbers:
            self._numbers[known] = len(self._settings)
            self._settings.append(Setting(state, by))
        return self._numbers[known]

    def told(self, key: Key) -> Mapping[Side, Setting]:
        """Return the setting of each side."""
        return {side: self._settings[number] for side, number in zip(self.sides, key, strict=True)}


def comes(side: Side, scope: Scope) -> str:
    """Return how the machine comes on one side: whole; empty where nobody knows, or it is no part of the machine."""
    name, what = side
    thing = scope.things[name].thing if name in scope.things else None
    if what == "where":
        return "fitted" if isinstance(thing, Item) else "tight" if isinstance(thing, FastenerGroup) else ""
    if isinstance(thing, Item):
        return {"lid": "closed", "energy": "live"}.get(what, "")
    return "filled" if what == "fluid" and isinstance(thing, Fluid) else ""


def there(thing: str, scope: Scope) -> When:
    """Return for which machines a thing is there at all; a part of the stock is for any."""
    named = scope.things.get(thing)
    one = named.thing if named is not None else None
    return one.when if isinstance(one, Item | FastenerGroup | Fluid) else ALWAYS


def sides_of(need: Need, scope: Scope) -> tuple[Side, ...]:
    """Return what of a thing a state is about; a word that is also a position of the thing is about both."""
    thing = scope.things[need.thing].thing if need.thing in scope.things else None
    position = isinstance(thing, Item) and need.state in thing.positions
    return tuple(dict.fromkeys((side_of(need), *(((need.thing, "position"),) if position else ()))))
