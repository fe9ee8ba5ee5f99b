"""Shop and stock files to values, and what equipment and procedures share with them."""

from __future__ import annotations

from types import MappingProxyType

from authoring.diagnostics.diagnostic import Diagnostic, Severity
from authoring.model.figure import Callout, Figure
from authoring.model.read_policy import read_policies
from authoring.model.reader import Reader
from authoring.model.things import (
    Adapter,
    Consumable,
    Hazard,
    Message,
    Part,
    Person,
    Shop,
    Source,
    Stock,
    Tool,
    Value,
    Window,
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
        hazards={
            name: Hazard(name, one.text("name"), one.texts("emergency"), one.where, one.maybe("only-while"))
            for name, one in at.each("hazards")
        },
        emergency=at.texts("emergency"),
        retention=at.maybe("retention"),
        air=at.specification("air", Dimension.TEMPERATURE),
        decision_rule=at.maybe("decision-rule"),
        policy=read_policies(at),
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
    unit = unit_named(spelling, dimension)
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
            of=one.maybe("of"),
        )
        for name, one in at.each("safety")
    }


def read_values(at: Reader) -> dict[str, Value]:
    """Read a `values` group."""
    return {name: Value(name, one.text("name"), _windows(one), one.where) for name, one in at.each("values")}


def _windows(at: Reader) -> tuple[Window, ...]:
    of = at.maybe("of")
    dimension = dimension_of(of) if of else None
    several = list(at.listed("windows"))
    if bool(several) == ("value" in at.data):
        name = at.where.path[-1]
        message = f'"{name}" has both a value and windows.' if several else f'"value" is missing in "{name}".'
        cure = "Keep one of the two." if several else 'Add "value", or "windows" where several will do.'
        rule = "wrong-value" if several else "missing-key"
        at.findings.append(Diagnostic(rule, Severity.ERROR, message, at.where.key(), cure))
    return tuple(
        Window(
            one.as_specification(dimension),
            one.when(),
            one.maybe("why"),
            one.maybe("otherwise"),
            one.where,
        )
        for one in several or [at]
    )


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
                one.maybe("critical"),
                one.maybe("material"),
            )
            for name, one in at.each("parts")
        },
        tools={name: _tool(name, one) for name, one in at.each("tools")},
        consumables={
            name: Consumable(
                name, one.text("name"), one.maybe("limits"), one.maybe("disposal"), one.where, one.maybe("take")
            )
            for name, one in at.each("consumables")
        },
        where=at.where,
    )


def _tool(name: str, at: Reader) -> Tool:
    return Tool(
        id=name,
        name=at.text("name"),
        place=at.maybe("place"),
        where=at.where,
        range=at.specification("range", None),
        resolution=at.quantity("resolution"),
        adapter=_adapter(at.below("adapter")) if "adapter" in at.data else None,
        made=at.maybe("made"),
        drawing=read_figure(name, at.below("drawing")) if "drawing" in at.data else None,
        without=at.maybe("without"),
        accuracy=at.specification("accuracy", None),
        by_eye=at.data.get("by-eye", False),
        length=at.quantity("length", Dimension.LENGTH),
    )


def _adapter(at: Reader) -> Adapter:
    return Adapter(at.quantity("length", Dimension.LENGTH), at.quantity("angle", Dimension.ANGLE), at.where)


def read_figure(name: str, at: Reader) -> Figure:
    """Read one picture."""
    callouts = tuple(
        Callout(one.text("on"), float(one.data["across"]), float(one.data["down"]), one.where)
        for one in at.listed("callouts")
    )
    return Figure(name, at.text("file"), at.text("title"), at.maybe("alt"), callouts, at.where, at.maybe("shows"))
