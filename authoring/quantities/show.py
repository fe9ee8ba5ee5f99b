"""Shows a quantity in the shop's units: never wider than it was, in the style of NIST SP 811 (2008)."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from functools import lru_cache

from msgspec import Struct

from authoring.quantities.convert import convert, convert_step
from authoring.quantities.numerals import typeset, write_numeral
from authoring.quantities.quantity import Form, Quantity
from authoring.quantities.rounding import (
    down,
    nearest,
    places_for_step,
    places_for_value,
    up,
    window_places,
)
from authoring.quantities.units import Dimension, Unit, as_difference

NO_BREAK = "\u00a0"
_MORE_PLACES = 2
_KELVIN_PLACES = 2  # of 273.15


class Limits(Struct, frozen=True):
    """What a reader's value is held against: numbers as typeset text, None where there is no such number.

    `low` and `high` are rounded inward, `nominal` to nearest; `unit` is the unit's symbol.
    """

    low: str | None
    nominal: str | None
    high: str | None
    unit: str


class _Shown(Struct, frozen=True):
    low: Fraction | None
    nominal: Fraction | None
    high: Fraction | None
    places: int

    def text(self, number: Fraction | None) -> str | None:
        return None if number is None else typeset(write_numeral(number, self.places))


def limits(quantity: Quantity, unit: Unit) -> Limits:
    """Return the quantity's numbers in `unit`; raises ValueError when it measures something else."""
    unit = _fit(quantity, unit)
    shown = _shown(quantity, unit)
    nominal = shown.text(shown.nominal)
    if nominal is not None and unit == quantity.unit:
        nominal = typeset(quantity.typed[0])
    return Limits(shown.text(shown.low), nominal, shown.text(shown.high), unit.symbol)


def spell(quantity: Quantity, unit: Unit | None = None) -> str:
    """Return the quantity in one unit, the unit as typed by default; there the digits typed are kept."""
    unit = quantity.unit if unit is None else _fit(quantity, unit)
    if unit == quantity.unit:
        return _spell_typed(quantity)
    shown = _shown(quantity, unit)
    low, nominal, high = shown.text(shown.low), shown.text(shown.nominal), shown.text(shown.high)
    if quantity.form is Form.TOLERANCE and _even(shown):
        spread = typeset(write_numeral(_known(shown.high) - _known(shown.nominal), shown.places))
        return _spread(nominal or "", spread, unit)
    if low and high:
        return f"{_join(low, unit)} to {_join(high, unit)}"
    if low:
        return f"at least {_join(low, unit)}"
    if high:
        return f"at most {_join(high, unit)}"
    return f"{_roughly(quantity)}{_join(nominal or '', unit)}"


def _roughly(quantity: Quantity) -> str:
    return "about " if quantity.form is Form.ABOUT else ""


def dual(quantity: Quantity, units: Sequence[Unit]) -> tuple[str, str]:
    """Return the quantity in the first and in the second of the shop's units for what it measures.

    Units of other dimensions are passed over, so a shop's whole list may be given.
    Without any fit unit the text stands in the unit as typed; without a second one the second text is empty.
    Nobody works out a percentage at the bench: its limits stand beside it.
    """
    fit = [own for own in (_reach(quantity, unit) for unit in units) if own.dimension is quantity.dimension]
    first = fit[0] if fit else quantity.unit
    beside = ""
    if quantity.percent and first == quantity.unit:
        ends = limits(quantity, first)
        beside = f", that is {_join(ends.low or '', first)} to {_join(ends.high or '', first)}"
    return spell(quantity, first) + beside, spell(quantity, fit[1]) if len(fit) > 1 else ""


def _reach(quantity: Quantity, unit: Unit) -> Unit:
    return as_difference(unit) if quantity.dimension is Dimension.TEMPERATURE_DIFFERENCE else unit


def _fit(quantity: Quantity, unit: Unit) -> Unit:
    unit = _reach(quantity, unit)
    if unit.dimension is not quantity.dimension:
        message = f"a {quantity.dimension.value} cannot be shown in {unit.symbol}"
        raise ValueError(message)
    return unit


# The same torque stands at each step that tightens to it, and once more in the table of all.
@lru_cache(maxsize=256)
def _shown(quantity: Quantity, unit: Unit) -> _Shown:
    low, nominal, high = (
        None if number is None else convert(number, quantity.unit, unit)
        for number in (quantity.low, quantity.nominal, quantity.high)
    )
    places = _places(quantity, unit, [number for number in (low, nominal, high) if number is not None])
    if low is not None and high is not None:
        places = window_places(low, high, places)
    if _all_whole(low, nominal, high):  # what is whole and exact stays so: 3 turns are 1080°, not 1100°
        places = max(places, 0)
    low = None if low is None else up(low, places)
    high = None if high is None else down(high, places)
    if nominal is not None:
        nominal = nearest(nominal, places)
        # A nominal that stands on its limit, as with +2/-0, must not round out of the window.
        nominal = nominal if low is None else max(low, nominal)
        nominal = nominal if high is None else min(high, nominal)
    return _Shown(low, nominal, high, places)


def _all_whole(*numbers: Fraction | None) -> bool:
    return all(number is None or number.denominator == 1 for number in numbers)


def _places(quantity: Quantity, unit: Unit, numbers: list[Fraction]) -> int:
    if unit == quantity.unit:
        exact = quantity.places
        while exact < quantity.places + _MORE_PLACES and not _all_whole(*[number * 10**exact for number in numbers]):
            exact += 1
        return exact
    step = convert_step(Fraction(1, 10**quantity.places), quantity.unit, unit)
    if quantity.dimension is Dimension.TEMPERATURE:
        places = places_for_step(step)
        # A tenth of a degree is a half of a tenth of a kelvin off; rounded to even, two neighbours would be one.
        shifted = quantity.unit.factor == unit.factor and places == 1
        return _KELVIN_PLACES if shifted else places
    return max(places_for_step(step), *[places_for_value(number) for number in numbers])


def _known(number: Fraction | None) -> Fraction:
    if number is None:
        message = "a tolerance has all three numbers"
        raise TypeError(message)
    return number


def _even(shown: _Shown) -> bool:
    nominal = _known(shown.nominal)
    return _known(shown.high) - nominal == nominal - _known(shown.low)


def _spell_typed(quantity: Quantity) -> str:
    unit = quantity.unit
    first, *others = (typeset(digits) for digits in quantity.typed)
    if quantity.form in (Form.VALUE, Form.ABOUT):
        return f"{_roughly(quantity)}{_join(first, unit)}"
    if quantity.form is Form.RANGE:
        return f"{_join(first, unit)} to {_join(others[0], unit)}"
    if quantity.form in (Form.MINIMUM, Form.MAXIMUM):
        return f"at {'least' if quantity.form is Form.MINIMUM else 'most'} {_join(first, unit)}"
    return _spell_tolerance(quantity, first, *others)


def _spell_tolerance(quantity: Quantity, first: str, plus: str, minus: str) -> str:
    unit = quantity.unit
    share = f"{NO_BREAK}%" if quantity.percent else ""
    if quantity.even and not quantity.percent:
        return _spread(first, plus, unit)
    spread = f"±{NO_BREAK}{plus}{share}" if quantity.even else f"+{plus}{share}/\u2212{minus}{share}"
    if quantity.percent:
        return f"{_join(first, unit)}{NO_BREAK}{spread}"
    return _join(f"({first}{NO_BREAK}{spread})" if unit.symbol else f"{first}{NO_BREAK}{spread}", unit)


def _spread(nominal: str, spread: str, unit: Unit) -> str:
    """Put the unit on both numbers (SP 811, 7.7), so that no bracket stands inside the brackets of a second unit.

    Of percentages the bracket says that the spread is in points; behind a percentage it could be a share of it.
    """
    if unit.symbol == "%":
        return _join(f"({nominal}{NO_BREAK}±{NO_BREAK}{spread})", unit)
    return f"{_join(nominal, unit)}{NO_BREAK}±{NO_BREAK}{_join(spread, unit)}"


def _join(number: str, unit: Unit) -> str:
    """Put the unit behind a number: a blank between (SP 811, 7.2), none before the signs of angle or for a count.

    A turn has no symbol but a name, which has a plural above one (SP 811, chapter 9, from memory).
    """
    if unit.symbol in ("", "°", "′", "″"):
        return number + unit.symbol
    if unit.symbol == "turn":
        return f"{number}{NO_BREAK}turn{'' if number == '1' or number.startswith('0') else 's'}"
    return f"{number}{NO_BREAK}{unit.symbol.replace(' ', NO_BREAK)}"
