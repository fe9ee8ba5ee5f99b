"""The documents that the values of a booklet come from, and what things are made of."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from authoring.booklet.blocks import Block, Cell, Chapter, Table
from authoring.booklet.phrases import UNVERIFIED
from authoring.booklet.plan import Placed, Plan, Volume
from authoring.booklet.words import Text, Words
from authoring.model.contents import MOVES
from authoring.model.fluid import Fluid
from authoring.model.levels import READS
from authoring.model.manner import PLAIN
from authoring.model.procedure import Action, Choice
from authoring.model.specification import Specification
from authoring.model.things import FastenerGroup, Item, Part, Source, Tool, Value
from authoring.quantities.show import spell

_OLDER = "Read the value in the document when it matters; a booklet can be older than its sources."
_MARKED = (
    f" What is marked “{UNVERIFIED}” was worked out by a formula of which no source was read: "
    "take it as a help, and the maker's word before it."
)
_KINDS = {
    "maker": "maker's data",
    "standard": "standard",
    "shop": "the shop's own measurement",
    "common-practice": "common practice, no published source",
}


def sources(plan: Plan, *, marked: bool = False) -> Chapter:
    """Return the chapter that lists the documents the values come from, and which values.

    `marked` says that the steps mark a value as unverified, so that the word is explained.
    """
    rows = tuple(tuple(Cell(text) for text in _row(source, values)) for source, values in cited(plan))
    table = Table(
        id="sources-table",
        title="Where each value comes from",
        heads=("Document", "Edition", "Values, and where they stand"),
        rows=rows,
        widths=(24, 13, 63),
        empty="This booklet states no value.",
        note=f"{_OLDER}{_MARKED if marked else ''}",
    )
    blocks: tuple[Block, ...] = (table, *_materials(plan))
    return Chapter("sources", "", "Sources", 1, blocks)


def cited(plan: Plan) -> Iterator[tuple[Source, list[str]]]:
    """Yield each document that the values of a booklet come from, and what it states, each once."""
    found: dict[str, tuple[Source, dict[str, None]]] = {}
    for volume in plan.volumes:
        for words, specification in _specifications(volume):
            source = volume.scope.sources.get(specification.source or "")
            if source is not None:
                told = f"{words}: {specification.at}" if specification.at else words
                found.setdefault(source.id, (source, {}))[1][told] = None
    return ((source, list(values)) for source, values in found.values())


def _row(source: Source, values: list[str]) -> tuple[Text, Text, Text]:
    title: Text = (Words(source.title, "strong"), Words(f", {_KINDS[source.kind]}"))
    return title, (Words(source.edition or "not stated"),), (Words("; ".join(values)),)


def _specifications(volume: Volume) -> Iterator[tuple[str, Specification]]:
    """Yield each value that the steps of a procedure bring to the reader, and what it is of."""
    yield from _windows([need.state for need in volume.procedure.needs], volume)
    for section, _, steps in volume.sections:
        yield from _windows([need.state for need in section.needs], volume)
        for placed in steps:
            yield from _of_step(placed, volume)
            for action in placed.step.actions:
                yield from _of_action(action, volume)


def _of_step(placed: Placed, volume: Volume) -> Iterator[tuple[str, Specification]]:
    step = placed.step
    yield from _windows([need.state for need in step.needs], volume)
    if step.deadline is not None:
        yield from _windows([step.deadline.within], volume)
    for name in step.uses:
        tool = volume.scope.things[name].thing
        if isinstance(tool, Tool) and tool.range is not None:
            yield f"range of the {tool.name}", tool.range
            yield from _shown(f"accuracy of the {tool.name}", tool.accuracy)


def _of_action(action: Action, volume: Volume) -> Iterator[tuple[str, Specification]]:
    for _, name in action.names():
        thing = volume.scope.things[name].thing
        if isinstance(thing, FastenerGroup) and action.kind.torque:
            yield from _of_fasteners(thing)
        elif isinstance(thing, Fluid) and action.kind.name in MOVES | READS:
            yield from _of_fluid(thing)
        elif isinstance(thing, Item):
            yield from _shown(f"cooling of the {thing.name}", thing.cooling)
        elif isinstance(thing, Choice):
            yield from _of_choice(thing, volume)
        elif isinstance(thing, Value):
            yield from _windows([name], volume)
    if action.manner is not PLAIN:
        named = [action.manner.force, *(one.by for one in action.manner.clear_of)]
        yield from _windows([name for name in named if name is not None], volume)


def _of_fasteners(group: FastenerGroup) -> Iterator[tuple[str, Specification]]:
    yield from _stated(f"torque of the {group.name}", group.torque)
    yield from _shown(f"friction of the {group.name}", group.friction)
    yield from _shown(f"nut factor K of the {group.name}", group.nut_factor)
    yield from _shown(f"clamped length of the {group.name}", group.grip)
    if group.tapped is not None:
        yield from _shown(f"whole threads of the {group.name}", group.tapped.engaged)
        yield from _shown(f"shear strength of the {group.tapped.material}", group.tapped.shear_strength)


def _of_fluid(fluid: Fluid) -> Iterator[tuple[str, Specification]]:
    yield from _stated(f"capacity for {fluid.name}", fluid.capacity)
    yield from _shown(f"expansion of {fluid.name} for each kelvin", fluid.expansion)
    yield from _shown(f"density of {fluid.name} at 15 °C", fluid.density)
    yield from _stated(f"what stays in of {fluid.name}", fluid.left_in)
    yield from _stated(f"{fluid.name} between the marks", fluid.between_marks)
    if fluid.circuit is not None:
        yield from _shown(f"opening of the thermostat of the {fluid.circuit.name}", fluid.circuit.opens)


def _of_choice(choice: Choice, volume: Volume) -> Iterator[tuple[str, Specification]]:
    for one in choice.parts:
        words = volume.scope.things[one.part].words
        yield from _stated(f"size of the {words}", one.stated)
        for dimension, size in one.sizes.items():
            yield f"{choice.dimensions[dimension].name} of the {words}", size


def _windows(names: Iterable[str], volume: Volume) -> Iterator[tuple[str, Specification]]:
    """Yield the windows of those of the names that are values, as far as they hold for the selection."""
    for name in names:
        named = volume.scope.things.get(name)
        if named is not None and isinstance(named.thing, Value):
            for window in named.thing.windows:
                if volume.holds(window.when):
                    yield named.words, window.specification


def _stated(words: str, specification: Specification | None) -> Iterator[tuple[str, Specification]]:
    if specification is not None:
        yield words, specification


def _shown(words: str, specification: Specification | None) -> Iterator[tuple[str, Specification]]:
    """Yield a value that stands nowhere else in the booklet together with what it is."""
    if specification is not None and specification.value is not None:
        yield f"{words}, {spell(specification.value)}", specification


def _materials(plan: Plan) -> Iterator[Table]:
    things = [named.thing for named, _ in plan.used if isinstance(named.thing, Item | Part)]
    rows = tuple((Cell((Words(one.name, "strong"),)), Cell((Words(one.material),))) for one in things if one.material)
    if rows:
        yield Table("materials", "What things are made of", ("What", "Material"), rows, (34, 66))
