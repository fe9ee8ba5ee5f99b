"""What heat does, worked out for the reader: where a touch burns, how long a part cools, how far a bore grows."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from authoring.booklet.phrases import aside, doubt
from authoring.booklet.plan import Volume
from authoring.booklet.step_parts import Aside
from authoring.booklet.wording import Wording
from authoring.booklet.words import Amount, Words
from authoring.model.cooling import Cooling, burns_from, contact_of, coolings, harm_of
from authoring.model.demands import Need
from authoring.model.growing import growing_of
from authoring.model.procedure import Step
from authoring.model.things import Item
from authoring.quantities.quantity import Quantity
from authoring.quantities.show import spell
from authoring.quantities.units import UNITS
from authoring.workshop.cooling import Estimate, spell_wait
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, exactly, interval_of, quantity_of

_SURFACES = {
    "bare-metal": "bare metal",
    "coated-metal": "coated metal",
    "stone": "ceramic, glass or stone",
    "plastic": "plastic",
    "wood": "wood",
}
_LONG = 120  # seconds; a longer touch reads better in minutes


def burns(item: Item, wording: Wording) -> str:
    """Return how hot an item gets and from where its surface burns the skin; empty where no burn begins.

    The temperatures stand in the shop's own unit alone, since they are read at a glance beside a warning.
    """
    hot = item.hot
    threshold = burns_from(hot) if hot is not None and harm_of(hot) is not None else None
    if hot is None or hot.reached.value is None or threshold is None:
        return ""
    lasting = contact_of(hot)
    touch = quantity_of(exactly(lasting), UNITS["min" if lasting >= _LONG else "s"], 0)
    burning = wording.amount(quantity_of(exactly(threshold), UNITS["°C"], 0))
    reached = _upper(hot.reached.value, wording)
    burned = f"{_SURFACES[hot.surface]} burns from {burning.first} on, touched for {spell(touch)}"
    return f"up to {reached}; {burned}{doubt('burns')}"


def cools(needs: Iterable[Need], volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield about how long each thing takes until it has cooled as it must have, with what that rests on."""
    wanted = list(needs)
    if not any(isinstance(volume.scope.things[need.thing].thing, Item) for need in wanted):
        return
    for cooling in coolings(volume.procedure, volume.scope, volume.holds):
        if cooling.need in wanted and isinstance(cooling.estimate, Estimate):
            yield _cools(cooling, cooling.estimate, volume, wording)


def _cools(cooling: Cooling, estimate: Estimate, volume: Volume, wording: Wording) -> Aside:
    stated = cooling.item.cooling.value if cooling.item.cooling is not None else None
    readings = cooling.item.cooled.between if cooling.item.cooled is not None else None
    known = stated or readings
    unit = wording.units(known)[0] if known is not None else UNITS["min"]
    shop = volume.scope.library.shop
    air = shop.air.value if shop is not None and shop.air is not None else None
    start, target = _upper(cooling.start, wording), _upper(cooling.target, wording)
    wait = f"The {cooling.item.name} takes {spell_wait(estimate, unit)} from {start} to {target}"
    meanwhile = f", in air of {_upper(air, wording)}" if air is not None else ""
    rests = "its time constant" if stated is not None else "two readings"
    return aside(
        "Cools", f"{wait}{meanwhile}. An estimate from {rests}{doubt('cooling')}: measure before you touch it."
    )


def _upper(quantity: Quantity, wording: Wording) -> str:
    """Return the upper end of a temperature, or the one number there is, in the shop's own unit."""
    interval = interval_of(quantity)
    end = interval.low if interval.high is None else interval.high
    return spell(quantity_of(exactly(end), wording.units(quantity)[0], 0)) if end is not None else quantity.text


def grows(step: Step, volume: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield, for each bore that a step heats, from where it goes over its shaft and how much room there then is."""
    for action in step.actions:
        growing = growing_of(action, volume.scope, volume.holds) if "bore" in action.roles else None
        if growing is None or growing.room is None or isinstance(growing.needed, Impossible):
            continue
        least = wording.amount(quantity_of(Interval(growing.needed, None), UNITS["°C"], 0))
        room = _room(growing.room, wording)
        yield aside(
            "Grows",
            "As hot as this step makes it, it is wider than its shaft by ",
            room,
            ". It cools on the way: below ",
            Words(least.first.removeprefix("at least ")),
            " it sticks. ",
            f"Worked out for {action.details['metal']}, ",
            f"from sizes at 20 °C{doubt('shrink_fit')}.",
        )


def _room(room: Interval, wording: Wording) -> Amount:
    places = 2
    shown: Quantity = quantity_of(room, UNITS["mm"], places)
    return wording.amount(shown)
