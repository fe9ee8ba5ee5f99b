"""What lies beneath a cover that goes on: what it covers, what is part of that, and the fasteners on it."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Mapping

from msgspec import Struct

from authoring.model.ends import Side
from authoring.model.library import Scope
from authoring.model.on_and_off import wholes
from authoring.model.things import Equipment, Item
from authoring.proof.covers import is_off
from authoring.proof.settings import Setting


class Beneath(Struct, frozen=True):
    """A thing beneath a cover.

    `inside` are the things that must be on for it to lie there: what it is part of or on, as far as what is covered.
    `around` is what that is part of in its turn, as far as the cover is no part of it: while it is off, its place is
    empty.
    """

    thing: str
    inside: tuple[str, ...] = ()
    around: tuple[str, ...] = ()

    def sides(self) -> Iterator[Side]:
        """Yield the sides that tell how it is and whether it lies there."""
        yield self.thing, "lid"
        yield from ((one, "where") for one in (self.thing, *self.inside, *self.around))

    def lies_there(self, now: Mapping[Side, Setting], placed: Collection[str]) -> bool:
        """Tell whether all that it lies in is on, or is one of the things that are placed with the cover."""
        return all(one in placed or not is_off(one, now) for one in self.inside)


def beneath(cover: Item, equipment: Equipment, scope: Scope) -> Iterator[Beneath]:
    """Yield what lies beneath a cover, each thing once; the cover, what it is part of and its own parts do not."""
    named = dict.fromkeys(one for one in cover.covers if one in equipment.items or one in equipment.fasteners)
    mine = wholes(cover.id, scope.things)
    found = {one: Beneath(one, (), _around(one, mine, scope)) for one in named if one not in mine}
    for item in equipment.items.values():
        inside = _inside(item.id, named, scope)
        if inside and item.id not in mine and cover.id not in wholes(item.id, scope.things):
            within = tuple(one for one in inside if one not in mine)
            found.setdefault(item.id, Beneath(item.id, within, _around(inside[-1], mine, scope)))
    for group in equipment.fasteners.values():
        if group.on in found:
            lies = found[group.on]
            found.setdefault(group.id, Beneath(group.id, (group.on, *lies.inside), lies.around))
    yield from found.values()


def _inside(thing: str, named: Collection[str], scope: Scope) -> tuple[str, ...]:
    """Return what a thing is part of, as far as the first that is covered by name; nothing where none is."""
    over = wholes(thing, scope.things)[1:]
    at = next((place for place, one in enumerate(over) if one in named), None)
    return tuple(over[: at + 1]) if at is not None else ()


def _around(thing: str, mine: Collection[str], scope: Scope) -> tuple[str, ...]:
    return tuple(one for one in wholes(thing, scope.things)[1:] if one not in mine)
