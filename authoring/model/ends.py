"""How a run of actions leaves each thing: the last change of each of its sides, such as on or off, open or closed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import cache
from typing import TypeAlias

from msgspec import Struct

from authoring.model.action_kind import ActionKind
from authoring.model.action_kinds import action_kinds
from authoring.model.demands import Need
from authoring.model.effects import Effect
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


_SIDES_OF_STATES: Mapping[str, str] = {
    "fitted": "where",
    "removed": "where",
    "started": "where",
    "loose": "where",
    "tight": "where",
    "tried": "where",
    "held": "where",
    "discarded": "where",
    "empty": "where",
    "replaced": "where",
    "open": "lid",
    "closed": "lid",
    "raised": "height",
    "lowered": "height",
    "supported": "hold",
    "chocked": "hold",
    "free": "hold",
    "locked": "lock",
    "isolated": "energy",
    "live": "energy",
    "proved-dead": "energy",
    "running": "motion",
    "stopped": "motion",
    "drained": "fluid",
    "filled": "fluid",
    "without-pressure": "pressure",
}
"""What of a thing each state of the language is about."""

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
    return need.thing, _SIDES_OF_STATES.get(need.state, "position")


def changing(kind: ActionKind) -> bool:
    """Tell whether an action leaves a thing otherwise, or elsewhere, than it found it."""
    return bool(kind.effects) or kind.keeps


def touched_sides(action: Action) -> frozenset[Side]:
    """Return the sides on which an action can change something, and those on which it depends what it changes."""
    return frozenset(
        (thing, side) for effect, thing in _effects(action) for side in {effect.side, *rivals(effect.side)}
    )


@cache
def rivals(side: str) -> frozenset[str]:
    """Return the sides of which some action changes the one that changed last, where this is one of them."""
    found: set[str] = set()
    for kind in action_kinds().values():
        sides = {effect.side for effect in kind.effects if effect.only}
        found |= sides if side in sides else set()
    return frozenset(found)


def _effects(action: Action) -> Iterator[tuple[Effect, str]]:
    """Yield each effect of an action with each thing it is on, thing by thing."""
    for role, thing in action.names():
        yield from ((effect, thing) for effect in action.effects(role))


def _changes(action: Action, known: Mapping[Side, str]) -> Iterator[Change]:
    for role, thing in action.names():
        effects = list(action.effects(role))
        for effect in effects:
            before = known.get((thing, effect.side))
            if not effect.only and not (effect.perhaps and before == effect.becomes):
                state = action.details[effect.says] if effect.says else effect.becomes
                yield Change((thing, effect.side), state, action, sure=not effect.perhaps or before is not None)
        taken = _depending(effects, thing, known)
        if taken is not None:
            yield Change((thing, taken.side), taken.becomes, action)


def _depending(effects: Sequence[Effect], thing: str, known: Mapping[Side, str]) -> Effect | None:
    """Return the effect that happens of those that depend on how a thing is: that of the side which changed last.

    Where nothing is known of the thing, an action that does nothing else must be meant for the first of them.
    """
    fits = [one for one in effects if known.get((thing, one.side)) in one.only]
    last = [side for one, side in known if one == thing and any(fit.side == side for fit in fits)]
    if fits:
        return next(fit for fit in fits if fit.side == last[-1])
    return effects[0] if effects and all(one.only for one in effects) else None
