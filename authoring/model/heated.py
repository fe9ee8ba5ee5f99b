"""What a step has heated, and how long it stays too hot for a hand."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from msgspec import Struct
from msgspec.structs import replace

from authoring.model.action_kind import Kind
from authoring.model.cooling import wait_for
from authoring.model.library import Scope
from authoring.model.procedure import Choice
from authoring.model.specification import ALWAYS, When
from authoring.model.things import Item, Shop
from authoring.quantities.quantity import Quantity
from authoring.workshop.burns import SECOND, Surface, burn_threshold
from authoring.workshop.cooling import Estimate
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import exactly, interval_of

_SURFACES = frozenset({Kind.ITEM, Kind.FASTENERS, Kind.PART, Kind.CHOICE})


class Heat(Struct, frozen=True, eq=False):
    """To what a step has brought a thing, for which fitments, and for how many s the steps have waited since."""

    to: Quantity
    when: When
    waited: Fraction = Fraction(0)

    def burns_at(self, limit: Fraction) -> bool:
        """Tell whether it is hotter than a limit in K, or just as hot; what has no upper end is."""
        high = interval_of(self.to).high
        return high is None or high >= limit

    def is_cold(self, item: Item, limit: Fraction, shop: Shop | None) -> bool:
        """Tell whether the steps have waited long enough for a limit in K; of a thing that states no cooling never."""
        estimate = wait_for(item, interval_of(self.to), exactly(limit), shop)
        return isinstance(estimate, Estimate) and self.waited >= estimate.value


def bare_metal() -> Fraction:
    """Return the temperature in K from which a short touch of bare metal may burn."""
    threshold = burn_threshold(Surface.BARE_METAL, SECOND)
    if isinstance(threshold, Impossible):
        raise TypeError(threshold.reason)
    return threshold


def one_and_the_same(name: str, choices: Iterable[Choice]) -> frozenset[str]:
    """Return the names under which a thing is spoken of: a choice is one of its parts, and a part its choice."""
    found = {name}
    for choice in choices:
        parts = {one for part in choice.parts for one in (part.part, *part.equal)}
        if name == choice.id:
            found |= parts
        elif name in parts:
            found.add(choice.id)
    return frozenset(found)


def as_item(name: str, scope: Scope) -> Item | None:
    """Return what has been heated as an item that has the hazards of all that is hot; None for a fluid."""
    named = scope.things.get(name)
    if named is None or named.kind not in _SURFACES:
        return None
    items = scope.equipment.items.values() if scope.equipment is not None else ()
    kinds = [kind for item in items if item.hot is not None for kind in item.hazards]
    if isinstance(named.thing, Item):
        return replace(named.thing, hazards=tuple(dict.fromkeys((*named.thing.hazards, *kinds))))
    return Item(name, named.words, None, (), ALWAYS, named.where, hazards=tuple(dict.fromkeys(kinds)))
