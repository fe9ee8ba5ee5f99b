"""From where to where a quantity reaches, in the base unit of its dimension, so that two of them can be compared."""

from __future__ import annotations

from fractions import Fraction

from authoring.quantities.quantity import Quantity


def extent(quantity: Quantity) -> tuple[Fraction | None, Fraction | None]:
    """Return the lowest and the highest number that the quantity allows; None where there is no limit."""
    plain = quantity.low is None and quantity.high is None
    numbers = (quantity.nominal, quantity.nominal) if plain else (quantity.low, quantity.high)
    low, high = (None if one is None else one * quantity.unit.factor + quantity.unit.offset for one in numbers)
    return low, high


def inside(one: Quantity, other: Quantity) -> bool:
    """Tell whether whatever `one` allows is allowed by `other`; both measure the same kind of thing."""
    (low, high), (lowest, highest) = extent(one), extent(other)
    return (lowest is None or (low is not None and low >= lowest)) and (
        highest is None or (high is not None and high <= highest)
    )


def apart(one: Quantity, other: Quantity) -> bool:
    """Tell whether no number is allowed by both; two that only touch share that number."""
    (low, high), (other_low, other_high) = extent(one), extent(other)
    return _below(high, other_low) or _below(other_high, low)


def _below(high: Fraction | None, low: Fraction | None) -> bool:
    return high is not None and low is not None and high < low
