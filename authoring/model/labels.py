"""Texts that are printed as they stand: titles, names, places and the like, in which no bracket is read."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import Equipment, Shop, Stock
from authoring.source.document import Where

_EQUIPMENT = ("features", "sources", "items", "fasteners", "fluids", "values")
_STOCK = ("parts", "tools", "consumables")
_KEYS = frozenset({"name", "title", "place", "tell", "kind", "edition", "number", "limits", "disposal", "role", "at"})


class Label(Struct, frozen=True, eq=False):
    """One text and its place: an object and the key in it."""

    text: str
    where: Where
    keys: tuple[str | int, ...]


def labels(library: Library) -> Iterator[Label]:
    """Yield every text of a library that is printed as it stands."""
    shop, stock = library.shop, library.stock
    if isinstance(shop, Shop):
        yield from _own(shop.where, ("shop",))
        yield from _groups(shop.where, ("people", "sources"))
    if isinstance(stock, Stock):
        yield from _groups(stock.where, _STOCK)
    for equipment in library.equipment.values():
        yield from _of_equipment(equipment)
    for procedure in library.procedures.values():
        yield from _of_procedure(procedure)


def _of_equipment(equipment: Equipment) -> Iterator[Label]:
    yield from _own(equipment.where, ("name",))
    yield from _groups(equipment.where, _EQUIPMENT)


def _of_procedure(procedure: Procedure) -> Iterator[Label]:
    yield from _own(procedure.where, ("title",))
    yield from _groups(procedure.where, ("values",))
    for choice in procedure.choices.values():
        yield from _own(choice.where, ("name",))
    for figure in procedure.figures.values():
        yield from _own(figure.where, ("title", "alt"))
    for section in procedure.sections:
        yield from _own(section.where, ("title",))
    if procedure.trial is not None:
        yield from _own(procedure.trial.where, ("on",))


def _groups(where: Where, names: tuple[str, ...]) -> Iterator[Label]:
    for name in names:
        for key, data in where.document.data.get(name, {}).items():
            inside = where.child(name, key)
            yield from (
                Label(text, inside, (one,)) for one, text in data.items() if one in _KEYS and isinstance(text, str)
            )


def _own(where: Where, keys: tuple[str, ...]) -> Iterator[Label]:
    data = where.document.data
    for step in where.path:
        data = data[step]  # type: ignore[index]  # the path was walked when the object was read
    yield from (Label(data[key], where, (key,)) for key in keys if key in data)
