"""An equipment file to values."""

from __future__ import annotations

from types import MappingProxyType
from typing import Any

from authoring.model.fastening import Positions, Tapped
from authoring.model.fluid import Circuit, Fluid
from authoring.model.heat import Cooled, Hot
from authoring.model.policy import FACTS
from authoring.model.read_things import read_sources, read_values
from authoring.model.reader import Reader
from authoring.model.specification import Specification, When
from authoring.model.things import Equipment, FastenerGroup, Feature, Item, Reuse
from authoring.quantities.units import Dimension


def read_equipment(at: Reader) -> Equipment:
    """Read an equipment file."""
    return Equipment(
        id=at.text("equipment"),
        name=at.text("name"),
        features={name: _feature(name, one) for name, one in at.each("features")},
        never=tuple(_never(at)),
        sources=read_sources(at),
        items={name: _item(name, one) for name, one in at.each("items")},
        fasteners={name: _fasteners(name, one) for name, one in at.each("fasteners")},
        fluids={name: _fluid(name, one) for name, one in at.each("fluids")},
        values=read_values(at),
        where=at.where,
        viewpoint=at.maybe("viewpoint"),
    )


def feature_order(data: dict[str, Any]) -> dict[str, tuple[str, ...]]:
    """Return the values of each feature of an equipment document, in the order in which they are stated."""
    return {name: tuple(feature["values"]) for name, feature in data.get("features", {}).items()}


def _feature(name: str, at: Reader) -> Feature:
    return Feature(name, at.text("name"), at.text("tell"), MappingProxyType(dict(at.data["values"])), at.where)


def _never(at: Reader) -> list[When]:
    return [Reader({"never": one.data}, one.where, at.findings, at.order).when("never") for one in at.listed("never")]


def _item(name: str, at: Reader) -> Item:
    return Item(
        id=name,
        name=at.text("name"),
        place=at.maybe("place"),
        covers=at.names("covers"),
        when=at.when(),
        where=at.where,
        part_of=at.maybe("part-of"),
        side=at.maybe("side"),
        twin=at.maybe("twin"),
        positions=MappingProxyType(dict(at.data.get("positions", {}))),
        release=at.texts("release"),
        critical=at.maybe("critical"),
        hazards=at.names("hazards"),
        material=at.maybe("material"),
        cooling=at.specification("cooling", Dimension.TIME),
        cooled=_cooled(at.below("cooled")) if "cooled" in at.data else None,
        hot=_hot(at.below("hot")) if "hot" in at.data else None,
        reuse=_reuse(at),
        open_while_running=at.maybe("open-while-running"),
        drains=at.names("drains"),
        fills=at.names("fills"),
        seals_with=at.names("seals-with"),
        facts=_facts(at),
    )


def _facts(at: Reader) -> dict[str, Specification]:
    stated = ((key, at.specification(key, dimension)) for key, dimension in FACTS.values() if key != "hot")
    return {key: one for key, one in stated if one is not None}


def _reuse(at: Reader) -> Reuse | None:
    if "reuse" not in at.data:
        return None
    one = at.below("reuse")
    return Reuse(one.text("is"), one.maybe("say"), one.where)


def _fasteners(name: str, at: Reader) -> FastenerGroup:
    return FastenerGroup(
        id=name,
        name=at.text("name"),
        count=at.data["count"],
        thread=at.text("thread"),
        strength=at.maybe("class"),
        length=at.quantity("length", Dimension.LENGTH),
        on=at.maybe("on"),
        torque=at.specification("torque", Dimension.TORQUE),
        when=at.when(),
        where=at.where,
        stages=at.quantities("stages"),
        order=tuple(at.data.get("order", ())),
        tightened=at.maybe("tightened"),
        among=at.maybe("among"),
        untouched=at.maybe("untouched"),
        joint=at.maybe("joint"),
        threads=at.maybe("threads"),
        friction=at.specification("friction", Dimension.RATIO),
        nut_factor=at.specification("nut-factor", Dimension.RATIO),
        grip=at.specification("grip", Dimension.LENGTH),
        positions=_positions(at.below("positions")) if "positions" in at.data else None,
        tapped=_tapped(at.below("tapped")) if "tapped" in at.data else None,
        side=at.maybe("side"),
        twin=at.maybe("twin"),
        reuse=_reuse(at),
        open_while_running=at.maybe("open-while-running"),
        drains=at.names("drains"),
        fills=at.names("fills"),
        seals_with=at.names("seals-with"),
        turned_with=at.names("turned-with"),
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
        expansion=at.specification("expansion", Dimension.RATIO),
        held_in=at.maybe("in"),
        mixes_with=at.names("mixes-with"),
        left_in=at.specification("left-in", Dimension.VOLUME),
        between_marks=at.specification("between-marks", Dimension.VOLUME),
        circuit=_circuit(at.below("circuit")) if "circuit" in at.data else None,
        density=at.specification("density", Dimension.DENSITY),
    )


def _circuit(at: Reader) -> Circuit:
    return Circuit(at.text("name"), at.as_specification(Dimension.TEMPERATURE, "opens"), at.when(), at.where)


def _hot(at: Reader) -> Hot:
    reached = at.as_specification(Dimension.TEMPERATURE)
    return Hot(reached, at.text("surface"), at.quantity("touch", Dimension.TIME), at.where)


def _cooled(at: Reader) -> Cooled:
    return Cooled(
        first=at.as_specification(Dimension.TEMPERATURE, "from"),
        second=at.quantity("to", Dimension.TEMPERATURE),
        between=at.quantity("in", Dimension.TIME),
        air=at.quantity("air", Dimension.TEMPERATURE),
        where=at.where,
    )


def _positions(at: Reader) -> Positions:
    return Positions(
        circle=at.quantity("circle", Dimension.LENGTH),
        first=at.maybe("first") or "12",
        places=tuple((float(right), float(up)) for right, up in at.data.get("places", ())),
        unit=at.maybe("in"),
        seen_from=at.maybe("seen-from"),
        where=at.where,
    )


def _tapped(at: Reader) -> Tapped:
    engaged = at.as_specification(Dimension.LENGTH, "engaged")
    strength = at.as_specification(Dimension.PRESSURE, "shear-strength")
    return Tapped(at.text("material"), engaged, strength, at.where)
