"""Reads the tolerance behind a value: ± 4, ± 10 %, +2/-1."""

from __future__ import annotations

import re

from authoring.quantities.grammar import UNEVEN
from authoring.quantities.numerals import places_of, read_numeral
from authoring.quantities.quantity import Form, Quantity
from authoring.quantities.refused import refuse
from authoring.quantities.units import Dimension, Unit


def read_tolerance(match: re.Match[str], unit: Unit) -> Quantity:
    """Return the quantity of a matched text that has a tolerance; raises RefusedError from `refuse`."""
    nominal, digits = read_numeral(match["first"])
    even = match["uneven"] is None
    if even:
        plus_typed = minus_typed = match["within"]
        percent = match["share"] is not None
    else:
        plus_typed, minus_typed, percent = _sides(match)
    plus, plus_digits = read_numeral(plus_typed)
    minus, minus_digits = read_numeral(minus_typed)
    typed = (digits, plus_digits, minus_digits)
    places = places_of(digits) if percent else max(map(places_of, typed))
    if percent:
        if unit.dimension is Dimension.TEMPERATURE:
            reason = "A percentage of a temperature depends on where its scale starts."
            refuse(reason, f'Write it in degrees, such as "± 5 {unit.symbol}".', match.span("tail"))
        plus, minus = abs(nominal) * plus / 100, abs(nominal) * minus / 100
    return Quantity(
        match.string,
        unit.dimension,
        unit,
        Form.TOLERANCE,
        nominal,
        nominal - minus,
        nominal + plus,
        places,
        typed,
        percent,
        even,
    )


def _sides(match: re.Match[str]) -> tuple[str, str, bool]:
    """Return plus, minus and whether they are percentages."""
    place = match.span("uneven")
    sides = re.fullmatch(UNEVEN, match["uneven"])
    if sides is None or (sides["sign"] == "+") == (sides["other_sign"] == "+"):
        reason = "Both sides of the tolerance have the same sign."
        refuse(reason, 'Write one plus and one minus, such as "+2/-1".', place)
    if sides["one_share"] and not sides["other_share"]:
        refuse("Only one side of the tolerance is a percentage.", 'Write "+10/-5 %".', place)
    one, other = sides["one"], sides["other"]
    plus, minus = (one, other) if sides["sign"] == "+" else (other, one)
    return plus, minus, sides["other_share"] is not None
