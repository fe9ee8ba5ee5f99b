"""Exact conversion of a number from one unit to another."""

from __future__ import annotations

from fractions import Fraction

from authoring.quantities.units import Unit


def convert(number: Fraction, source: Unit, target: Unit) -> Fraction:
    """Return `number` of `source` in `target`, exactly; a temperature takes its offset once.

    Raises ValueError when the two measure different things: the caller has mixed them up.
    """
    if source.dimension is not target.dimension:
        message = f"{source.dimension.value} ({source.symbol}) is not {target.dimension.value} ({target.symbol})"
        raise ValueError(message)
    return (number * source.factor + source.offset - target.offset) / target.factor


def convert_step(step: Fraction, source: Unit, target: Unit) -> Fraction:
    """Return the size of a step of `source` in `target`: the same as converting, without the offset."""
    return step * source.factor / target.factor
