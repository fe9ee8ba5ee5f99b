"""Every safety message of a library with the names its texts may use."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from authoring.model.library import Library, Named, of_equipment, of_stock
from authoring.model.things import Message


class Written(Struct, frozen=True):
    """A safety message where it was written; `things` are what its texts may name in brackets.

    A message of the shop may be called by any procedure, so it sees the stock and all equipment.
    """

    message: Message
    things: Mapping[str, Named]


def messages_of(library: Library) -> Iterator[Written]:
    """Yield each message of the shop and of every procedure, once."""
    if library.shop is not None:
        things = _of_all(library)
        for message in library.shop.safety.values():
            yield Written(message, things)
    for procedure in library.procedures.values():
        for message in procedure.safety.values():
            yield Written(message, library.scope(procedure).things)


def _of_all(library: Library) -> Mapping[str, Named]:
    found: dict[str, Named] = {}
    for equipment in library.equipment.values():
        found |= {named.id: named for named in of_equipment(equipment)}
    if library.stock is not None:
        found |= {named.id: named for named in of_stock(library.stock)}
    return found
