"""What is asked of one action on one machine, rule by rule, in the words of the guide."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from typing import Any

from tests.proof_reference.state import Machine, State
from tests.proof_reference.table import (
    BRINGING,
    CHECKPOINTS,
    GOING_ON,
    NOT_BACK,
    OFF,
    OTHER_SIDE,
    POURING,
    REACHING,
    REACHING_AT,
)
from tests.proof_reference.told import Group, listed

Settled = Mapping[str, set[str]]

_DONE_ALREADY = {
    "remove": ("where", set(OFF), False),
    "disconnect": ("where", set(OFF), False),
    "fit": ("where", {"fitted"}, True),
    "connect": ("where", {"fitted"}, True),
    "hold": ("where", {"held"}, False),
    "loosen": ("where", {"loose", "removed"}, False),
    "start": ("where", {"started", "tight"}, True),
    "open": ("lid", {"open"}, False),
    "close": ("lid", {"closed"}, True),
    "isolate": ("energy", {"isolated"}, False),
    "restore": ("energy", {"live"}, True),
    "lock": ("lock", {"locked"}, False),
    "release": ("support", {"free"}, False),
}
"""The side that an action finds done already, the states in which it does, and whether a machine comes so."""


class Action:
    """One action on one thing: the verb, the thing, its further keys, and the procedure that it stands in."""

    def __init__(self, verb: str, thing: str, value: Group, number: str) -> None:
        """Take one of the things that an action names."""
        self.verb = verb
        self.thing = thing
        self.value: dict[str, Any] = value
        self.number = number


def faults(action: Action, state: State, machine: Machine, stated: Settled) -> Iterator[str]:
    """Yield the rules that an action breaks in this state of the machine, before it changes anything.

    `stated` are the states of each thing that settle it for the whole job.
    """
    for rule, broken in _ASKED.items():
        if broken(action, state, machine):
            yield rule
    if _over_loose(action, state, machine, stated):
        yield "covered-over"
    if _parted(action, state, machine, stated):
        yield "restored-while-open"
    if _unstarted(action, state, machine, stated):
        yield "tightened-unstarted"


def reached(action: Action, state: State, machine: Machine) -> Iterator[str]:
    """Yield the places on the machine that the hands must come to."""
    verb, thing, value = action.verb, action.thing, action.value
    key = REACHING_AT.get(verb)
    if key is not None and key in value:
        # Hands look at, or pour in at, this place instead.
        yield from (one for one in listed(value[key]) if not machine.off(one, state))
        return
    if verb not in REACHING:
        return
    if not machine.off(thing, state):
        yield thing
    if verb not in BRINGING:
        return
    if machine.off(thing, state) and not any(machine.off(one, state) for one in machine.wholes(thing)):
        yield thing
    for other in (value[key] for key in ("on", "in") if key in value):
        if not machine.off(other, state):
            yield other
    old = value.get("replaces")
    if old is not None and not any(machine.off(one, state) for one in machine.wholes(old)):
        yield old


def _held(action: Action, state: State, machine: Machine) -> bool:
    if action.verb not in {"remove", "disconnect"} or action.thing not in machine.items:
        return False
    together = listed(action.value["what"])
    holding = [
        one
        for one in machine.fasteners_on(action.thing)
        if "untouched" not in machine.fasteners[one] and not machine.is_plug(one) and one not in together
    ]
    return any(state.value(one, "where") in {"", "tight"} for one in holding)


def _over_loose(action: Action, state: State, machine: Machine, stated: Settled) -> bool:
    if action.verb not in GOING_ON:
        return False
    cover_of = set(machine.wholes(action.thing))
    named = {action.thing, *listed(action.value["what"])}
    under = [one for thing in machine.covered_by(action.thing) for one in _with_its_parts(thing, state, machine)]
    for thing in under:
        if thing in cover_of or named & {thing, *machine.wholes(thing)}:
            continue
        where = state.sides.get((thing, "where"))
        if where is not None and where.value == "held" and where.new == action.thing:
            # It is held until this very thing traps it.
            continue
        for one in (thing, *(whole for whole in machine.wholes(thing) if whole not in cover_of)):
            # What is part of something that is off is not there either, but at the bench, where the cover lies as well.
            wrong = NOT_BACK if one == thing else {"removed"}
            values = {state.value(one, "where")} & wrong | ({"open"} if state.is_open(thing) else set())
            if any(not settled(one, value, state, (machine, stated)) for value in values):
                return True
    return False


def _with_its_parts(thing: str, state: State, machine: Machine) -> Iterator[str]:
    yield thing
    if not machine.off(thing, state):
        yield from machine.fasteners_on(thing)
        for part in machine.parts(thing):
            yield from _with_its_parts(part, state, machine)


def not_back(thing: str, state: State) -> bool:
    """Tell whether a thing is removed, loose, started, tried, held or open."""
    return state.value(thing, "where") in NOT_BACK or state.is_open(thing)


def settled(thing: str, value: str, state: State, whose: tuple[Machine, Settled]) -> bool:
    """Tell whether something settles that a thing is in this state."""
    machine, stated = whose
    if state.value(thing, "where") in {"discarded", "empty", "replaced"}:
        return True
    # A part goes where the whole goes.
    if any(state.value(one, "where") in {"discarded", "replaced"} for one in machine.wholes(thing)):
        return True
    words = {value, "left-out"} | ({"removed"} if value in {"loose", "started"} else set())
    return bool(stated.get(thing, set()) & words)


def _unstarted(action: Action, state: State, machine: Machine, stated: Settled) -> bool:
    thing = action.thing
    if action.verb != "tighten":
        return False
    if state.value(thing, "where") == "removed":
        return True
    if thing not in machine.fasteners or machine.is_plug(thing) or "on" not in machine.fasteners[thing]:
        return False
    item = machine.fasteners[thing]["on"]
    others = [one for one in machine.fasteners_on(item) if one != thing and not machine.is_plug(one)]
    waited = [one for one in others if not stated.get(one, set()) & {"left-out", "left removed"}]
    return any(state.value(one, "where") == "removed" for one in waited)


def _runs(state: State) -> bool:
    return any(side == "motion" and fact.value == "running" for (_, side), fact in state.sides.items())


def _poured_through(action: Action, state: State, machine: Machine) -> bool:
    return action.verb in POURING and any(one != "started" for one in draining(action.thing, state, machine))


def draining(fluid: str, state: State, machine: Machine) -> Iterator[str]:
    """Yield how each thing is that drains a fluid and is not back, but for those that it is filled through as well."""
    for name, one in machine.things.items():
        if fluid not in one.get("drains", []) or fluid in one.get("fills", []):
            continue
        if "open-while-running" in one and _runs(state):
            continue
        if any(state.value(whole, "where") == "removed" for whole in machine.wholes(name)) or state.is_open(name):
            yield "off"
        elif state.value(name, "where") in NOT_BACK:
            yield state.value(name, "where")


def _poured_twice(action: Action, state: State, _: Machine) -> bool:
    return action.verb == "fill" and state.value(action.thing, "room") != "some"


def _open(machine: Machine, state: State) -> bool:
    """Tell whether something that drains or fills a fluid is not back, and does not say that it may be open then."""
    plugs = [name for name, one in machine.things.items() if machine.is_plug(name) and "open-while-running" not in one]
    whole_off = any(state.value(whole, "where") == "removed" for one in plugs for whole in machine.wholes(one))
    return whole_off or any(not_back(one, state) for one in plugs)


def _run_open(action: Action, state: State, machine: Machine) -> bool:
    if action.verb != "run":
        return False
    drained = any(state.value(one, "fluid") == "drained" for one in machine.fluids)
    return drained or _open(machine, state)


def _idle(action: Action, state: State, machine: Machine) -> bool:
    """Tell whether an action finds what it does done already, by the same procedure or as the machine came."""
    verb, thing = action.verb, action.thing
    if thing not in machine.items and thing not in machine.fasteners:
        return False
    side, done, comes = _DONE_ALREADY.get(verb, ("", set(), False))
    if verb == "release" and state.value(thing, "lock") == "locked":
        return False
    fact = state.sides.get((thing, side))
    if fact is None:
        return comes
    # A lamp is parted, then taken off; it is put on, then joined.
    if (fact.verb, verb) in {("disconnect", "remove"), ("fit", "connect"), ("seat", "connect")}:
        return False
    return fact.value in done and fact.at.number == action.number


def _parted(action: Action, state: State, machine: Machine, stated: Settled) -> bool:
    """Tell whether something that was disconnected is not connected, and nothing settles that."""
    parted = [name for name in machine.items if name != action.thing and (name, "parted") in state.sides]
    left = [one for one in parted if state.value(one, "where") == "removed"]
    return action.verb == "restore" and not all(settled(one, "removed", state, (machine, stated)) for one in left)


def _other_side(action: Action, _: State, machine: Machine) -> bool:
    thing, value = action.thing, action.value
    own: Mapping[str, str] = machine.things.get(thing, Group())
    akin = {*machine.wholes(thing), own.get("on"), own.get("among")}
    others = [(key, value[key]) for key in ("on", "in", "replaces") if key in value and value[key] not in akin]
    other = OTHER_SIDE.get(machine.side(thing), "")
    return any(
        other and machine.side(one) == other and (other in {"left", "right"} or key == "replaces")
        for key, one in others
    )


def _covered(action: Action, state: State, machine: Machine) -> bool:
    """Tell whether a cover is in the way: none that is only tried at a checkpoint, none that is named beside it."""
    named = listed(action.value["what"])
    covers = [cover for place in reached(action, state, machine) for cover in machine.shut_over(place, state)]
    there = action.verb in BRINGING or state.value(action.thing, "where") not in OFF
    if action.verb in REACHING and there:
        covers += machine.shut_beside(action.thing, state)
    for cover in covers:
        tried = action.verb in CHECKPOINTS and state.value(cover, "where") == "tried"
        if cover not in named and not tried:
            return True
    return False


_ASKED: Mapping[str, Callable[[Action, State, Machine], bool]] = {
    "reached-through-cover": _covered,
    "removed-while-held": _held,
    "filled-while-open": _poured_through,
    "filled-when-full": _poured_twice,
    "run-while-open": _run_open,
    "without-effect": _idle,
    "wrong-side": _other_side,
}
