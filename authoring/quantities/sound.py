"""Whether a well-formed quantity can be true of anything: no tolerance of nothing, no heat below absolute zero."""

from __future__ import annotations

from authoring.quantities.numerals import LONGEST_NUMBER
from authoring.quantities.quantity import Form, Quantity
from authoring.quantities.units import Dimension

NEVER_NEGATIVE = frozenset(
    {
        Dimension.TORQUE,
        Dimension.VOLUME,
        Dimension.MASS,
        Dimension.TIME,
        Dimension.COUNT,
        Dimension.FORCE,
        Dimension.RATIO,
        Dimension.DENSITY,
    },
)
"""What is never below zero."""

MAY_BE_ABOUT = frozenset(
    {
        Dimension.VOLUME,
        Dimension.MASS,
        Dimension.TIME,
        Dimension.LENGTH,
        Dimension.ANGLE,
        Dimension.COUNT,
        Dimension.FLOW,
    },
)
"""What the trade states roughly: a fill, a weight, a wait, a distance by eye, a part of a turn."""


def unsound(quantity: Quantity) -> tuple[str, str] | None:
    """Return reason and cure when the quantity cannot be meant, or None when it can."""
    if max(map(len, quantity.typed)) > LONGEST_NUMBER:
        return "The number has more digits than any gauge.", "Write the digits that can be measured."
    low, high = quantity.low, quantity.high
    if low is not None and high is not None and low >= high:
        return _no_window(quantity)
    numbers = [number for number in (quantity.nominal, low, high) if number is not None]
    kind = quantity.dimension
    if kind in NEVER_NEGATIVE and (min(numbers) < 0 or (quantity.nominal == 0 and kind is not Dimension.COUNT)):
        return _not_above_zero(quantity)
    if kind is Dimension.COUNT and any(number.denominator != 1 for number in numbers):
        return "A count is a whole number.", 'Write whole pieces, such as "4".'
    if kind is Dimension.TEMPERATURE and min(numbers) * quantity.unit.factor + quantity.unit.offset < 0:
        return "No temperature is below absolute zero.", "Check the number and the unit."
    return _held_to(quantity)


def _held_to(quantity: Quantity) -> tuple[str, str] | None:
    if quantity.form is not Form.ABOUT or quantity.dimension in MAY_BE_ABOUT:
        return None
    named = quantity.dimension.value
    return f'A {named} is never "about": somebody is held to it.', "State its limits, or the nominal value alone."


def _not_above_zero(quantity: Quantity) -> tuple[str, str]:
    if quantity.nominal == 0:
        return (
            f"A {quantity.dimension.value} of nothing cannot be meant here.",
            "Write the value, or leave the key out.",
        )
    return f"A {quantity.dimension.value} below zero cannot be meant here.", _below_zero_cure(quantity)


def _below_zero_cure(quantity: Quantity) -> str:
    if quantity.form is Form.TOLERANCE and quantity.nominal is not None and quantity.nominal >= 0:
        return "Make the tolerance smaller than the value."
    return "Write the number without a minus; say the direction in words."


def _no_window(quantity: Quantity) -> tuple[str, str]:
    first, *others = quantity.typed
    unit = f" {quantity.unit.symbol}" if quantity.unit.symbol else ""
    if quantity.low == quantity.high:
        return "A window without any width cannot be met.", f'Write the value alone: "{first}{unit}".'
    return (
        "The range is upside down: its first number is the larger one.",
        f'Write the smaller number first: "{others[0]} to {first}{unit}".',
    )
