"""From which step to which a thing is isolated, held, running, up, open, apart, empty or without pressure.

It follows from what the steps do and from the states that are asked for; of a thing that nobody speaks of nothing is
known, so nothing is told of it.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import TypeAlias

from msgspec import Struct
from msgspec.structs import replace

from authoring.booklet.in_order import Done
from authoring.model.demands import Need
from authoring.model.ends import Side, changes
from authoring.model.fitments import Fitment, may_hold
from authoring.model.procedure import Action

START = -1
"""The place of how the machine comes, before the first step."""


class Shown(Struct, frozen=True):
    """How a state is told; `safe` where it keeps people from harm, `at_once` where it lasts for one step only."""

    words: str
    safe: bool = False
    at_once: bool = False


SHOWN: Mapping[tuple[str, str], Shown] = {
    ("energy", "isolated"): Shown("isolated", safe=True),
    ("energy", "proved-dead"): Shown("isolated and proved dead", safe=True),
    ("proof", "proved-dead"): Shown("proved dead", safe=True, at_once=True),
    ("pressure", "without-pressure"): Shown("without pressure", safe=True),
    ("motion", "running"): Shown("runs"),
    ("height", "raised"): Shown("raised"),
    ("hold", "chocked"): Shown("chocked", safe=True),
    ("hold", "supported"): Shown("held", safe=True),
    ("lock", "locked"): Shown("locked", safe=True),
    ("lid", "open"): Shown("open"),
    ("joint", "apart"): Shown("disconnected"),
    ("fluid", "drained"): Shown("drained"),
    ("heat", "heated"): Shown("heated", at_once=True),
}
"""What is told, in this order: by the side of a thing and the state on it."""

_AT_ONCE = {"prove-dead": ("proof", "proved-dead"), "heat": ("heat", "heated")}
"""The actions that leave no state behind of which one knows how long it lasts, and what is told of their step."""

_JOINED = frozenset({"fitted", "tight"})
_BRINGS_PRESSURE = frozenset({("motion", "running"), ("energy", "live")})


class Moment(Struct, frozen=True):
    """Something becomes so: at which step, counted from 0, on which side of which thing, and how it then is."""

    place: int
    side: Side
    state: str


class Stretch(Struct, frozen=True):
    """From which step to which something is so; `last` is None where it stays so."""

    state: str
    first: int
    last: int | None


Lanes: TypeAlias = tuple[tuple[Side, tuple[Stretch, ...]], ...]
"""Each side of a thing of which something is told, and its stretches in order."""


def lanes(moments: Iterable[Moment]) -> Lanes:
    """Return what a run of changes comes to, sorted as `SHOWN` is and then as it is met.

    A state that is as much told of as the one before it goes on with it: what was isolated and is then proved dead has
    one stretch, under its last name. Nothing counts as being without pressure once something runs or is fed again.
    """
    found: dict[Side, list[Stretch]] = {}
    for moment in moments:
        if (moment.side[1], moment.state) in _BRINGS_PRESSURE:
            for side, some in found.items():
                if side[1] == "pressure" and some and some[-1].last is None:
                    some[-1] = replace(some[-1], last=moment.place)
        shown = SHOWN.get((moment.side[1], moment.state))
        mine = found.setdefault(moment.side, [])
        goes_on = mine[-1] if mine and mine[-1].last is None else None
        if goes_on is not None:
            state = moment.state if shown is not None else goes_on.state
            mine[-1] = replace(goes_on, state=state, last=None if shown is not None else moment.place)
        elif shown is not None:
            mine.append(Stretch(moment.state, moment.place, moment.place if shown.at_once else None))
    order = list(dict.fromkeys(side for side, _ in SHOWN))
    told = [(side, tuple(mine)) for side, mine in found.items() if mine]
    return tuple(sorted(told, key=lambda one: order.index(one[0][1])))


def moments(course: Sequence[Done], comes: Sequence[Need], machine: Fitment) -> Iterator[Moment]:
    """Yield what changes on one machine along the steps; `comes` is how it must be before the first of them."""
    events = [(START, need) for need in comes] + list(_events(course, machine))
    yield from _changed(events)
    for place, event in events:
        if isinstance(event, Action) and event.kind.name in _AT_ONCE:
            side, state = _AT_ONCE[event.kind.name]
            yield from (Moment(place, (thing, side), state) for thing in event.what)


def _events(course: Sequence[Done], machine: Fitment) -> Iterator[tuple[int, Action | Need]]:
    """Yield each state that is asked for and each action, with the place of its step."""
    before = None
    for place, done in enumerate(course):
        if all(may_hold(when, machine) for when in done.whens):
            section, step = done.placed.section, done.placed.step
            asked = section.needs if section is not before else ()
            before = section
            yield from ((place, need) for need in (*asked, *step.needs))
            yield from ((place, action) for action in step.actions)
            yield from ((place, need) for need in step.leaves)


def _changed(events: Sequence[tuple[int, Action | Need]]) -> Iterator[Moment]:
    here = START

    def one_by_one() -> Iterator[Action | Need]:
        nonlocal here
        for place, event in events:
            here = place
            yield event

    # Each event is asked for when what the one before it changes has been told, so `here` is its place.
    for change in changes(one_by_one()):
        thing, side = change.side
        yield Moment(here, change.side, change.state)
        if side == "where" and isinstance(change.by, Action):
            if change.by.kind.name == "disconnect":
                yield Moment(here, (thing, "joint"), "apart")
            elif change.state in _JOINED:
                yield Moment(here, (thing, "joint"), "joined")
