"""Of which things of a machine each demand of the shop's policy speaks, by what is stated of them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction
from functools import lru_cache

from msgspec import Struct

from authoring.model.cooling import burns_from
from authoring.model.danger import Dangers
from authoring.model.heated import bare_metal
from authoring.model.policies import policies_of, top
from authoring.model.policy import FACTS, Policy
from authoring.model.things import Equipment, Item, Shop
from authoring.quantities.quantity import Quantity
from authoring.workshop.interval import most_of


class Meant(Struct, frozen=True, eq=False):
    """The policies that speak of each item: those of what is up, and all others; `hotter` speak of what is heated.

    Most things could be up and few are, so that the former are looked at only while something is.
    """

    others: Mapping[str, list[Policy]]
    up: Mapping[str, list[Policy]]
    hotter: Sequence[Policy]

    def of(self, item: str, dangers: Dangers) -> Sequence[Policy]:
        """Return the policies to ask about an item now."""
        found = self.others.get(item, [])
        return [*found, *self.up.get(item, [])] if dangers.something_up else found


@lru_cache(maxsize=64)
def meant_in(equipment: Equipment, shop: Shop | None) -> Meant:
    """Return the policies of a shop by the items of a machine of which they speak."""
    others: dict[str, list[Policy]] = {}
    up: dict[str, list[Policy]] = {}
    for policy in policies_of(shop).values():
        there = up if policy.only_while == "raised" else others
        for item in equipment.items.values():
            if _means(policy, item, shop):
                there.setdefault(item.id, []).append(policy)
    return Meant(others, up, [one for one in policies_of(shop).values() if "hotter-than" in one.bounds])


def _means(policy: Policy, item: Item, shop: Shop | None) -> bool:
    if policy.by_facts:
        if not policy.bounds:
            return policy.only_while != "running" or any(_runs_only(name, shop) for name in item.hazards)
        return all(beyond(item, key, bound) is True for key, bound in policy.bounds.items())
    if policy.hazard is not None and policy.hazard not in item.hazards:
        return False
    # Without a hazard the facts alone tell which things are meant; with one, a thing that states nothing is meant too.
    bound_met = [beyond(item, key, bound) for key, bound in policy.bounds.items()]
    return all(one is not False for one in bound_met) if policy.hazard is not None else all(bound_met)


def _runs_only(name: str, shop: Shop | None) -> bool:
    hazard = shop.hazards.get(name) if shop is not None else None
    return hazard is not None and hazard.only_while == "running"


def beyond(item: Item, key: str, bound: Quantity | None) -> bool | None:
    """Tell whether a fact of an item may lie beyond a bound; None where the fact is not stated.

    Of what only a least is stated nothing keeps it from lying beyond.
    """
    fact = item.hot.reached if key == "hotter-than" and item.hot is not None else item.facts.get(FACTS[key][0])
    if fact is None or fact.value is None:
        return None
    limit, most = limit_of(item, bound), most_of(fact.value)
    return most is None or most > limit or (bound is None and most == limit)


def limit_of(item: Item, bound: Quantity | None) -> Fraction:
    """Return a bound in K, or where a touch of the thing burns; of what nobody said how it is touched, bare metal."""
    if bound is not None:
        return top(bound)
    own = burns_from(item.hot) if item.hot is not None else None
    return bare_metal() if own is None else own
