"""What is stated of a hot thing, put into the computations of burning and cooling."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from msgspec import Struct

from authoring.model.demands import Need
from authoring.model.heat import Cooled, Hot
from authoring.model.library import Scope
from authoring.model.procedure import Action, Procedure
from authoring.model.specification import Specification
from authoring.model.things import Item, Shop, Value
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.workshop.burns import SECOND, Surface, Touch, burn_threshold, harm_of_touch
from authoring.workshop.cooling import Estimate, time_constant, time_to_cool
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import interval_of

_SURFACES = {
    "bare-metal": Surface.BARE_METAL,
    "coated-metal": Surface.COATED_METAL,
    "stone": Surface.STONE,
    "plastic": Surface.PLASTIC,
    "wood": Surface.WOOD,
}


class Cooling(Struct, frozen=True, eq=False):
    """An item that must have cooled before a step, and how long that takes from where it is hot.

    `heated` is the action that warmed it, or None where it is hot from use; `waits` are the waiting actions since.
    """

    item: Item
    need: Need
    start: Quantity
    target: Quantity
    heated: Action | None
    waits: tuple[Action, ...]
    estimate: Estimate | Impossible


def contact_of(hot: Hot) -> Fraction:
    """Return how long a hand rests on a hot thing, in s; a second where nobody said."""
    touch = _most(hot.touch)
    return touch if touch is not None and touch > 0 else SECOND


def burns_from(hot: Hot) -> Fraction | None:
    """Return the temperature in K from which a touch of a hot thing may burn."""
    threshold = burn_threshold(_SURFACES[hot.surface], contact_of(hot))
    return None if isinstance(threshold, Impossible) else threshold


def harm_of(hot: Hot) -> Touch | None:
    """Return what a touch does at the highest temperature that a thing reaches; None where no burn begins."""
    reached = _most(hot.reached.value)
    if reached is None:
        return None
    harm = harm_of_touch(_SURFACES[hot.surface], reached, contact_of(hot))
    return None if isinstance(harm, Impossible) else harm


def constant_of(item: Item) -> Estimate | Impossible | None:
    """Return the time constant of an item in s, as stated or from two readings; None where nothing is stated.

    Of a stated range the longest counts.
    """
    stated = _most(item.cooling.value) if item.cooling is not None else None
    if stated is not None:
        return Estimate(float(stated))
    return _from_readings(item.cooled) if item.cooled is not None else None


def _from_readings(cooled: Cooled) -> Estimate | Impossible | None:
    readings = [_most(one) for one in (cooled.first.value, cooled.second, cooled.between, cooled.air)]
    first, second, between, air = readings
    if first is None or second is None or between is None or air is None:
        return None
    return time_constant(first, second, between, air)


def wait_for(
    item: Item, start: Quantity | None, target: Quantity | None, shop: Shop | None
) -> Estimate | Impossible | None:
    """Return how long an item takes from `start` until it is no hotter than `target`, in s.

    The careful case: the hottest start, the warmest air of the shop, the longest time constant.
    None where one of them is not stated, or the target has no upper end.
    """
    constant, air = constant_of(item), _most(_value(shop.air)) if shop is not None else None
    hottest, coolest = _most(start), interval_of(target).high if target is not None else None
    if constant is None or air is None or hottest is None or coolest is None:
        return None
    return constant if isinstance(constant, Impossible) else time_to_cool(hottest, coolest, air, constant)


def _value(specification: Specification | None) -> Quantity | None:
    return specification.value if specification is not None else None


def _most(quantity: Quantity | None) -> Fraction | None:
    """Return the upper end of what is stated in base units, or the lower one where it is open."""
    if quantity is None:
        return None
    interval = interval_of(quantity)
    return interval.low if interval.high is None else interval.high


def coolings(procedure: Procedure, scope: Scope) -> Iterator[Cooling]:
    """Yield each need of a procedure, in the order of its steps, that an item which was hot has cooled.

    The item is as hot as the last action heated it, or as it gets in use; what cools it meanwhile is left out.
    Waits before a step that measures the item do not count: the reader goes by the thermometer.
    """
    heated: dict[str, tuple[Action, tuple[Action, ...]]] = {}
    for needs, actions in _in_order(procedure):
        for need in needs:
            yield from _cooling(need, heated.get(need.thing), scope)
        for action in actions:
            match action.kind.name:
                case "heat":
                    heated |= dict.fromkeys(action.what, (action, ()))
                case "wait":
                    heated = {name: (one, (*waits, action)) for name, (one, waits) in heated.items()}
                case "measure":
                    heated |= {name: (heated[name][0], ()) for name in action.what if name in heated}


def needs_of(procedure: Procedure) -> Iterator[Need]:
    """Yield every need that a procedure, its sections and its steps state, in order."""
    for needs, _ in _in_order(procedure):
        yield from needs


def _in_order(procedure: Procedure) -> Iterator[tuple[tuple[Need, ...], tuple[Action, ...]]]:
    yield procedure.needs, ()
    for section in procedure.sections:
        yield section.needs, ()
        for step in section.steps:
            yield step.needs, step.actions


def _cooling(need: Need, heated: tuple[Action, tuple[Action, ...]] | None, scope: Scope) -> Iterator[Cooling]:
    named = scope.things.get(need.thing)
    item = named.thing if named is not None else None
    target = _temperature(need.state, scope)
    if not isinstance(item, Item) or target is None:
        return
    action, waits = heated or (None, ())
    in_use = item.hot.reached.value if item.hot is not None else None
    start = _temperature(action.roles["to"], scope) if action is not None else in_use
    estimate = wait_for(item, start, target, scope.library.shop)
    if start is not None and estimate is not None:
        yield Cooling(item, need, start, target, action, waits, estimate)


def _temperature(name: str, scope: Scope) -> Quantity | None:
    """Return the temperature that a value states; of several windows the first."""
    named = scope.things.get(name)
    value = named.thing if named is not None else None
    quantity = value.specification.value if isinstance(value, Value) else None
    return quantity if quantity is not None and quantity.dimension is Dimension.TEMPERATURE else None
