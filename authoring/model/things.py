"""The things a library knows: the shop, its stock, and the equipment it works on.

Every value is frozen, and compared by identity: two things of the same words in two places are two things.
`where` says where it was written.
A quantity is None where its text was refused; the refusal has been told already.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

from msgspec import Struct

from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension, Unit
from authoring.source.document import Where

When: TypeAlias = Mapping[str, tuple[str, ...]]
"""For which fitments something holds: the allowed values of each feature named; empty means for all."""


class Specification(Struct, frozen=True, eq=False):
    """A quantity and the document that states it: short name of the source, and where in it."""

    value: Quantity | None
    source: str | None
    at: str | None
    where: Where


class Source(Struct, frozen=True, eq=False):
    """A document that values come from; `kind` is maker, standard, shop or common-practice."""

    id: str
    title: str
    edition: str | None
    kind: str
    where: Where


class Message(Struct, frozen=True, eq=False):
    """A safety message; the signal word is derived from harm, severity and likelihood."""

    id: str
    harm: str
    severity: str
    likelihood: str
    hazard: str | None
    consequence: str | None
    avoidance: str | None
    sign: str
    when: When
    where: Where


class Person(Struct, frozen=True, eq=False):
    """Somebody who writes or approves procedures; `may` holds write, approve or both."""

    id: str
    name: str
    role: str
    may: frozenset[str]
    where: Where


class Shop(Struct, frozen=True, eq=False):
    """The shop: its name, its units for each dimension, its people, sources and shared safety messages."""

    name: str
    profile: str
    units: Mapping[Dimension, tuple[Unit, ...]]
    people: Mapping[str, Person]
    sources: Mapping[str, Source]
    safety: Mapping[str, Message]
    where: Where


class Part(Struct, frozen=True, eq=False):
    """What is fitted and stays on the machine."""

    id: str
    name: str
    number: str
    one_time: bool
    place: str | None
    where: Where


class Tool(Struct, frozen=True, eq=False):
    """What is used and put back."""

    id: str
    name: str
    place: str | None
    where: Where


class Consumable(Struct, frozen=True, eq=False):
    """What is used up."""

    id: str
    name: str
    limits: str | None
    disposal: str | None
    where: Where


class Stock(Struct, frozen=True, eq=False):
    """The parts, tools and consumables of the shop."""

    name: str
    parts: Mapping[str, Part]
    tools: Mapping[str, Tool]
    consumables: Mapping[str, Consumable]
    where: Where


class Feature(Struct, frozen=True, eq=False):
    """In what vehicles differ: a name, how to tell, and the words for each value."""

    id: str
    name: str
    tell: str
    values: Mapping[str, str]
    where: Where


class Item(Struct, frozen=True, eq=False):
    """What can be taken off, fitted, opened, run or looked at; it may cover others."""

    id: str
    name: str
    place: str | None
    covers: tuple[str, ...]
    when: When
    where: Where


class FastenerGroup(Struct, frozen=True, eq=False):
    """Bolts, nuts or plugs tightened alike."""

    id: str
    name: str
    count: int
    thread: str
    strength: str | None
    length: Quantity | None
    on: str | None
    torque: Specification | None
    when: When
    where: Where


class Fluid(Struct, frozen=True, eq=False):
    """An oil, coolant or other fluid in the machine."""

    id: str
    name: str
    kind: str
    capacity: Specification | None
    disposal: str | None
    when: When
    where: Where


class Value(Struct, frozen=True, eq=False):
    """A quantity that steps refer to by name."""

    id: str
    name: str
    specification: Specification
    where: Where


class Equipment(Struct, frozen=True, eq=False):
    """One kind of machine."""

    id: str
    name: str
    features: Mapping[str, Feature]
    never: tuple[When, ...]
    sources: Mapping[str, Source]
    items: Mapping[str, Item]
    fasteners: Mapping[str, FastenerGroup]
    fluids: Mapping[str, Fluid]
    values: Mapping[str, Value]
    where: Where
