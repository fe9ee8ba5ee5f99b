"""All covered fitments over some features at once, as the bits of one whole number.

A cell is one fitment over these features; a set of fitments is a number whose bit n says whether cell n is in it.
What holds for two conditions together is one AND of two numbers, so that nothing is tried machine by machine.
Features that nobody names are left out: the cost follows what is named together, not what the equipment lists.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Mapping

from authoring.model.fitments import concerned, covered
from authoring.model.specification import When
from authoring.model.things import Equipment

Cells = int
"""A set of cells: bit n is set where cell n belongs to it."""


def cells_of(vehicle: Equipment, covers: When, features: Iterable[str]) -> int:
    """Return how many cells the space of these features has, with those that impossible combinations tie to them."""
    values = covered(vehicle, covers)
    return math.prod(len(values[name]) for name in concerned(vehicle, features) if name in values)


class Space:
    """The covered fitments over the features that are named and those that impossible combinations tie to them."""

    def __init__(self, vehicle: Equipment, covers: When, features: Iterable[str]) -> None:
        """Lay out the cells; ask `cells_of` first, since a space of millions takes long.

        A name that is no feature of the vehicle is passed over, and so is a value that it does not have.
        """
        wanted = concerned(vehicle, features)
        self.values = {name: known for name, known in covered(vehicle, covers).items() if name in wanted}
        self._cells = dict(_layers(self.values))
        self.every: Cells = (1 << math.prod(map(len, self.values.values()))) - 1
        for never in vehicle.never:
            if set(never) <= self.values.keys():
                self.every &= ~self.where(never)

    def where(self, when: When) -> Cells:
        """Return the covered fitments that meet a condition; a feature that is not in the space is passed over."""
        cells = self.every
        for feature, values in when.items():
            if feature in self.values:
                cells &= self._any(feature, values)
        return cells

    def either(self, whens: Iterable[When]) -> Cells:
        """Return the covered fitments that meet one of these conditions or more."""
        cells = 0
        for when in whens:
            cells |= self.where(when)
        return cells

    def _any(self, feature: str, values: Iterable[str]) -> Cells:
        cells = 0
        for value in values:
            cells |= self._cells.get((feature, value), 0)
        return cells

    def one_of(self, cells: Cells) -> Mapping[str, str]:
        """Return the first fitment of a set that has one."""
        place = (cells & -cells).bit_length() - 1
        found = {}
        for feature, values in self.values.items():
            place, value = divmod(place, len(values))
            found[feature] = values[value]
        return found

    def fewest(self, cells: Cells) -> Mapping[str, str]:
        """Return the fewest features and values such that every covered fitment with them is in the set.

        The set has at least one fitment.
        """
        for size in range(len(self.values)):
            for picked in itertools.combinations(self.values, size):
                for fitment in self._over(picked):
                    inside = self.where({feature: (value,) for feature, value in fitment.items()})
                    if inside and not inside & ~cells:
                        return fitment
        return self.one_of(cells)

    def _over(self, features: Iterable[str]) -> Iterator[dict[str, str]]:
        names = tuple(features)
        for picked in itertools.product(*(self.values[name] for name in names)):
            yield dict(zip(names, picked, strict=True))

    def groups(self, cells: Cells) -> list[When]:
        """Return conditions that together hold for exactly these covered fitments, few where values can be joined."""
        return list(self._groups(cells, tuple(self.values), {}))

    def _groups(self, cells: Cells, features: tuple[str, ...], around: When) -> Iterator[When]:
        """Split feature by feature; values whose rests are alike are told as one."""
        here = self.where(around)
        if not here & cells:
            return
        if not here & ~cells:
            yield around
            return
        feature, *others = features
        alike: dict[tuple[tuple[tuple[str, tuple[str, ...]], ...], ...], list[str]] = {}
        for value in self.values[feature]:
            rest = self._groups(cells, tuple(others), {**around, feature: (value,)})
            told = tuple(
                tuple((name, of) for name, of in one.items() if name not in (*around, feature)) for one in rest
            )
            if told:
                alike.setdefault(told, []).append(value)
        for told, values in alike.items():
            shared = {} if len(values) == len(self.values[feature]) else {feature: tuple(values)}
            yield from ({**around, **shared, **dict(one)} for one in told)


def _layers(values: Mapping[str, tuple[str, ...]]) -> Iterator[tuple[tuple[str, str], Cells]]:
    """Yield, for each value of each feature, the cells that have it; the first feature changes fastest."""
    total = math.prod(map(len, values.values()))
    stride = 1
    for feature, known in values.items():
        run = (1 << stride) - 1
        period = stride * len(known)
        for place, value in enumerate(known):
            yield (feature, value), _repeated(run << (place * stride), period, total // period)
        stride = period


def _repeated(pattern: Cells, period: int, times: int) -> Cells:
    """Return a pattern of `period` bits set side by side so many times."""
    cells, done = 0, 0
    block, length = pattern, 1
    while times:
        if times & 1:
            cells |= block << (done * period)
            done += length
        block |= block << (length * period)
        length *= 2
        times >>= 1
    return cells
