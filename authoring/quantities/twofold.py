"""Two quantities in one text: feet and inches, a torque and its other unit, stages, one side of a tolerance."""

from __future__ import annotations

import re
from fractions import Fraction

from authoring.quantities.grammar import UNIT
from authoring.quantities.numerals import MINUS, NUMBER, SIGNED, places_of, read_numeral, write_numeral
from authoring.quantities.told import Told
from authoring.quantities.units import Dimension, Unit, unit_named

_TWO = re.compile(
    rf"\s*+(?P<first>{SIGNED})(?P<unit>(?>(?:\s*+(?:{UNIT}))?))\s*+(?P<between>[-+\u2212,;&/=(\[]?)\s*+"
    rf"(?P<second>{NUMBER})(?P<other>(?>(?:\s*+(?:{UNIT}))?))\s*+[)\]]?\s*+"
)
_JOINED = {"then": "+", "plus": "+", "and": "&"}
_STAGED = frozenset({Dimension.TORQUE, Dimension.ANGLE})
_SHORT = 2
_EQUAL = Fraction(1, 100)  # an hour and 59 minutes are still two hours but one minute
_ABOUT = Fraction(1, 20)  # what is typed beside a quantity in another unit is rounded


def twofold(text: str, dimension: Dimension | None) -> Told | None:
    """Return what is wrong with a text of two quantities, or None when it is not one of those that are known."""
    found = _TWO.fullmatch(re.sub(r"\b(?:then|plus|and)\b", lambda word: _JOINED[word[0]], text))
    unit = unit_named((found["unit"] or found["other"]).strip(), dimension) if found else None
    other = unit_named(found["other"].strip(), unit.dimension) if found and unit and found["other"] else unit
    if found is None or unit is None or other is None:
        return None
    return _told(found, unit, other, found["between"].replace("\u2212", "-"))


def _told(found: re.Match[str], unit: Unit, other: Unit, between: str) -> Told | None:
    kinds = {unit.dimension, other.dimension}
    if between in ("+", ",", ";", "&") and kinds <= _STAGED and (Dimension.ANGLE in kinds):
        return _stages(found)
    if len(kinds) > 1:
        return None
    if between in ("+", "-") and unit is other:
        return _one_side(found, between)
    if unit is other or not found["unit"]:
        return None
    if between in ("", "&", ",") and _is_part(found, unit, other):
        return _compound(found, unit, other)
    return _twice(found, unit, other, between)


def _one_side(found: re.Match[str], sign: str) -> Told:
    unit = (found["unit"] or found["other"]).strip()
    first, second = found["first"], found["second"]
    sides = f"+{second}/-0" if sign == "+" else f"+0/-{second}"
    ways = [f'"{first} {sides} {unit}"']
    if sign == "-" and read_numeral(second)[0] > read_numeral(first)[0]:
        ways = [f'"{first} to {second} {unit}"']
    return Told("Only one side of the tolerance is stated.", f"Write {ways[0]}.")


def _stages(found: re.Match[str]) -> Told:
    one, other = f"{found['first']}{found['unit']}", f"{found['second']}{found['other']}"
    reason = "Two things stand here one after the other."
    if not (found["unit"] and found["other"]):
        return Told(reason, "Write each for itself, with its own unit; stages of tightening are a list.")
    return Told(reason, f'Write each for itself; stages of tightening are a list: ["{one}", "{other}"].')


def _is_part(found: re.Match[str], unit: Unit, other: Unit) -> bool:
    """Tell whether the second adds to the first, as minutes do to hours: less than one whole, which has whole parts.

    Half an hour and thirty minutes are one time said twice, and so are an inch and twenty-five millimetres.
    """
    first, second = abs(read_numeral(found["first"])[0]), read_numeral(found["second"])[0]
    parts = unit.factor / other.factor
    if unit.offset or other.offset or parts <= 1 or parts.denominator != 1:
        return False
    return second < parts and abs(second / parts - first) > first * _EQUAL


def _twice(found: re.Match[str], unit: Unit, other: Unit, between: str) -> Told:
    """Say of two quantities that are one in two units to keep the first, and of two that differ to choose."""
    one, two = f"{found['first']}{found['unit']}", f"{found['second']}{found['other']}"
    (first, _), (second, digits) = read_numeral(found["first"]), read_numeral(found["second"])
    if between == "-":
        second, two = -second, f"-{two}"
    again = (second * other.factor + other.offset - unit.offset) / unit.factor
    rounded = other.factor / unit.factor / 10 ** places_of(digits)
    if abs(again - first) <= max(abs(first) * _ABOUT, rounded):
        reason = "The same quantity stands here twice, in two units."
        return Told(reason, f'Write "{one}"; the other unit is worked out from it.')
    reason = "A quantity stands here twice, and the two differ."
    return Told(reason, f'Write the one that is right: "{one}" or "{two}".')


def _compound(found: re.Match[str], unit: Unit, other: Unit) -> Told:
    """Say of feet and inches, or hours and minutes, what both are in one unit: in each where it ends shortly."""
    (first, _), (second, digits) = read_numeral(found["first"]), read_numeral(found["second"])
    sign = -1 if found["first"].startswith(("-", MINUS)) else 1  # as it is typed: less than nothing may be -0
    whole = first * unit.factor + sign * second * other.factor
    ways = []
    for one, places in ((unit, _SHORT), (other, places_of(digits))):
        number: Fraction = whole / one.factor
        if (number * 10**places).denominator == 1:
            plain = write_numeral(number, places)
            plain = plain.rstrip("0").rstrip(".") if "." in plain else plain
            ways.append(f'"{plain}{_WRITTEN.get(one.symbol, f" {one.symbol}")}"')
    return Told("Two units are mixed here.", f"Write {' or '.join(ways)}." if ways else "Write it in one unit.")


_WRITTEN = {"°": "°", "′": " arcmin", "″": " arcsec"}
