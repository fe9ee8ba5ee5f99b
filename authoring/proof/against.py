"""Which states contradict one another, where one is asked for or promised and a thing stands otherwise."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from authoring.model.demands import Need
from authoring.model.ends import Side
from authoring.model.library import Scope
from authoring.model.things import Item
from authoring.proof.settings import Setting

_ON = frozenset({"fitted", "started", "tight"})
_AGAINST = {
    "stopped": frozenset({"running"}),
    "running": frozenset({"stopped"}),
    "isolated": frozenset({"live"}),
    "proved-dead": frozenset({"live"}),
    "live": frozenset({"isolated"}),
    "supported": frozenset({"free"}),
    "chocked": frozenset({"free"}),
    "free": frozenset({"supported", "chocked"}),
    "raised": frozenset({"lowered"}),
    "lowered": frozenset({"raised"}),
    "open": frozenset({"closed"}),
    "closed": frozenset({"open"}),
    "removed": _ON,
    "fitted": frozenset({"removed"}),
    "drained": frozenset({"filled"}),
    "filled": frozenset({"drained"}),
}
"""For each state that may be asked for, those that contradict it; any other, such as held or loose, may do."""


def can_be_contradicted(need: Need, scope: Scope) -> bool:
    """Tell whether another state of the thing contradicts the one that is asked for."""
    return need.state in _AGAINST or is_position(need, scope)


def is_position(need: Need, scope: Scope) -> bool:
    """Tell whether the state that is asked for is a position of the thing."""
    named = scope.things.get(need.thing)
    return named is not None and isinstance(named.thing, Item) and need.state in named.thing.positions


def contradicts(last: Setting, need: Need, scope: Scope) -> bool:
    """Tell whether how a thing stands cannot be what is asked for; of two positions it has one."""
    if last.state == need.state:
        return False
    thing = scope.things[need.thing].thing if need.thing in scope.things else None
    other_position = isinstance(thing, Item) and {need.state, last.state} <= thing.positions.keys()
    return other_position or last.state in _AGAINST.get(need.state, ())


def changed_last(now: Mapping[Side, Setting], sides: Iterable[Side]) -> Setting:
    """Return the setting of the side that changed last: a lever that is set to free was not held up before."""
    return max((now[side] for side in sides), key=lambda one: (one.number, one.by is not None))
