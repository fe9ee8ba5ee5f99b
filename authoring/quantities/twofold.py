"""Two quantities in one text: feet and inches, a torque and its other unit, stages, one side of a tolerance."""

from __future__ import annotations

import re
from fractions import Fraction

from authoring.quantities.grammar import UNIT
from authoring.quantities.numerals import NUMBER, SIGNED, places_of, read_numeral, write_numeral
from authoring.quantities.told import Told
from authoring.quantities.units import Dimension, Unit, unit_named

_TWO = re.compile(
    rf"\s*+(?P<first>{SIGNED})(?P<unit>(?>(?:\s*+(?:{UNIT}))?))\s*+(?P<between>[-+\u2212,;&/=(\[]?)\s*+"
    rf"(?P<second>{NUMBER})(?P<other>(?>(?:\s*+(?:{UNIT}))?))\s*+[)\]]?\s*+"
)
_JOINED = {"then": "+", "plus": "+", "and": "&"}
_STAGED = frozenset({Dimension.TORQUE, Dimension.ANGLE})
_SHORT = 2


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
    if between in ("(", "[", "/", "=") and unit is not other:
        first = f"{found['first']}{found['unit']}"
        reason = "The same quantity stands here twice, in two units."
        return Told(reason, f'Write "{first}"; the other unit is worked out from it.')
    if between in ("", "&", ",") and found["unit"] and other.factor < unit.factor:
        return _compound(found, unit, other)
    return None


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
    return Told(
        "Two things stand here one after the other.",
        f'Write each for itself; stages of tightening are a list: ["{one}", "{other}"].',
    )


def _compound(found: re.Match[str], unit: Unit, other: Unit) -> Told:
    """Say of feet and inches, or hours and minutes, what both are in one unit: in each where it ends shortly."""
    (first, _), (second, digits) = read_numeral(found["first"]), read_numeral(found["second"])
    sign = -1 if first < 0 else 1
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
