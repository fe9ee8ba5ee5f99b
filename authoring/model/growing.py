"""A part that is heated to go over a shaft: what is stated of the two, put into the computation of the fit."""

from __future__ import annotations

from fractions import Fraction

from msgspec import Struct

from authoring.model.library import Scope
from authoring.model.procedure import Action
from authoring.model.things import Value
from authoring.quantities.convert import convert
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import UNITS
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, interval_of
from authoring.workshop.shrink_fit import EXPANSIONS, Metal, grown, temperature_to_fit

_METALS = {"steel": Metal.STEEL, "aluminium": Metal.ALUMINIUM, "brass": Metal.BRASS, "copper": Metal.COPPER}

COLD = convert(Fraction(20), UNITS["°C"], UNITS["K"])
"""The temperature at which sizes are stated, 20 °C (ISO 1:2022, from memory)."""


class Growing(Struct, frozen=True, eq=False):
    """A part that is heated over a shaft: the temperatures it is brought to, and what they do.

    `needed` is the least temperature in K at which it goes over the shaft with room to spare, sizes at their worst.
    `room` is how much wider than the shaft the bore then is, in m, least to most; negative where it is tighter.
    """

    to: Quantity
    needed: Fraction | Impossible
    room: Interval


def growing_of(action: Action, scope: Scope) -> Growing | None:
    """Return what an action that heats does to a bore; None where sizes, temperature or metal are not stated.

    No clearance is wanted where none is stated.
    """
    to, bore, shaft = (_stated(action, role, scope) for role in ("to", "bore", "shaft"))
    clearance = _stated(action, "clearance", scope)
    if to is None or bore is None or shaft is None or "metal" not in action.details:
        return None
    hot, narrow, wide = interval_of(to), interval_of(bore), interval_of(shaft)
    if hot.low is None or narrow.low is None or wide.high is None:
        return None
    least = interval_of(clearance).low if clearance is not None else None
    expansion = EXPANSIONS[_METALS[action.details["metal"]]]
    needed = temperature_to_fit(narrow.low, wide.high, least or Fraction(0), COLD, expansion)
    most = None if hot.high is None or narrow.high is None or wide.low is None else (hot.high, narrow.high, wide.low)
    return Growing(
        to,
        needed,
        Interval(
            grown(narrow.low, hot.low - COLD, expansion) - wide.high,
            None if most is None else grown(most[1], most[0] - COLD, expansion) - most[2],
        ),
    )


def _stated(action: Action, role: str, scope: Scope) -> Quantity | None:
    named = scope.things.get(action.roles.get(role, ""))
    value = named.thing if named is not None else None
    return value.specification.value if isinstance(value, Value) else None
