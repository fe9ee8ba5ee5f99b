"""Reads a quantity from a text: strict, exact, in linear time, and never raising."""

from __future__ import annotations

import re
from fractions import Fraction

from authoring.quantities.grammar import LONGEST, QUANTITY
from authoring.quantities.numerals import places_of, read_numeral
from authoring.quantities.placed_unit import placed_unit
from authoring.quantities.quantity import Form, Quantity, Refusal
from authoring.quantities.refused import RefusedError, UnexplainedError, refuse
from authoring.quantities.sound import unsound
from authoring.quantities.tolerance import read_tolerance
from authoring.quantities.units import Dimension, Unit

_LARGEST_COUNT = 10**9


def read_quantity(value: object, dimension: Dimension | None = None) -> Quantity | Refusal:
    """Read a value as a quantity of `dimension`; with None the unit tells the dimension.

    Degrees are read as temperatures unless a temperature difference is asked for.
    Only a count or a ratio may be a bare number as a text, and only a count a whole number.
    """
    if not isinstance(value, str):
        if dimension is not Dimension.COUNT or type(value) is not int or abs(value) > _LARGEST_COUNT:
            return _refusal(value, dimension)
        value = str(value)
    return quantity_in(value, dimension) or _refusal(value, dimension)


def quantity_in(text: str, dimension: Dimension | None) -> Quantity | Refusal | None:
    """Read a text as `read_quantity` does; None says that its fault has still to be looked for."""
    begin = _behind_rough(text)
    match = QUANTITY.fullmatch(text, begin) if len(text) <= LONGEST else None
    if match is None:
        return None
    try:
        return _quantity(match, placed_unit(match, dimension), begin)
    except RefusedError as refused:
        return refused.refusal
    except UnexplainedError:
        return None


def _refusal(value: object, dimension: Dimension | None) -> Refusal:
    from authoring.quantities import explain  # noqa: PLC0415  # thirty patterns that only a refusal needs

    if isinstance(value, str):
        return explain.explain(value, dimension, quantity_in)
    return explain.explain_other(value, dimension)


_ROUGH = ("about", "approximately", "approx.", "approx", "ca.", "ca", "~", "≈")


def _behind_rough(text: str) -> int:
    """Return where a text goes on behind a word such as "about", or 0: cheaper than one more branch of the grammar."""
    bare = text.lstrip()
    for word in _ROUGH if bare[:1] in {"a", "A", "c", "C", "~", "≈"} else ():
        if bare[: len(word)].casefold() == word and not bare[len(word) - 1 : len(word) + 1].isalpha():
            return len(text) - len(bare) + len(word)
    return 0


def _quantity(match: re.Match[str], unit: Unit, begin: int) -> Quantity:
    if begin:
        made = _about(match, unit, begin)
    elif match["least"] or match["most"]:
        made = _bound(match, unit)
    elif match["last"]:
        first, first_digits = read_numeral(match["first"])
        last, last_digits = read_numeral(match["last"])
        made = _made(match, unit, Form.RANGE, (None, first, last), (first_digits, last_digits))
    elif match["tail"]:
        made = read_tolerance(match, unit)
    else:
        first, digits = read_numeral(match["first"])
        made = _made(match, unit, Form.VALUE, (first, None, None), (digits,))
    fault = unsound(made)
    if fault:
        refuse(*fault, (match.start("first"), max(match.end("first"), match.end("tail"))))
    return made


def _about(match: re.Match[str], unit: Unit, begin: int) -> Quantity:
    if match["tail"] or match["least"] or match["most"]:
        word = match.string[:begin]
        refuse(
            'What has limits is not "about".', 'Leave "about" out, or the limits.', (begin - len(word.strip()), begin)
        )
    first, digits = read_numeral(match["first"])
    return _made(match, unit, Form.ABOUT, (first, None, None), (digits,))


def _bound(match: re.Match[str], unit: Unit) -> Quantity:
    if match["tail"]:
        reason = "A minimum or maximum takes one number, not a window."
        refuse(reason, 'Write "at least 40 mm", or a range "40 to 44 mm".', match.span("tail"))
    first, digits = read_numeral(match["first"])
    if match["least"]:
        return _made(match, unit, Form.MINIMUM, (None, first, None), (digits,))
    return _made(match, unit, Form.MAXIMUM, (None, None, first), (digits,))


def _made(
    match: re.Match[str],
    unit: Unit,
    form: Form,
    numbers: tuple[Fraction | None, Fraction | None, Fraction | None],
    typed: tuple[str, ...],
) -> Quantity:
    nominal, low, high = numbers
    places = max(map(places_of, typed))
    return Quantity(match.string, unit.dimension, unit, form, nominal, low, high, places, typed)
