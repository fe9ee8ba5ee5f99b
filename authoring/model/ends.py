"""How a run of actions leaves each thing: the last change of each of its sides, such as on or off, open or closed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from typing import TypeAlias

from msgspec import Struct

from authoring.model.demands import Need
from authoring.model.procedure import Action

Side: TypeAlias = tuple[str, str]
"""A thing and what may change about it: where it is, whether it is held, open, up, fed, moving or full."""


class End(Struct, frozen=True):
    """How one side of a thing is left, in the words of the language, and the action that leaves it so."""

    state: str
    action: Action | None


class Change(Struct, frozen=True):
    """One side of a thing, the state in which it is left, and the action that does so or the statement that it is so.

    `sure` is False where it may have been in this state before: whoever lowers a lid need not have held it up.
    """

    side: Side
    state: str
    by: Action | Need
    sure: bool = True


_CHANGES: Mapping[str, tuple[str, str]] = {
    "remove": ("where", "removed"),
    "disconnect": ("where", "removed"),
    "fit": ("where", "fitted"),
    "seat": ("where", "fitted"),
    "connect": ("where", "fitted"),
    "start": ("where", "started"),
    "loosen": ("where", "loose"),
    "tighten": ("where", "tight"),
    "trial-fit": ("where", "tried"),
    "hold": ("where", "held"),
    "discard": ("fate", "discarded"),
    "open": ("lid", "open"),
    "close": ("lid", "closed"),
    "raise": ("height", "raised"),
    "lower": ("height", "lowered"),
    "support": ("hold", "supported"),
    "lock": ("lock", "locked"),
    "isolate": ("energy", "isolated"),
    "restore": ("energy", "live"),
    "run": ("motion", "running"),
    "stop": ("motion", "stopped"),
    "drain": ("fluid", "drained"),
    "extract": ("fluid", "drained"),
    "fill": ("fluid", "filled"),
    "fill-to-level": ("fluid", "filled"),
    "top-up": ("fluid", "filled"),
}
"""What each action changes, and into what; an action that is not here leaves every thing as it was."""

CHANGING = frozenset({*_CHANGES, "set", "release", "keep", "leave-empty"})
"""The actions that leave a thing otherwise, or elsewhere, than they found it."""

_KEEPS: Mapping[str, frozenset[str]] = {"hold": frozenset({"supported", "chocked"}), "lock": frozenset({"locked"})}
"""What keeps a thing in its place until it is released, by side."""

_SIDES: Mapping[str, str] = {state: side for side, state in _CHANGES.values()} | {
    "free": "hold",
    "proved-dead": "energy",
    "chocked": "hold",
    "without-pressure": "pressure",
}

_BEFORE: Mapping[str, frozenset[str]] = {
    "removed": frozenset({"fitted", "tight"}),
    "loose": frozenset({"tight"}),
    "tried": frozenset({"removed"}),
    "open": frozenset({"closed"}),
    "closed": frozenset({"open"}),
    "raised": frozenset({"lowered"}),
    "lowered": frozenset({"raised"}),
    "supported": frozenset({"free", "carried"}),
    "locked": frozenset({"unlocked"}),
    "isolated": frozenset({"live"}),
    "live": frozenset({"isolated"}),
    "running": frozenset({"stopped"}),
    "stopped": frozenset({"running"}),
    "drained": frozenset({"filled"}),
}
"""How a thing was before an action left it in a state; one that ends so again was not changed."""


def ends(actions: Iterable[Action], leaves: Iterable[Need] = ()) -> dict[Side, End]:
    """Return how each side that the actions change is left; what ends as it began is left out."""
    first: dict[Side, str] = {}
    last: dict[Side, End] = {}
    for change in changes((*actions, *leaves)):
        if change.sure:
            first.setdefault(change.side, change.state)
            last[change.side] = End(change.state, change.by if isinstance(change.by, Action) else None)
    return {side: end for side, end in last.items() if end.state not in _BEFORE.get(first[side], ())}


def changes(events: Iterable[Action | Need]) -> Iterator[Change]:
    """Yield in order what is changed by actions and by statements of how a thing is.

    What an action changes may depend on the events before it: a release takes away what was put there last.
    """
    known: dict[Side, str] = {}
    for event in events:
        each = [Change(side_of(event), event.state, event)] if isinstance(event, Need) else list(_changes(event, known))
        for change in each:
            known.pop(change.side, None)  # so that the side that was changed last stands last
            known[change.side] = change.state
            yield change


def side_of(need: Need) -> Side:
    """Return what of a thing a state is about; a state that is none of the language's is a position, or a value."""
    return need.thing, _SIDES.get(need.state, "position")


def touched_sides(action: Action) -> frozenset[Side]:
    """Return the sides on which an action can change something, and those on which it depends what it changes."""
    return frozenset((thing, side) for thing in action.what for side in _sides_of(action))


def _sides_of(action: Action) -> Iterator[str]:
    name = action.kind.name
    if name == "set":
        yield "position"
    elif name in _CHANGES:
        yield _CHANGES[name][0]
    if name in {"lock", "release"}:
        yield from _KEEPS
    elif "support" in action.kind.undoes:
        yield "hold"


def _changes(action: Action, known: Mapping[Side, str]) -> Iterator[Change]:
    name = action.kind.name
    for thing in action.what:
        if name == "set":
            yield Change((thing, "position"), action.details["position"], action)
        elif name in _CHANGES:
            side, state = _CHANGES[name]
            yield Change((thing, side), state, action)
        held = known.get((thing, "hold"))
        if name == "release":
            yield _released(thing, action, known)
        elif name == "lower" and held != "free":
            yield Change((thing, "hold"), "free", action, sure=held is not None)
        elif held in _KEEPS["hold"] and "support" in action.kind.undoes:
            # What it is fitted to carries it now; a stand may be under it still.
            yield Change((thing, "hold"), "carried", action)


def _released(thing: str, action: Action, known: Mapping[Side, str]) -> Change:
    """Return what a release changes: what was put there last is taken away; where none is known, a support."""
    kept = [side for (one, side), state in known.items() if one == thing and state in _KEEPS.get(side, ())]
    return (
        Change((thing, "lock"), "unlocked", action)
        if kept[-1:] == ["lock"]
        else Change((thing, "hold"), "free", action)
    )
