"""Finds the one unit a matched text is in, and holds it against what its place takes."""

from __future__ import annotations

import re

from authoring.quantities.refused import UnexplainedError, refuse
from authoring.quantities.units import PLAIN_NUMBER, UNITS, Dimension, Unit, as_difference, plain_spelling, unit_named


def placed_unit(match: re.Match[str], dimension: Dimension | None) -> Unit:
    """Return the unit of a text matched by the grammar; raises when it is missing, twice or unfit."""
    before, after = match["unit"], match["unit_after"]
    share = match["share"] is not None or "%" in (match["uneven"] or "")
    if share and (before == "%" or (dimension is Dimension.RATIO and not before)):
        reason = "A percentage of a percentage may mean points, or a share of the value."
        refuse(
            reason, 'Write the points in brackets, such as "(50 ± 5) %", or the ends: "45 to 55 %".', match.span("tail")
        )
    _check_brackets(match, share=share)
    if share and after and not before:
        right = f"{match['first']} {after} {match['tail'].strip()}"
        refuse("The percentage stands before the unit.", f'Write "{right}".', match.span("tail"))
    if not before and not after:
        if dimension is Dimension.COUNT and not share:
            return UNITS[""]
        if dimension is Dimension.RATIO and not share:
            return PLAIN_NUMBER
        raise UnexplainedError
    unit = _named(match, "unit" if before else "unit_after", dimension)
    if before and after:
        _check_second(match, unit, share=share)
    elif before and match["tail"] and not share:
        both = f"{match['first']} {match['tail'].strip()} {before}"
        refuse("The second number has no unit.", f'Write the unit behind both: "{both}".', match.span("tail"))
    return unit


def _check_brackets(match: re.Match[str], *, share: bool) -> None:
    opened, closed = match["open"], match["close"]
    if not opened and not closed:
        return
    if not opened or not closed:
        place = match.span("open" if opened else "close")
        refuse("This bracket has no partner.", 'Write "(42 ± 4) N·m" or "42 ± 4 N·m".', place)
    if match["unit"] or share or not match["tail"]:
        reason = "Brackets stand round two numbers of one unit only."
        refuse(reason, 'Write "(42 ± 4) N·m" or "42 N·m ± 10 %".', (match.start("open"), match.end("close")))


def _named(match: re.Match[str], group: str, dimension: Dimension | None) -> Unit:
    spelling = match[group]
    unit = unit_named(spelling, dimension)
    if unit is None:
        raise UnexplainedError
    if dimension is None and unit.symbol == "°" and plain_spelling(spelling) != "°":
        reason = f'"{spelling}" is an angle to some and a temperature to others.'
        refuse(reason, 'Write "°" for an angle, or "°C" or "°F" for a temperature.', match.span(group))
    if dimension is Dimension.TEMPERATURE_DIFFERENCE:
        unit = as_difference(unit)
    if dimension not in (None, unit.dimension):
        from authoring.quantities.hints import wrong_dimension  # noqa: PLC0415  # words that only a refusal needs

        refuse(*wrong_dimension(spelling, unit, dimension), match.span(group))
    return unit


def _check_second(match: re.Match[str], unit: Unit, *, share: bool) -> None:
    place = match.span("unit_after")
    second = unit_named(match["unit_after"], unit.dimension)
    if second is None:
        raise UnexplainedError
    if share or not match["tail"]:
        refuse("The unit stands there twice.", f'Write "{match["unit"]}" once.', place)
    if match["last"] is None and second.symbol == "K":
        # A tolerance on °C in kelvin: a step of the one is a step of the other.
        second = unit if unit.symbol in ("K", "°C") else second
    if second.symbol != unit.symbol:
        reason = "The two numbers are in different units."
        refuse(reason, f'Write both in one unit, such as "{match["unit"]}".', place)
