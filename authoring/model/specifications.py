"""Every value a library states, with the words for it and the sources it may cite."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from authoring.model.library import Library
from authoring.model.procedure import ChoicePart
from authoring.model.specification import Specification
from authoring.model.things import Equipment, Source, Value


class Stated(Struct, frozen=True):
    """One stated value: how a message calls it, what was stated, and the sources known where it stands."""

    called: str
    specification: Specification
    sources: Mapping[str, Source]

    @property
    def source(self) -> Source | None:
        """The source it cites, or None when it cites none that is known."""
        return self.sources.get(self.specification.source or "")


def stated_values(library: Library) -> Iterator[Stated]:
    """Yield the values of the stock, of every equipment, and of every procedure whose equipment is known, in order."""
    shared = library.shop.sources if library.shop is not None else {}
    for tool in library.stock.tools.values() if library.stock is not None else ():
        yield from _some(f'The range of "{tool.id}"', tool.range, shared)
        yield from _some(f'The accuracy of "{tool.id}"', tool.accuracy, shared)
    if library.shop is not None:
        yield from _some("The temperature of the air", library.shop.air, shared)
    for equipment in library.equipment.values():
        yield from _of_equipment(equipment, {**shared, **equipment.sources})
    for procedure in library.procedures.values():
        if procedure.equipment in library.equipment:
            sources = library.scope(procedure).sources
            yield from _of_values(procedure.values, sources)
            for choice in procedure.choices.values():
                for part in choice.parts:
                    yield from _of_part(part, sources)


def _of_equipment(equipment: Equipment, sources: Mapping[str, Source]) -> Iterator[Stated]:
    for item in equipment.items.values():
        yield from _some(f'The time constant of "{item.id}"', item.cooling, sources)
        yield from _some(
            f'How fast "{item.id}" cooled', item.cooled.first if item.cooled is not None else None, sources
        )
        yield from _some(f'How hot "{item.id}" gets', item.hot.reached if item.hot is not None else None, sources)
        for key, fact in item.facts.items():
            yield from _some(f'The {key} of "{item.id}"', fact, sources)
    for group in equipment.fasteners.values():
        yield from _some(f'The torque of "{group.id}"', group.torque, sources)
        yield from _some(f'The friction of "{group.id}"', group.friction, sources)
        yield from _some(f'The nut factor of "{group.id}"', group.nut_factor, sources)
        yield from _some(f'The grip of "{group.id}"', group.grip, sources)
        yield from _some(
            f'The tapped hole of "{group.id}"', group.tapped.engaged if group.tapped is not None else None, sources
        )
    for fluid in equipment.fluids.values():
        yield from _some(f'The capacity of "{fluid.id}"', fluid.capacity, sources)
        yield from _some(f'The expansion of "{fluid.id}"', fluid.expansion, sources)
        yield from _some(f'The density of "{fluid.id}"', fluid.density, sources)
        yield from _some(f'What stays in of "{fluid.id}"', fluid.left_in, sources)
        yield from _some(f'What lies between the marks of "{fluid.id}"', fluid.between_marks, sources)
        yield from _some(
            f'The circuit of "{fluid.id}"', fluid.circuit.opens if fluid.circuit is not None else None, sources
        )
    yield from _of_values(equipment.values, sources)


def _of_values(values: Mapping[str, Value], sources: Mapping[str, Source]) -> Iterator[Stated]:
    for value in values.values():
        for place, window in enumerate(value.windows, 1):
            words = f'Window {place} of the value "{value.id}"' if len(value.windows) > 1 else f'The value "{value.id}"'
            yield Stated(words, window.specification, sources)


def _of_part(part: ChoicePart, sources: Mapping[str, Source]) -> Iterator[Stated]:
    yield from _some(f'The size of "{part.part}"', part.stated, sources)
    for dimension, size in part.sizes.items():
        yield Stated(f'The size "{dimension}" of "{part.part}"', size, sources)


def _some(called: str, specification: Specification | None, sources: Mapping[str, Source]) -> Iterator[Stated]:
    if specification is not None:
        yield Stated(called, specification, sources)
