"""Parts that look alike, one below the other at one scale, in the dimension that decides."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from fractions import Fraction

from msgspec import Struct

from authoring.booklet.phrases import capital
from authoring.booklet.plan import Volume
from authoring.booklet.shapes import Bar, ToScale
from authoring.booklet.step_parts import Drawing
from authoring.booklet.wording import Wording
from authoring.booklet.words import Words
from authoring.diagnostics.words import joined
from authoring.model.procedure import Choice, ChoicePart
from authoring.model.things import Part
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.workshop.interval import interval_of

_LONGEST = Fraction(80)  # mm of paper, which leaves room for the dimension
_SHORTEST = Fraction(8)
_RULE = 30  # mm of paper that a scale bar takes at most
_STEPS = (1, 2, 5, 10, 20, 50, 100, 200, 500, 1000)
"""The scales of ISO 5455:1979, from memory: 1:2, 1:5, 1:10 and so on, 2:1, 5:1, 10:1 and so on."""


class _Sized(Struct, frozen=True):
    """A part with the ends of its size in mm and the size as it was stated."""

    part: ChoicePart
    low: Fraction
    high: Fraction
    size: Quantity


def look_alikes(choice: Choice, volume: Volume, wording: Wording) -> Iterator[Drawing]:
    """Yield a drawing for each length that decides between the parts of a choice.

    What does not decide is not drawn, and neither is a length that is known of one part only.
    """
    measured = [(one.name, one.id) for one in choice.dimensions.values() if one.decides] or [("size", "")]
    for name, dimension in measured:
        sized = [found for part in choice.parts if (found := _sized(part, dimension)) is not None]
        if len({(one.low, one.high) for one in sized}) > 1:
            sized.sort(key=lambda one: not volume.holds(one.part.when))
            yield _drawing(f"{capital(choice.name)}: {name}", name, sized, (volume, wording))


def _sized(part: ChoicePart, dimension: str) -> _Sized | None:
    stated = part.sizes.get(dimension) if dimension else part.stated
    size = stated.value if stated is not None else None
    if size is None or size.dimension is not Dimension.LENGTH:
        return None
    within = interval_of(size)
    if within.low is None or within.high is None or within.low <= 0:
        return None
    return _Sized(part, within.low * 1000, within.high * 1000, size)


def _drawing(title: str, name: str, sized: Sequence[_Sized], teller: tuple[Volume, Wording]) -> Drawing:
    volume, wording = teller
    scale = _scale(max(one.high for one in sized))
    bars = tuple(
        Bar(
            words=_called(one.part, volume),
            low=float(one.low * scale),
            high=float(one.high * scale),
            size=wording.amount(one.size).first,
            right=volume.holds(one.part.when),
        )
        for one in sized
    )
    rule = _rule(scale)
    told = "; ".join(f"{bar.words}: {bar.size}" for bar in bars)
    real = "Real size, 1:1" if scale == 1 else f"Scale {_ratio(scale)}"
    true = f"{real}, on paper that was printed without scaling: the scale bar is then {_plain(rule * scale)} mm long."
    return Drawing(
        title=title,
        alt=f"Drawing to scale of the {name}: {told}.",
        shape=ToScale(bars, float(rule * scale), f"{_plain(rule)} mm"),
        notes=((Words(true),),),
    )


def _called(part: ChoicePart, volume: Volume) -> str:
    """Return the number by which the table above calls a part, and of those that do as well."""
    things = [volume.scope.things[name].thing for name in (part.part, *part.equal)]
    numbers = joined([thing.number for thing in things if isinstance(thing, Part)], "or")
    return numbers if volume.holds(part.when) else f"NOT THIS ONE: {numbers}"


def _scale(longest: Fraction) -> Fraction:
    """Return the scale: real size where the longest is neither too long for the paper nor too short to be seen."""
    if longest > _LONGEST:
        return next((Fraction(1, one) for one in _STEPS if longest / one <= _LONGEST), _LONGEST / longest)
    if longest < _SHORTEST:
        return next((Fraction(one) for one in _STEPS if longest * one >= 2 * _SHORTEST), 2 * _SHORTEST / longest)
    return Fraction(1)


def _rule(scale: Fraction) -> Fraction:
    """Return the longest round length in mm whose scale bar is short enough."""
    length = Fraction(1)
    while length * scale > _RULE:
        length /= 10
    for step in itertools.cycle((Fraction(2), Fraction(5, 2), Fraction(2))):
        if length * step * scale > _RULE:
            break
        length *= step
    return length


def _ratio(scale: Fraction) -> str:
    return f"1:{_plain(1 / scale)}" if scale < 1 else f"{_plain(scale)}:1"


def _plain(number: Fraction) -> str:
    return f"{float(number):g}"
