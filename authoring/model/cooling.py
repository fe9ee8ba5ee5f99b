"""What is stated of a hot thing, put into the computations of burning and cooling."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from fractions import Fraction
from typing import TypeAlias

from msgspec import Struct

from authoring.model.demands import Need
from authoring.model.fitments import together
from authoring.model.heat import Cooled, Hot
from authoring.model.library import Scope
from authoring.model.procedure import Action, Procedure
from authoring.model.specification import ALWAYS, Specification, When
from authoring.model.things import Item, Shop, Value
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.workshop.burns import EIGHT_HOURS, SECOND, Surface, Touch, burn_threshold, harm_of_touch
from authoring.workshop.cooling import Estimate, time_constant, time_to_cool
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, interval_of

Holds: TypeAlias = Callable[[When], bool]
"""Whether a condition holds for the vehicles that are asked about."""

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
    """Return how long a hand rests on a hot thing, in s: the longest that is allowed, a second where nobody said."""
    if hot.touch is None:
        return SECOND
    longest = interval_of(hot.touch).high
    return EIGHT_HOURS if longest is None else max(longest, SECOND)


def burns_from(hot: Hot) -> Fraction | None:
    """Return the temperature in K from which a touch of a hot thing may burn."""
    threshold = burn_threshold(_SURFACES[hot.surface], contact_of(hot))
    return None if isinstance(threshold, Impossible) else threshold


def harm_of(hot: Hot) -> Touch | None:
    """Return what a touch does at the highest temperature that a thing reaches; None where no burn begins.

    A thing of which only the least is stated counts as hot enough to burn.
    """
    threshold = burns_from(hot)
    if hot.reached.value is None or threshold is None:
        return None
    reached = interval_of(hot.reached.value)
    hottest = max(threshold, reached.low or threshold) if reached.high is None else reached.high
    harm = harm_of_touch(_SURFACES[hot.surface], hottest, contact_of(hot))
    return None if isinstance(harm, Impossible) else harm


def constant_of(item: Item) -> Estimate | Impossible | None:
    """Return the longest time constant that what is stated of an item allows, in s.

    None where nothing is stated, or nothing limits it upwards.
    """
    stated = _span(item.cooling)
    if stated is not None:
        return None if stated.high is None else Estimate(float(stated.high))
    return _from_readings(item.cooled) if item.cooled is not None else None


def _from_readings(cooled: Cooled) -> Estimate | Impossible | None:
    """Return the longest constant: the coolest start, the warmest end, the longest time, the coldest air."""
    spans = [interval_of(one) if one is not None else None for one in (cooled.second, cooled.between, cooled.air)]
    first, (second, between, air) = _span(cooled.first), spans
    if first is None or second is None or between is None or air is None:
        return None
    if first.low is None or second.high is None or between.high is None or air.low is None:
        return None
    return time_constant(first.low, second.high, between.high, air.low)


def wait_for(item: Item, start: Interval, target: Interval, shop: Shop | None) -> Estimate | Impossible | None:
    """Return how long an item takes from `start` until it is no hotter than `target` (both in K), in s.

    The careful case: the hottest start, the warmest air of the shop, the longest time constant, the coolest target
    that is given. None where one of them is not stated, or is open on the side that counts.
    """
    constant, air = constant_of(item), _span(shop.air) if shop is not None else None
    if constant is None or air is None or air.high is None or start.high is None or target.high is None:
        return None
    return constant if isinstance(constant, Impossible) else time_to_cool(start.high, target.high, air.high, constant)


def _span(specification: Specification | None) -> Interval | None:
    quantity = specification.value if specification is not None else None
    return interval_of(quantity) if quantity is not None else None


def coolings(procedure: Procedure, scope: Scope, holds: Holds) -> Iterator[Cooling]:
    """Yield each need of a procedure, in the order of its steps, that an item which was hot has cooled.

    Steps and windows count as far as they hold for the vehicles asked about; of several windows the careful one.
    The item is as hot as the last action heated it, or as it gets in use; what cools it meanwhile is left out.
    Waits before a step that measures the item do not count: the reader goes by the thermometer.
    """
    heated: dict[str, _Since] = {}
    in_use = _Since(None, ())
    for needs, actions, when in _in_order(procedure):
        if not holds(when):
            continue
        for need in needs:
            yield from _cooling(need, heated.get(need.thing, in_use), scope, holds)
        for action in actions:
            match action.kind.name:
                case "heat":
                    heated |= dict.fromkeys(action.what, _Since(action, ()))
                case "run":
                    in_use = _Since(None, ())
                    heated = {name: one for name, one in heated.items() if one.heated is not None}
                case "wait":
                    in_use = in_use.and_waited(action)
                    heated = {name: one.and_waited(action) for name, one in heated.items()}
                case "measure":
                    heated |= {name: _Since(heated.get(name, in_use).heated, ()) for name in action.what}


class _Since(Struct, frozen=True, eq=False):
    """What made a thing hot last, None where it is hot from use, and how long was waited since."""

    heated: Action | None
    waits: tuple[Action, ...]

    def and_waited(self, wait: Action) -> _Since:
        """Return the same after one more wait."""
        return _Since(self.heated, (*self.waits, wait))


def needs_of(procedure: Procedure) -> Iterator[Need]:
    """Yield every need that a procedure, its sections and its steps state, in order."""
    for needs, _, _ in _in_order(procedure):
        yield from needs


def conditions_of(procedure: Procedure, scope: Scope) -> list[When]:
    """Return what decides about the vehicles for which `coolings` differ: of steps, sections and windows."""
    whens = [when for _, _, when in _in_order(procedure)]
    named = [scope.things[need.state].thing for need in needs_of(procedure) if need.state in scope.things]
    for _, step in procedure.steps():
        for action in step.actions:
            used = action.what if action.kind.name == "wait" else action.roles.values()
            named += [scope.things[name].thing for name in used if name in scope.things]
    whens += [window.when for value in named if isinstance(value, Value) for window in value.windows]
    return [when for when in whens if when]


def _in_order(procedure: Procedure) -> Iterator[tuple[tuple[Need, ...], tuple[Action, ...], When]]:
    yield procedure.needs, (), ALWAYS
    for section in procedure.sections:
        yield section.needs, (), section.when
        for step in section.steps:
            yield step.needs, step.actions, together(section.when, step.when)


def _cooling(need: Need, since: _Since, scope: Scope, holds: Holds) -> Iterator[Cooling]:
    named = scope.things.get(need.thing)
    item = named.thing if named is not None else None
    target = _temperature(need.state, scope, holds)
    if not isinstance(item, Item) or target is None:
        return
    action = since.heated
    in_use = item.hot.reached.value if item.hot is not None else None
    start = _temperature(action.roles["to"], scope, holds) if action is not None else in_use
    if start is None:
        return
    estimate = wait_for(item, interval_of(start), interval_of(target), scope.library.shop)
    if estimate is not None:
        yield Cooling(item, need, start, target, action, since.waits, estimate)


def _temperature(name: str, scope: Scope, holds: Holds) -> Quantity | None:
    """Return the temperature that a value states; of several windows that hold the one that ends lowest."""
    named = scope.things.get(name)
    value = named.thing if named is not None else None
    stated = [one.specification.value for one in value.windows if holds(one.when)] if isinstance(value, Value) else []
    fit = [one for one in stated if one is not None and one.dimension is Dimension.TEMPERATURE]
    return min(fit, key=_end, default=None)


def _end(quantity: Quantity) -> tuple[bool, Fraction]:
    high = interval_of(quantity).high
    return high is None, high or Fraction(0)
