"""Typed reading of one object whose shape has been checked: the edge at which text becomes values."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType
from typing import Any

from msgspec import Struct

from authoring.diagnostics.diagnostic import Diagnostic, Severity
from authoring.model.demands import Need
from authoring.model.specification import ALWAYS, Specification, When
from authoring.quantities.quantity import Quantity
from authoring.quantities.read import read_quantity
from authoring.quantities.units import Dimension
from authoring.source.document import Where


class Reader(Struct, frozen=True):
    """One object of a document, its place, and the list that takes what it has to say.

    `order` has the values of each feature known here, in their order, so that a range of them can be read.
    """

    data: dict[Any, Any]
    where: Where
    findings: list[Diagnostic]
    order: Mapping[str, tuple[str, ...]] = {}

    def text(self, key: str) -> str:
        """Return the text at a key that must be there."""
        return str(self.data[key]).strip()

    def maybe(self, key: str) -> str | None:
        """Return the text at a key, or None when it was left out."""
        return self.text(key) if key in self.data else None

    def names(self, key: str) -> tuple[str, ...]:
        """Return the names at a key: one name, a list of names, or nothing."""
        return as_names(self.data.get(key, ()))

    def texts(self, key: str) -> tuple[str, ...]:
        """Return the texts at a key: one, a list of them, or nothing."""
        return tuple(one.strip() for one in as_names(self.data.get(key, ())))

    def when(self, key: str = "when") -> When:
        """Return for which fitments the object holds; empty when it says nothing."""
        if key not in self.data:
            return ALWAYS
        return MappingProxyType(
            {feature: self._values(key, feature, given) for feature, given in self.data[key].items()}
        )

    def _values(self, key: str, feature: str, given: Any) -> tuple[str, ...]:
        if not isinstance(given, dict):
            return as_names(given)
        ends = (given["from"], given["to"])
        known = self.order.get(feature, ends)
        if not set(ends) <= set(known):
            return ends  # a value that is unknown is told by its rule
        first, last = known.index(ends[0]), known.index(ends[1])
        if feature not in self.order or first > last:
            reason = "names no feature whose values have an order here" if first <= last else "ends before it begins"
            message = f'The range of "{feature}" {reason}.'
            cure = "List the values, such as [s2, s3], or give the range in the order in which the feature states them."
            self.findings.append(Diagnostic("wrong-value", Severity.ERROR, message, self.where.of(key, feature), cure))
        return known[min(first, last) : max(first, last) + 1]

    def states(self, key: str) -> tuple[Need, ...]:
        """Return the things and their states in the group at a key, which may be left out."""
        return tuple(Need(thing, state, self.where.child(key)) for thing, state in self.data.get(key, {}).items())

    def below(self, key: str) -> Reader:
        """Return the reader of the object at a key."""
        return Reader(self.data[key], self.where.child(key), self.findings, self.order)

    def each(self, key: str) -> Iterator[tuple[str, Reader]]:
        """Yield (name, reader) for each object in the group at a key, which may be left out."""
        for name, data in self.data.get(key, {}).items():
            yield name, Reader(data, self.where.child(key, name), self.findings, self.order)

    def listed(self, key: str) -> Iterator[Reader]:
        """Yield a reader for each object in the list at a key, which may be left out."""
        for place, data in enumerate(self.data.get(key, ())):
            yield Reader(data, self.where.child(key, place), self.findings, self.order)

    def quantity(self, key: str | int, dimension: Dimension | None = None) -> Quantity | None:
        """Return the quantity at a key; a refused one is told here, at the characters at fault."""
        if key not in self.data:
            return None
        typed = self.data[key]
        read = read_quantity(typed, dimension)
        if isinstance(read, Quantity):
            return read
        fault = typed[read.start : read.end] if isinstance(typed, str) else ""
        span = self.where.find(fault, key) if fault.strip() else self.where.of(key)
        self.findings.append(Diagnostic("bad-quantity", Severity.ERROR, read.reason, span, read.cure))
        return None

    def quantities(self, key: str) -> tuple[Quantity, ...]:
        """Return the quantities in the list at a key, without those that are refused."""
        entries = dict(enumerate(self.data.get(key, ())))
        inside = Reader(entries, self.where.child(key), self.findings)
        read = [inside.quantity(place) for place in entries]
        return tuple(quantity for quantity in read if quantity is not None)

    def specification(self, key: str, dimension: Dimension | None) -> Specification | None:
        """Return the value and source at a key, or None when it was left out."""
        return self.below(key).as_specification(dimension) if key in self.data else None

    def as_specification(self, dimension: Dimension | None, key: str = "value") -> Specification:
        """Return this object itself as a value, which stands at `key`, with its source."""
        return Specification(self.quantity(key, dimension), self.maybe("source"), self.maybe("at"), self.where)


def as_names(data: Any) -> tuple[str, ...]:
    """Return one name or a list of names as a tuple."""
    return (data,) if isinstance(data, str) else tuple(data)
