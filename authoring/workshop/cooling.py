"""How long does a hot part take to cool? An estimate by Newton's law, never a promise.

Formula:
    T(t) = Ta + (T0 - Ta) exp(-t/tau)
    t = tau ln((T0 - Ta)/(T - Ta))
    tau = t12/ln((T1 - Ta)/(T2 - Ta))

Symbols:
    T, T0: temperature now and at the start, in K
    Ta: temperature of the air, in K
    T1, T2, t12: two readings in K and the time between them in s
    tau: time constant in s, in which the difference to the air falls to 37 %

Source: OpenStax, Calculus volume 2, Separable Equations, Newton's law of cooling (there k = -1/tau).

Assumptions: the part is as warm inside as outside, the air keeps its temperature, and nothing heats the part on.

Limits: a very hot part loses much by radiation, so a time constant found while it was hot is too short for the end.
A part in the draught of a fan cools faster than at rest; a closed hood or a hot engine beside it slows it down.
Whoever is to touch the part measures it first.
"""

from __future__ import annotations

import math
from fractions import Fraction

from msgspec import Struct

from authoring.quantities.rounding import places_for_value, up
from authoring.quantities.show import spell
from authoring.quantities.units import Dimension, Unit
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import exactly, quantity_of

_AMBIENT_MISSED = Impossible(
    "It never gets as cold as that: the air is as warm or warmer.",
    "State a temperature above that of the air, or cool the part by other means.",
)
_NO_TIME = Impossible("The time is not above zero.", "State the time that lies between the two readings.")


class Estimate(Struct, frozen=True):
    """A number in a base unit (s, K) that a model gives; it is shown as about, never as a limit.

    A time constant that a source states is one too: `Estimate(1500.0)` for 25 min.
    """

    value: float


def time_constant(
    first: Fraction,
    second: Fraction,
    between: Fraction,
    ambient: Fraction,
) -> Estimate | Impossible:
    """Return the time constant in s from two readings: tau = t / ln((T1 - Ta) / (T2 - Ta)).

    `first` and `second` are the readings in K, `between` the time between them in s, `ambient` the air's temperature.
    Impossible unless it cooled, and was warmer than the air both times.
    """
    if between <= 0:
        return _NO_TIME
    if second <= ambient:
        return Impossible(
            "The second reading is not warmer than the air, so the readings do not tell how fast it cools.",
            "Read again earlier, or check the temperature of the air.",
        )
    if first <= second:
        return Impossible(
            "It did not cool between the two readings.",
            "Check the order of the readings, and that nothing heats the part.",
        )
    return Estimate(float(between) / math.log1p((first - second) / (second - ambient)))


def time_to_cool(
    start: Fraction,
    target: Fraction,
    ambient: Fraction,
    constant: Estimate,
) -> Estimate | Impossible:
    """Return the time in s until a part has cooled from `start` to `target`: t = tau * ln((T0 - Ta) / (T - Ta)).

    Temperatures in K; the careful choice is the hottest start, the warmest air and the longest time constant.
    It is 0 when the part is no hotter than the target at the start.
    Impossible when the target is not above the air, or the time constant not above zero.
    """
    if not constant.value > 0 or not math.isfinite(constant.value):
        return Impossible("A time constant is above zero.", "State the time in which the difference falls to 37 %.")
    if start <= target:
        return Estimate(0.0)
    if target <= ambient:
        return _AMBIENT_MISSED
    return Estimate(constant.value * math.log((start - ambient) / (target - ambient)))


def spell_wait(wait: Estimate, unit: Unit) -> str:
    """Return a time to wait as text, such as "about 45 min": two digits, rounded up, so that nobody is told too soon.

    Raises ValueError when `unit` does not measure time.
    """
    if unit.dimension is not Dimension.TIME:
        message = f"a time cannot be shown in {unit.symbol}"
        raise ValueError(message)
    seconds = Fraction(wait.value)
    places = places_for_value(seconds / unit.factor)
    rounded = up(seconds / unit.factor, places)
    return f"about {spell(quantity_of(exactly(rounded * unit.factor), unit, places))}"
