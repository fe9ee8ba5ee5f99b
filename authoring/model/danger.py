"""Which dangers are there while a job goes on, by its steps in the order in which they are come to (`passes.py`).

The careful side counts: a danger that begins for some machines begins, and one that ends for some ends for those only.
A procedure that is carried out begins and ends dangers as its own steps do, as deep as it goes; one that an outcome may
lead to begins those that it leaves behind and ends none.
After either nothing counts as cooled, dead or without pressure any more.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from msgspec import Struct
from msgspec.structs import replace

from authoring.model.course import called_by
from authoring.model.demands import Need
from authoring.model.fitments import together
from authoring.model.heated import Heat, one_and_the_same
from authoring.model.lacking import bare
from authoring.model.library import Scope
from authoring.model.procedure import Action, Procedure
from authoring.model.specification import When
from authoring.model.things import Item, Value
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.workshop.interval import interval_of

_UP = "raised"
_RUNS = "running"
_PRESSURE = "pressure"
_VOLTAGE = "voltage"
_ENDS = {
    "stopped": _RUNS,
    "isolated": _RUNS,
    "supported": _UP,
    "lowered": _UP,
    "without-pressure": _PRESSURE,
    "proved-dead": _VOLTAGE,
}
_STANDS = frozenset({"stopped", "isolated"})

RELIEVED = {"pressure": _PRESSURE, "voltage": _VOLTAGE, "voltage-ac": _VOLTAGE}
"""The facts of an item that are a danger until they are taken away: let off, or isolated and proved dead."""


class There(Struct, frozen=True):
    """For which fitments a danger is there, and for which of them it has been taken away since."""

    on: tuple[When, ...]
    off: tuple[When, ...] = ()


class _Reached(Struct, frozen=True):
    """The windows of temperature that a thing was once brought into: the upper end of each in K, None where open.

    `needed` says that the thing had to be so before a step; otherwise it was measured.
    """

    windows: tuple[tuple[When, Fraction | None], ...]
    needed: bool


class Dangers:
    """What is dangerous at one place of a job; it changes as the steps are gone through."""

    def __init__(self, scope: Scope) -> None:
        self._scope = scope
        self._on: dict[tuple[str, str], list[When]] = {}
        self._off: dict[tuple[str, str], list[When]] = {}
        self._cooled: dict[str, list[_Reached]] = {}
        self._heated: dict[str, list[Heat]] = {}
        self._lifted: set[str] = set()
        self.ran = False
        self.unknown = True

    def needs(self, needs: Iterable[Need], when: When) -> None:
        """Take in that things must be in a state, for some fitments."""
        self._are_in(needs, when, needed=True)

    def leaves(self, states: Iterable[Need], when: When) -> None:
        """Take in that things are left in a state, for some fitments."""
        self._are_in(states, when, needed=False)

    def _are_in(self, needs: Iterable[Need], when: When, *, needed: bool) -> None:
        for need in needs:
            ends = _ENDS.get(need.state)
            self.unknown = self.unknown and need.state not in {*_STANDS, "running"}
            if need.state in {_RUNS, _UP}:
                self._begins(need.state, need.thing, when)
            elif need.state == "free" and need.thing in self._lifted:
                self._begins(_UP, need.thing, when)
            elif ends is not None:
                self._ends(ends, need.thing, when)
            else:
                self._cools(need.thing, need.state, when, needed=needed)

    def does(self, action: Action, when: When) -> None:
        """Take in what an action begins and ends, for some fitments."""
        name = action.kind.name
        self.unknown = self.unknown and not (action.kind.runs or action.kind.stops)
        for thing in action.what:
            if action.kind.runs:
                self._begins(_RUNS, thing, when)
            elif action.kind.stops:
                self._ends(_RUNS, thing, when)
            elif name == "raise" or (name == "release" and thing in self._lifted):
                self._begins(_UP, thing, when)
            elif name in {"lower", "support", "lock"}:
                self._ends(_UP, thing, when)
            elif name == "prove-dead":
                self._ends(_PRESSURE, thing, when)
                self._ends(_VOLTAGE, thing, when)
            else:
                self._warms_or_cools(action, thing, when)
        if name == "restore":
            self._forget(_VOLTAGE)

    def goes_through(self, called: Procedure, when: When) -> None:
        """Take in what a procedure that is carried out begins and ends, for some fitments."""
        self._go_through(called, when, frozenset({self._scope.procedure}))
        self._after_another()

    def may_go_through(self, called: Procedure, when: When) -> None:
        """Take in what a procedure that an outcome may lead to begins, for some fitments."""
        other = Dangers(self._scope)
        other._go_through(called, when, frozenset({self._scope.procedure}))  # another one of its own
        for danger, thing in other._on:  # as above
            self._begins(danger, thing, when)
        self.ran |= other.ran
        self._after_another()

    def _after_another(self) -> None:
        self._cooled.clear()
        self._forget(_PRESSURE, _VOLTAGE)

    def _go_through(self, called: Procedure, when: When, around: frozenset[Procedure]) -> None:
        for section, step in called.steps() if called not in around else ():
            here = together(when, section.when, step.when)
            for action in step.actions:
                self.does(action, here)
                for deeper in called_by(action, called, self._scope.library):
                    self._go_through(deeper, here, around | {called})
            self.leaves(step.leaves, here)
        self.leaves(called.leaves, when)

    def running(self, when: When) -> There | None:
        """Return for which fitments something runs while a step for `when` is done; None where nothing does."""
        things = [thing for danger, thing in self._on if danger == _RUNS]
        if not things:
            return None
        on = tuple(together(when, one) for thing in things for one in self._on[_RUNS, thing])
        return There(on, tuple(self._off.get((_RUNS, things[0]), ())) if len(things) == 1 else ())

    def raised(self, item: Item, when: When) -> There | None:
        """Return for which fitments a thing, or what it is part of, is up and not held; None where it is not."""
        for one in self._chain(item):
            if (_UP, one.id) in self._on:
                on = tuple(together(when, other) for other in self._on[_UP, one.id])
                return There(on, tuple(self._off.get((_UP, one.id), ())))
        return None

    @property
    def something_up(self) -> bool:
        """Whether anything is up and not held, for some fitments."""
        return any(danger == _UP for danger, _ in self._on)

    def relieved(self, fact: str, item: Item) -> Sequence[When]:
        """Return for which fitments a thing was brought to be without pressure, or dead."""
        return self._off.get((RELIEVED[fact], item.id), ())

    @property
    def something_heated(self) -> bool:
        """Whether a step has heated anything, for some fitments."""
        return bool(self._heated)

    def hot_with(self, *things: str) -> Sequence[str]:
        """Return which of these things, and of what they are part of, a step has heated."""
        found = dict.fromkeys(things)
        for thing in things:
            named = self._scope.things.get(thing)
            if named is not None and isinstance(named.thing, Item):
                found |= dict.fromkeys(one.id for one in self._chain(named.thing))
        return [one for one in found if self._heated.get(one)]

    def heated(self, thing: str) -> Sequence[Heat]:
        """Return to what the steps have heated a thing; nothing where none has."""
        return self._heated.get(thing, ())

    def cooled(self, thing: str, limit: Fraction) -> Sequence[When]:
        """Return for which fitments a thing has cooled below a temperature in K, or to it."""
        return [when for reached in self._cooled.get(thing, ()) for when in self._below(reached, limit)]

    def still_burns(self, thing: str, threshold: Fraction) -> Sequence[When]:
        """Return for which fitments a need lets a thing be hotter than a threshold in K."""
        needed = [one for one in self._cooled.get(thing, ()) if one.needed]
        return [when for one in needed for when, end in one.windows if end is not None and end > threshold]

    def _below(self, reached: _Reached, limit: Fraction) -> Sequence[When]:
        """Return for which fitments every window of a value lies below a limit; where two apply, the warmer counts."""
        low = [when for when, end in reached.windows if end is not None and end <= limit]
        high = [when for when, end in reached.windows if end is None or end > limit]
        if not (low and high):
            return low
        vehicle = self._scope.vehicle
        return bare(vehicle, self._scope.procedure.covers, low, high) if vehicle is not None else []

    def _begins(self, danger: str, thing: str, when: When) -> None:
        self._on.setdefault((danger, thing), []).append(when)
        self._off.pop((danger, thing), None)
        if danger == _UP:
            self._lifted.add(thing)
        else:  # an engine that runs warms its exhaust, and its pumps build up pressure
            self.ran = True
            self._cooled.clear()
            self._forget(_PRESSURE)

    def _ends(self, danger: str, thing: str, when: When) -> None:
        if not when:
            self._on.pop((danger, thing), None)
        self._off.setdefault((danger, thing), []).append(when)

    def _forget(self, *dangers: str) -> None:
        self._off = {key: whens for key, whens in self._off.items() if key[0] not in dangers}

    def _warms_or_cools(self, action: Action, thing: str, when: When) -> None:
        if action.kind.name == "heat":
            self._heats(thing, action.roles["to"], when)
        elif action.kind.name == "measure":
            self._cools(thing, action.roles.get("value", ""), when, needed=False)
        elif action.kind.name == "wait":
            self._waits(thing, when)

    def _heats(self, thing: str, name: str, when: When) -> None:
        heats = [Heat(to, together(when, own)) for own, to in self._stated(name, Dimension.TEMPERATURE)]
        for one in one_and_the_same(thing, self._scope.procedure.choices.values()):
            self._cooled.pop(one, None)
            before = self._heated.get(one, []) if when or not heats else []
            self._heated[one] = [*before, *heats]

    def _waits(self, name: str, when: When) -> None:
        """Let the shortest time of a wait pass for what is hot on no other machines than those that wait."""
        ends = [interval_of(time).low for _, time in self._stated(name, Dimension.TIME)]
        least = min((end or Fraction(0) for end in ends), default=Fraction(0))
        for thing, heats in self._heated.items():
            self._heated[thing] = [
                replace(heat, waited=heat.waited + least) if _within(heat.when, when) else heat for heat in heats
            ]

    def _cools(self, thing: str, name: str, when: When, *, needed: bool) -> None:
        stated = self._stated(name, Dimension.TEMPERATURE)
        windows = tuple((together(when, own), interval_of(one).high) for own, one in stated)
        for one in one_and_the_same(thing, self._scope.procedure.choices.values()) if windows else ():
            self._cooled.setdefault(one, []).append(_Reached(windows, needed))

    def _stated(self, name: str, dimension: Dimension) -> Iterator[tuple[When, Quantity]]:
        """Yield each window that a value states in a dimension, with its condition."""
        named = self._scope.things.get(name)
        for window in named.thing.windows if named is not None and isinstance(named.thing, Value) else ():
            quantity = window.specification.value
            if quantity is not None and quantity.dimension is dimension:
                yield window.when, quantity

    def _chain(self, item: Item) -> list[Item]:
        """Return a thing, what it is part of, and so on; a ring of parts ends where it comes round."""
        chain = [item]
        while chain[-1].part_of is not None:
            named = self._scope.things.get(chain[-1].part_of)
            above = named.thing if named is not None else None
            if not isinstance(above, Item) or above in chain:
                break
            chain.append(above)
        return chain


def _within(when: When, other: When) -> bool:
    """Tell whether wherever `when` holds, `other` is sure to hold as well."""
    return all(set(when.get(feature, ())) <= set(values) and feature in when for feature, values in other.items())
