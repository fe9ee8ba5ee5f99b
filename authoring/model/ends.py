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
    """One side of a thing, and the state in which an action leaves it."""

    side: Side
    state: str


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
    "release": ("hold", "free"),
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

_SIDES: Mapping[str, str] = {state: side for side, state in _CHANGES.values()} | {
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
    "supported": frozenset({"free"}),
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

    def change(side: Side, state: str, action: Action | None) -> None:
        first.setdefault(side, state)
        last[side] = End(state, action)

    for action in actions:
        name = action.kind.name
        for thing in action.what:
            if (thing, "hold") in last and "support" in action.kind.undoes:
                change((thing, "hold"), "free", action)
            if (thing, "lock") in last and name == "release":
                change((thing, "lock"), "unlocked", action)
            elif name == "set":
                change((thing, "position"), action.details["position"], action)
            elif name in _CHANGES:
                side, state = _CHANGES[name]
                change((thing, side), state, action)
    for need in leaves:
        change(side_of(need), need.state, None)
    return {side: end for side, end in last.items() if end.state not in _BEFORE.get(first[side], ())}


def side_of(need: Need) -> Side:
    """Return what of a thing a state is about; a state that is none of the language's is a position, or a value."""
    return need.thing, _SIDES.get(need.state, "position")


def changes_of(action: Action) -> Iterator[Change]:
    """Yield what an action changes by itself, whatever was done before it."""
    name = action.kind.name
    for thing in action.what:
        if name == "set":
            yield Change((thing, "position"), action.details["position"])
        elif name in _CHANGES:
            yield Change((thing, _CHANGES[name][0]), _CHANGES[name][1])
        if name == "lower":
            yield Change((thing, "hold"), "free")
