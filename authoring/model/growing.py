"""A part that is heated to go over a shaft: what is stated of the two, put into the computation of the fit."""

from __future__ import annotations

from fractions import Fraction

from msgspec import Struct

from authoring.model.cooling import Holds
from authoring.model.library import Scope
from authoring.model.procedure import Action
from authoring.model.specification import When
from authoring.model.things import Value
from authoring.quantities.convert import convert
from authoring.quantities.units import UNITS
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, interval_of
from authoring.workshop.shrink_fit import EXPANSIONS, Metal, grown, temperature_to_fit

_METALS = {"steel": Metal.STEEL, "aluminium": Metal.ALUMINIUM, "brass": Metal.BRASS, "copper": Metal.COPPER}
_ROLES = ("to", "bore", "shaft", "clearance")

COLD = convert(Fraction(20), UNITS["°C"], UNITS["K"])
"""The temperature at which sizes are stated, 20 °C (ISO 1:2022, from memory)."""


class Growing(Struct, frozen=True, eq=False):
    """A part that is heated over a shaft: the temperatures it is brought to in K, and what they do.

    `needed` is the least temperature in K at which it goes over the shaft with room to spare, sizes at their worst.
    `room` is how much wider than the shaft the bore then is, in m, least to most; negative where it is tighter,
    and None where no least temperature is stated.
    `loose` says that it goes over its shaft cold, whatever the sizes turn out to be.
    """

    to: Interval
    needed: Fraction | Impossible
    room: Interval | None
    loose: bool


def growing_of(action: Action, scope: Scope, holds: Holds) -> Growing | None:
    """Return what an action that heats does to a bore, for the vehicles asked about.

    None where sizes, temperature or metal are not stated, or a size is open on the side that counts.
    Of several windows that hold the worst ends count; no clearance is wanted where none is stated.
    """
    to, narrow, wide, clearance = (_stated(action, role, scope, holds) for role in _ROLES)
    if to is None or narrow is None or wide is None or "metal" not in action.details:
        return None
    if narrow.low is None or wide.high is None:
        return None
    least = (clearance.low if clearance is not None else None) or Fraction(0)
    expansion = EXPANSIONS[_METALS[action.details["metal"]]]
    room = None
    if to.low is not None:
        most = None
        if to.high is not None and narrow.high is not None and wide.low is not None:
            most = grown(narrow.high, to.high - COLD, expansion) - wide.low
        room = Interval(grown(narrow.low, to.low - COLD, expansion) - wide.high, most)
    needed = temperature_to_fit(narrow.low, wide.high, least, COLD, expansion)
    return Growing(to, needed, room, loose=wide.high + least <= narrow.low)


def conditions_of(action: Action, scope: Scope) -> list[When]:
    """Return what decides about the vehicles for which `growing_of` differs: the windows of what it names."""
    named = [scope.things[name].thing for name in action.roles.values() if name in scope.things]
    return [window.when for value in named if isinstance(value, Value) for window in value.windows if window.when]


def _stated(action: Action, role: str, scope: Scope, holds: Holds) -> Interval | None:
    """Return all that the windows of a value that hold allow together."""
    named = scope.things.get(action.roles.get(role, ""))
    value = named.thing if named is not None else None
    stated = [one.specification.value for one in value.windows if holds(one.when)] if isinstance(value, Value) else []
    spans = [interval_of(one) for one in stated if one is not None]
    if not spans:
        return None
    lows, highs = [one.low for one in spans], [one.high for one in spans]
    return Interval(
        None if None in lows else min(one for one in lows if one is not None),
        None if None in highs else max(one for one in highs if one is not None),
    )
