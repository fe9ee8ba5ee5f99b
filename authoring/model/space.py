"""All covered fitments over some features at once, as the bits of one whole number.

A cell is one fitment over these features; a set of fitments is a number whose bit n says whether cell n is in it.
What holds for two conditions together is one AND of two numbers, so that nothing is tried machine by machine.
Features that nobody names are left out: the cost follows what is named together, not what the equipment lists.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import reduce
from operator import or_
from typing import TypeAlias

from authoring.model.fitments import concerned, covered
from authoring.model.specification import When
from authoring.model.things import Equipment

Cells: TypeAlias = int
"""A set of cells: bit n is set where cell n belongs to it."""

LIMIT = 2**20
"""How many cells a space may have for a question to be answered; ten features of four values make as many."""

# Sets of up to so many features are all tried; larger ones are found by leaving features out one by one.
_TRIED = 3

_Part: TypeAlias = "tuple[dict[str, str], Cells, Cells]"
"""Values of some features, and the bad and the good cells that have them."""

_Branches: TypeAlias = "tuple[tuple[tuple[str, ...], _Branches], ...]"
"""How a set splits at a feature: values with like rests, and that rest; empty where all of it is in the set."""


def cells_of(vehicle: Equipment, covers: When, features: Iterable[str]) -> int:
    """Return how many cells the space of these features has, with those that impossible combinations tie to them."""
    values = covered(vehicle, covers)
    return math.prod(len(values[name]) for name in concerned(vehicle, features) if name in values)


class Space:
    """The covered fitments over the features that are named and those that impossible combinations tie to them."""

    def __init__(self, vehicle: Equipment, covers: When, features: Iterable[str]) -> None:
        """Lay out the cells; ask `cells_of` first, since a space of more than LIMIT takes long.

        A name that is no feature of the vehicle is passed over, and so is a value that it does not have.
        """
        self.vehicle, self.covers = vehicle, covers
        values, named = covered(vehicle, covers), set(features)
        tied = concerned(vehicle, named) - named
        # What is only tied stands last: words can do without it, since it decides nothing that was asked.
        self._named = [name for name in values if name in named]
        self.values = {name: values[name] for name in (*self._named, *(name for name in values if name in tied))}
        self._strides = _strides(self.values)
        self._size = math.prod(map(len, self.values.values()))
        self._cells = dict(_layers(self.values, self._strides, self._size))
        self.every: Cells = (1 << self._size) - 1
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

    def whatever(self, cells: Cells, features: Iterable[str]) -> Cells:
        """Return the covered fitments that are those of a set but for the values of some features."""
        for feature in self.values.keys() & set(features) if cells else ():
            values, stride = self.values[feature], self._strides[feature]
            first = 0
            for place, value in enumerate(values):
                first |= (cells & self._cells[feature, value]) >> (place * stride)
            cells = 0
            for place in range(len(values)):
                cells |= first << (place * stride)
        return cells & self.every

    def _any(self, feature: str, values: Iterable[str]) -> Cells:
        cells = 0
        for value in values:
            cells |= self._cells.get((feature, value), 0)
        return cells

    def one_of(self, cells: Cells) -> Mapping[str, str]:
        """Return the first fitment of a set that has one; the last feature changes fastest."""
        place = (cells & -cells).bit_length() - 1
        return {
            feature: values[place // self._strides[feature] % len(values)] for feature, values in self.values.items()
        }

    def fewest(self, cells: Cells, among: Cells | None = None) -> Mapping[str, str]:
        """Return the fewest of the named features, with values, such that every fitment with them is in the set.

        The set has at least one fitment; what is not `among` those asked about, which are all covered, does not count.
        Where more than three features are needed, none of those returned can be left out, though another choice of
        features might do with fewer.
        """
        good = (self.every if among is None else among) & ~cells
        left = self._leaving_out(cells, good)
        for size in range(min(_TRIED + 1, len(left))):
            found = self._free_of([({}, cells, good)], self._choices(self.values), size)
            if found is not None:
                return found
        return left

    def _leaving_out(self, cells: Cells, good: Cells) -> dict[str, str]:
        """Return what is left of the first of these cells when feature by feature that can be spared is left out."""
        one, named = self.one_of(cells), set(self._named)
        left = {name: (one[name],) for name in self._choices(self.values)}
        for name in sorted(left, key=named.__contains__):
            fewer = {feature: value for feature, value in left.items() if feature != name}
            if not self.where(fewer) & good:
                left = fewer
        return {name: one[name] for name in left}

    def _free_of(self, parts: Sequence[_Part], names: Sequence[str], size: int) -> dict[str, str] | None:
        """Return the values of so many named features that some bad cell has and no good one.

        Each part is what is left of the bad and the good cells under some values: over the features `names`, the first
        of which changes slowest. A feature is kept, which parts them by its values, or laid together, which shortens
        them, so that no choice of features costs more than what is left of them.
        """
        if not size:
            return next((values for values, _, good in parts if not good), None)
        if not any(name in self._named for name in names):
            return None
        name, *others = names
        stride = self._strides[name]
        block = (1 << stride) - 1
        split = [
            [(bad >> at * stride & block, good >> at * stride & block) for at in range(len(self.values[name]))]
            for _, bad, good in parts
        ]
        if name in self._named:
            kept = [
                ({**values, name: value}, *mine)
                for (values, _, _), pieces in zip(parts, split, strict=True)
                for value, mine in zip(self.values[name], pieces, strict=True)
                if mine[0]
            ]
            found = self._free_of(kept, others, size - 1)
            if found is not None:
                return found
        laid = [
            (values, reduce(or_, (bad for bad, _ in pieces)), reduce(or_, (good for _, good in pieces)))
            for (values, _, _), pieces in zip(parts, split, strict=True)
        ]
        return self._free_of(laid, others, size)

    def _choices(self, names: Iterable[str]) -> list[str]:
        """Return those of these features that have a choice of values; LIMIT bounds how many they are."""
        return [name for name in names if len(self.values[name]) > 1]

    def groups(self, cells: Cells) -> Iterator[When]:
        """Yield conditions that together hold for exactly these covered fitments, few where values can be joined."""
        names = self._choices(self.values)
        branches = self._branches(cells & self.every, self.every, names, {}) if cells & self.every else None
        yield from self._told(branches, names, {}) if branches is not None else ()

    def _branches(self, cells: Cells, every: Cells, names: Sequence[str], known: dict[object, _Branches]) -> _Branches:
        """Split a set feature by feature; what is alike is one and the same, so that it is split and told once."""
        if not every & ~cells:
            return ()
        key = (cells, every, len(names))
        if key not in known:
            name, *others = names
            stride = self._strides[name]
            block = (1 << stride) - 1
            alike: dict[int, tuple[list[str], _Branches]] = {}
            for place, value in enumerate(self.values[name]):
                mine, all_here = cells >> (place * stride) & block, every >> (place * stride) & block
                if mine:
                    rest = self._branches(mine, all_here, others, known)
                    alike.setdefault(id(rest), ([], rest))[0].append(value)
            split = tuple((tuple(values), rest) for values, rest in alike.values())
            same = (len(names), *((values, id(rest)) for values, rest in split))
            known[key] = known.setdefault(same, split)
        return known[key]

    def _told(self, branches: _Branches, names: Sequence[str], around: When) -> Iterator[When]:
        if not branches:
            yield around
        for values, rest in branches:
            shared = {} if len(values) == len(self.values[names[0]]) else {names[0]: values}
            yield from self._told(rest, names[1:], {**around, **shared})


def possible(equipment: Equipment, when: When) -> bool:
    """Tell whether any fitment of the equipment meets `when`.

    Beyond LIMIT cells the answer is yes; ask `too_many` to tell.
    """
    return too_many(equipment, when, when) or Space(equipment, when, when).every != 0


def too_many(equipment: Equipment, covers: When, features: Iterable[str]) -> bool:
    """Tell whether a question about these features has more cells than are laid out."""
    return cells_of(equipment, covers, features) > LIMIT


def _strides(values: Mapping[str, tuple[str, ...]]) -> dict[str, int]:
    """Return how far apart the cells of two neighbouring values of each feature are; the last changes fastest."""
    strides: dict[str, int] = {}
    stride = 1
    for feature, known in reversed(list(values.items())):
        strides[feature] = stride
        stride *= len(known)
    return strides


def _layers(
    values: Mapping[str, tuple[str, ...]], strides: Mapping[str, int], size: int
) -> Iterator[tuple[tuple[str, str], Cells]]:
    """Yield, for each value of each feature, the cells that have it."""
    for feature, known in values.items() if size else ():
        stride = strides[feature]
        run, period = (1 << stride) - 1, stride * len(known)
        for place, value in enumerate(known):
            yield (feature, value), _repeated(run << (place * stride), period, size // period)


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
