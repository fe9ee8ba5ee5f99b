"""Every value a library states, with the words for it and the sources it may cite."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from authoring.model.library import Library
from authoring.model.things import Equipment, Source, Specification, Value


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
    """Yield the values of every equipment and of every procedure whose equipment is known, in order."""
    shared = library.shop.sources if library.shop is not None else {}
    for equipment in library.equipment.values():
        yield from _of_equipment(equipment, {**shared, **equipment.sources})
    for procedure in library.procedures.values():
        if procedure.equipment in library.equipment:
            sources = library.scope(procedure).sources
            yield from _of_values(procedure.values, sources)
            for part in (part for choice in procedure.choices.values() for part in choice.parts):
                if part.stated is not None:
                    yield Stated(f'The size of "{part.part}"', part.stated, sources)


def _of_equipment(equipment: Equipment, sources: Mapping[str, Source]) -> Iterator[Stated]:
    for group in equipment.fasteners.values():
        if group.torque is not None:
            yield Stated(f'The torque of "{group.id}"', group.torque, sources)
    for fluid in equipment.fluids.values():
        if fluid.capacity is not None:
            yield Stated(f'The capacity of "{fluid.id}"', fluid.capacity, sources)
    yield from _of_values(equipment.values, sources)


def _of_values(values: Mapping[str, Value], sources: Mapping[str, Source]) -> Iterator[Stated]:
    for value in values.values():
        yield Stated(f'The value "{value.id}"', value.specification, sources)
