"""What lies under what: the covers of a thing, and whether one of them is in the way."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from authoring.model.effects import Reach
from authoring.model.ends import Side
from authoring.model.library import Scope
from authoring.model.on_and_off import wholes
from authoring.model.procedure import Action
from authoring.proof.settings import Setting

OFF = frozenset({"removed", "replaced", "discarded", "empty"})
"""How a thing is where it is not on the machine."""

_PLACED_WITH = ("on", "in", "replaces")
"""The roles whose things must be free as well where something is brought to its place."""


class Covered(Struct, frozen=True):
    """A thing that is reached, and the item that covers it or something that it is part of."""

    thing: str
    cover: str

    def sides(self, scope: Scope) -> Iterator[Side]:
        """Yield the sides that tell whether it is in the way: where both are, and all that they are part of."""
        for one in (*wholes(self.cover, scope.things), *wholes(self.thing, scope.things)):
            yield one, "where"
        yield self.cover, "lid"

    def in_the_way(self, action: Action, scope: Scope, now: Mapping[Side, Setting]) -> bool:
        """Tell whether the cover keeps the hands from the thing for an action; what it goes on may lie apart.

        Where something that the thing is part of is off, it lies at the bench, with those covers only that do so too.
        """
        of_cover, of_thing = (wholes(one, scope.things) for one in (self.cover, self.thing))
        whole_off = any(is_off(one, now) for one in of_thing[1:] if one not in of_cover)
        goes_there = self.thing in action.what or action.roles.get("replaces") == self.thing
        placed = action.kind.reach is Reach.PLACE and goes_there
        lies_apart = whole_off or (is_off(self.thing, now) and not placed)
        cover_off = any(is_off(one, now) for one in of_cover if one not in of_thing)
        # A cover is tried so that what lies under it can be judged.
        tried = action.kind.checkpoint and now[self.cover, "where"].state == "tried"
        # What one action takes off together, or brings to its place together, is done in an order of its own.
        together = self.cover in action.what
        return not (lies_apart or cover_off or tried or together or now[self.cover, "lid"].state == "open")


def covers_of(thing: str, scope: Scope) -> Iterator[Covered]:
    """Yield each item that covers a thing or something that it is part of, but for its own parts, which go with it."""
    if scope.equipment is not None:
        over = frozenset(wholes(thing, scope.things))
        for item in scope.equipment.items.values():
            apart = item.id not in over and thing not in wholes(item.id, scope.things)
            if apart and not over.isdisjoint(item.covers):
                yield Covered(thing, item.id)


def is_off(thing: str, now: Mapping[Side, Setting]) -> bool:
    """Tell whether a thing is not on the machine."""
    return now[thing, "where"].state in OFF


def reached(action: Action) -> Iterator[tuple[str, str]]:
    """Yield (role, name) for what the hands must reach: what the action is done to, and the places of what goes on."""
    kind = action.kind
    if kind.reach is Reach.NOWHERE:
        return
    named = list(action.names())
    first = next((role for role in kind.reached if any(role == one for one, _ in named)), None)
    beside = _PLACED_WITH if kind.reach is Reach.PLACE else ()
    yield from ((role, name) for role, name in named if role == first or role in beside)
