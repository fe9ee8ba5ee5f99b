"""Conditions of which one is enough, put together without losing any of them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from authoring.booklet.phrases import lowered
from authoring.booklet.plan import Volume
from authoring.booklet.wording import Wording
from authoring.model.fitments import covered
from authoring.model.specification import When

Values = Mapping[str, tuple[str, ...]]
"""The values that each feature has on the machines of a procedure."""


def either(whens: Iterable[When], values: Values) -> tuple[When, ...]:
    """Return as few conditions as hold, one or the other, for just the machines that meet one of `whens`.

    Two that differ in the values of one feature become one. Nothing is returned where they hold for every machine.
    """
    left: list[When] = []
    for when in whens:
        one = _without_idle(when, values)
        # What it is put together with may go together with a third.
        while (other := next((known for known in left if _joined(known, one) is not None), None)) is not None:
            left.remove(other)
            one = _without_idle(_joined(other, one) or {}, values)
        left.append(one)
    return tuple(left) if all(left) else ()


def decided_by_either(whens: Iterable[When], volume: Volume, wording: Wording) -> tuple[str, When]:
    """Return in brackets for which vehicles a line of a list counts, and the condition that is told by it.

    No words where it counts for all of them; no condition where there are several, of which one is enough.
    """
    vehicle = volume.scope.vehicle
    left = either(whens, covered(vehicle, volume.procedure.covers) if vehicle is not None else {})
    told = [lowered(wording.applies(one)) for one in left]
    words = f" ({'; or '.join(told)})" if told and all(told) else ""
    return words, left[0] if len(left) == 1 else {}


def _without_idle(when: When, values: Values) -> When:
    """Return a condition without the features of which it names every value."""
    return {feature: some for feature, some in when.items() if not set(values.get(feature, ("",))) <= set(some)}


def _joined(one: When, other: When) -> When | None:
    """Return the one condition that is as good as two; None where no single one is."""
    if _within(one, other):
        return other
    if _within(other, one):
        return one
    apart = [feature for feature in one if set(one[feature]) != set(other.get(feature, ()))]
    if one.keys() != other.keys() or len(apart) != 1:
        return None
    (feature,) = apart
    return {**one, feature: tuple(dict.fromkeys((*one[feature], *other[feature])))}


def _within(one: When, other: When) -> bool:
    """Tell whether `other` holds wherever `one` does."""
    return all(feature in one and set(one[feature]) <= set(values) for feature, values in other.items())
