"""Shop, stock and equipment files to values."""

from __future__ import annotations

from types import MappingProxyType

from authoring.diagnostics.diagnostic import Diagnostic, Severity
from authoring.model.reader import Reader
from authoring.model.things import (
    Consumable,
    Equipment,
    FastenerGroup,
    Feature,
    Fluid,
    Item,
    Message,
    Part,
    Person,
    Shop,
    Source,
    Specification,
    Stock,
    Tool,
    Value,
)
from authoring.quantities.units import Dimension, Unit, as_difference, unit_named


def dimension_of(word: str) -> Dimension:
    """Return the dimension that the language calls by `word`, such as temperature-difference."""
    return Dimension(word.replace("-", " "))


def read_shop(at: Reader) -> Shop:
    """Read the shop file."""
    return Shop(
        name=at.text("shop"),
        profile=at.maybe("signal-words") or "ansi",
        units=MappingProxyType(_units(at.below("units"))),
        people={name: _person(name, one) for name, one in at.each("people")},
        sources=read_sources(at),
        safety=read_messages(at),
        where=at.where,
    )


def _units(at: Reader) -> dict[Dimension, tuple[Unit, ...]]:
    units: dict[Dimension, tuple[Unit, ...]] = {}
    for word, spellings in at.data.items():
        dimension = dimension_of(word)
        known = []
        for place, spelling in enumerate(spellings):
            unit = unit_for(spelling, dimension)
            if unit is None:
                message = f'"{spelling}" is no unit of {dimension.value} that can be shown.'
                cure = "Name a unit of that dimension, such as N·m for torque."
                span = at.where.of(word, place)
                at.findings.append(Diagnostic("bad-quantity", Severity.ERROR, message, span, cure))
            else:
                known.append(unit)
        units[dimension] = tuple(known)
    return units


def unit_for(spelling: str, dimension: Dimension) -> Unit | None:
    """Return the unit a spelling stands for in one dimension, or None."""
    unit = unit_named(spelling)
    if unit is not None and dimension is Dimension.TEMPERATURE_DIFFERENCE:
        unit = as_difference(unit)
    return unit if unit is not None and unit.dimension is dimension else None


def _person(name: str, at: Reader) -> Person:
    return Person(name, at.text("name"), at.text("role"), frozenset(at.names("may")), at.where)


def read_sources(at: Reader) -> dict[str, Source]:
    """Read a `sources` group."""
    return {
        name: Source(name, one.text("title"), one.maybe("edition"), one.text("kind"), one.where)
        for name, one in at.each("sources")
    }


def read_messages(at: Reader) -> dict[str, Message]:
    """Read a `safety` group."""
    return {
        name: Message(
            id=name,
            harm=one.text("harm"),
            severity=one.text("severity"),
            likelihood=one.text("likelihood"),
            hazard=one.maybe("hazard"),
            consequence=one.maybe("consequence"),
            avoidance=one.maybe("avoidance"),
            sign=one.maybe("sign") or "",
            when=one.when(),
            where=one.where,
        )
        for name, one in at.each("safety")
    }


def read_values(at: Reader) -> dict[str, Value]:
    """Read a `values` group."""
    values = {}
    for name, one in at.each("values"):
        of = one.maybe("of")
        specification = one.as_specification(dimension_of(of) if of else None)
        values[name] = Value(name, one.text("name"), specification, one.where)
    return values


def read_stock(at: Reader) -> Stock:
    """Read the stock file."""
    return Stock(
        name=at.text("stock"),
        parts={
            name: Part(
                name,
                one.text("name"),
                one.text("number"),
                one.data.get("one-time", False),
                one.maybe("place"),
                one.where,
            )
            for name, one in at.each("parts")
        },
        tools={name: Tool(name, one.text("name"), one.maybe("place"), one.where) for name, one in at.each("tools")},
        consumables={
            name: Consumable(name, one.text("name"), one.maybe("limits"), one.maybe("disposal"), one.where)
            for name, one in at.each("consumables")
        },
        where=at.where,
    )


def read_equipment(at: Reader) -> Equipment:
    """Read an equipment file."""
    return Equipment(
        id=at.text("equipment"),
        name=at.text("name"),
        features={name: _feature(name, one) for name, one in at.each("features")},
        never=tuple(_never(at)),
        sources=read_sources(at),
        items={
            name: Item(name, one.text("name"), one.maybe("place"), one.names("covers"), one.when(), one.where)
            for name, one in at.each("items")
        },
        fasteners={name: _fasteners(name, one) for name, one in at.each("fasteners")},
        fluids={name: _fluid(name, one) for name, one in at.each("fluids")},
        values=read_values(at),
        where=at.where,
    )


def _feature(name: str, at: Reader) -> Feature:
    return Feature(name, at.text("name"), at.text("tell"), MappingProxyType(dict(at.data["values"])), at.where)


def _never(at: Reader) -> list[dict[str, tuple[str, ...]]]:
    return [{feature: one.names(feature) for feature in one.data} for one in at.listed("never")]


def _fasteners(name: str, at: Reader) -> FastenerGroup:
    torque: Specification | None = at.specification("torque", Dimension.TORQUE)
    return FastenerGroup(
        id=name,
        name=at.text("name"),
        count=at.data["count"],
        thread=at.text("thread"),
        strength=at.maybe("class"),
        length=at.quantity("length", Dimension.LENGTH),
        on=at.maybe("on"),
        torque=torque,
        when=at.when(),
        where=at.where,
    )


def _fluid(name: str, at: Reader) -> Fluid:
    return Fluid(
        id=name,
        name=at.text("name"),
        kind=at.text("kind"),
        capacity=at.specification("capacity", Dimension.VOLUME),
        disposal=at.maybe("disposal"),
        when=at.when(),
        where=at.where,
    )
