"""A whole library, and what each name means inside one procedure."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from functools import cached_property
from typing import TypeAlias

from msgspec import Struct

from authoring.model.action_kind import Kind
from authoring.model.allowances import Allowance
from authoring.model.changes import Modification, Option
from authoring.model.decided import decided_vehicle
from authoring.model.figure import Figure
from authoring.model.fluid import Fluid
from authoring.model.mentions import Mention, in_messages, mentions
from authoring.model.procedure import Choice, Procedure, Section, Step
from authoring.model.things import (
    Consumable,
    Equipment,
    FastenerGroup,
    Item,
    Message,
    Part,
    Shop,
    Source,
    Stock,
    Tool,
    Value,
)
from authoring.source.document import Where
from authoring.source.images import Image

Thing: TypeAlias = (
    Item
    | FastenerGroup
    | Fluid
    | Value
    | Part
    | Tool
    | Consumable
    | Option
    | Modification
    | Choice
    | Figure
    | Section
    | Step
    | Procedure
)


class Named(Struct, frozen=True):
    """A thing under its short name; `words` is what a reader sees."""

    id: str
    kind: Kind
    words: str
    thing: Thing
    where: Where


class Library:
    """Everything of one library that could be read.

    `partial` says that some file could not be read, so that a name that is not found may well stand there.
    Compare libraries by identity: a frozen tree is slow to hash.
    """

    def __init__(  # noqa: PLR0913  # a library is these things, and nothing stands for them all
        self,
        shop: Shop | None,
        stock: Stock | None,
        equipment: Mapping[str, Equipment],
        procedures: Mapping[str, Procedure],
        images: Mapping[str, Image | str],
        allowances: Sequence[Allowance] = (),
        *,
        partial: bool = False,
    ) -> None:
        self.shop = shop
        self.stock = stock
        self.equipment = equipment
        self.procedures = procedures
        self.images = images
        self.allowances = allowances
        self.partial = partial
        self._scopes: dict[str, Scope] = {}

    def scope(self, procedure: Procedure) -> Scope:
        """Return what names mean inside a procedure; worked out once."""
        if procedure.number not in self._scopes:
            self._scopes[procedure.number] = Scope(self, procedure)
        return self._scopes[procedure.number]

    @cached_property
    def numbers(self) -> Sequence[Named]:
        """Every procedure as a named thing; one list for the scopes of all."""
        return [called(procedure) for procedure in self.procedures.values()]


class Scope:
    """What each short name means inside one procedure: its own things, its equipment's, and the stock's."""

    def __init__(self, library: Library, procedure: Procedure) -> None:
        self.library = library
        self.procedure = procedure
        self.equipment = library.equipment.get(procedure.equipment)

    @cached_property
    def vehicle(self) -> Equipment | None:
        """The equipment, with what this job decides as further features: options, and choices that a `when` names."""
        if self.equipment is None:
            return None
        return decided_vehicle(self.equipment, self.procedure, self._words)

    def _words(self, name: str) -> str:
        return self.things[name].words if name in self.things else name  # an unknown name is told by its rule

    @cached_property
    def things(self) -> Mapping[str, Named]:
        """Every named thing; where a name is used twice, the nearest wins and a rule tells of it."""
        found: dict[str, Named] = {}
        for named in self.everything():
            found.setdefault(named.id, named)
        return found

    def everything(self) -> Iterator[Named]:
        """Yield every named thing, nearest first: the procedure's own, its equipment's, the stock's, procedures."""
        yield from of_procedure(self.procedure)
        if self.equipment is not None:
            yield from of_equipment(self.equipment)
        if self.library.stock is not None:
            yield from of_stock(self.library.stock)
        yield from self.library.numbers

    @cached_property
    def sources(self) -> Mapping[str, Source]:
        """The documents that values of this procedure may cite: the equipment's before the shop's."""
        shop = self.library.shop
        mine = self.equipment.sources if self.equipment is not None else {}
        return {**(shop.sources if shop is not None else {}), **mine}

    @cached_property
    def safety(self) -> Mapping[str, Message]:
        """The safety messages this procedure may call: its own before the shop's."""
        shop = self.library.shop
        return {**(shop.safety if shop is not None else {}), **self.procedure.safety}

    @cached_property
    def mentions(self) -> tuple[Mention, ...]:
        """Every mention this procedure's reader meets: its own, then those in the shop's messages that it calls."""
        own = tuple(mentions(self.procedure))
        called = {mention.name for mention in own if mention.wants == "message"}
        messages = [message for name, message in self.safety.items() if name in called]
        return (*own, *in_messages(one for one in messages if one.id not in self.procedure.safety))


def called(procedure: Procedure) -> Named:
    """Return a procedure as a named thing."""
    return Named(procedure.number, Kind.PROCEDURE, f"{procedure.number}, {procedure.title}", procedure, procedure.where)


def of_procedure(procedure: Procedure) -> Iterator[Named]:
    """Yield every named thing of a procedure file; a step or section without an id of its own has one with a dot."""
    for value in procedure.values.values():
        yield Named(value.id, Kind.VALUE, value.name, value, value.where)
    for option in procedure.options.values():
        yield Named(option.id, Kind.OPTION, option.name, option, option.where)
    for change in procedure.modifications.values():
        yield Named(change.id, Kind.MODIFICATION, change.name, change, change.where)
    for choice in procedure.choices.values():
        yield Named(choice.id, Kind.CHOICE, choice.name, choice, choice.where)
    for figure in procedure.figures.values():
        yield Named(figure.id, Kind.FIGURE, figure.title, figure, figure.where)
    for section in procedure.sections:
        yield Named(section.id, Kind.SECTION, section.title, section, section.where)
        for step in section.steps:
            yield Named(step.id, Kind.STEP, step.text, step, step.where)


def of_equipment(equipment: Equipment) -> Iterator[Named]:
    """Yield every named thing of an equipment file."""
    for item in equipment.items.values():
        yield Named(item.id, Kind.ITEM, item.name, item, item.where)
    for group in equipment.fasteners.values():
        yield Named(group.id, Kind.FASTENERS, group.name, group, group.where)
    for fluid in equipment.fluids.values():
        yield Named(fluid.id, Kind.FLUID, fluid.name, fluid, fluid.where)
    for value in equipment.values.values():
        yield Named(value.id, Kind.VALUE, value.name, value, value.where)


def of_stock(stock: Stock) -> Iterator[Named]:
    """Yield every named thing of the stock file."""
    for part in stock.parts.values():
        yield Named(part.id, Kind.PART, part.name, part, part.where)
    for tool in stock.tools.values():
        yield Named(tool.id, Kind.TOOL, tool.name, tool, tool.where)
    for consumable in stock.consumables.values():
        yield Named(consumable.id, Kind.CONSUMABLE, consumable.name, consumable, consumable.where)
