"""Texts that are printed as they stand: titles, names, places and the like, in which no bracket is read."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import Any

from msgspec import Struct

from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.texts import prose_of
from authoring.source.document import Where


class Label(Struct, frozen=True, eq=False):
    """One text and its place: an object and the key in it."""

    text: str
    where: Where
    keys: tuple[str | int, ...]


# For each group of a file, the keys at which a text, a list of texts or a group of texts is printed as it stands.
_SHOP = {
    "people": {"name", "role"},
    "sources": {"title", "edition"},
    "hazards": {"name", "emergency"},
    "policy": {"why", "loosened"},
}
_STOCK = {
    "parts": {"name", "number", "place", "critical", "material"},
    "tools": {"name", "place", "at", "made", "without", "title", "alt"},
    "consumables": {"name", "limits", "disposal", "take"},
}
_VALUES = {"values": {"name", "at", "why", "otherwise"}}
_EQUIPMENT = {
    "features": {"name", "tell", "values"},
    "sources": {"title", "edition"},
    "items": {"name", "place", "at", "positions", "release", "critical", "material", "say", "open-while-running"},
    "fasteners": {
        "name",
        "thread",
        "class",
        "at",
        "tightened",
        "untouched",
        "say",
        "open-while-running",
        "seen-from",
        "material",
    },
    "fluids": {"name", "kind", "at", "disposal"},
    **_VALUES,
}
_PROCEDURE = {
    "options": {"name", "values"},
    "modifications": {"name"},
    "choices": {"name", "at"},
    "figures": {"title"},
    **_VALUES,
}


def labels(library: Library) -> Iterator[Label]:
    """Yield every text of a library that is printed as it stands."""
    if library.shop is not None:
        yield from _own(library.shop.where, {"shop", "emergency", "retention"})
        yield from _groups(library.shop.where, _SHOP)
    if library.stock is not None:
        yield from _groups(library.stock.where, _STOCK)
    for equipment in library.equipment.values():
        yield from _own(equipment.where, {"name", "viewpoint"})
        yield from _groups(equipment.where, _EQUIPMENT)
    for procedure in library.procedures.values():
        yield from _of_procedure(procedure)


def _of_procedure(procedure: Procedure) -> Iterator[Label]:
    yield from _own(procedure.where, {"title"})
    yield from _groups(procedure.where, _PROCEDURE)
    yield from (Label(one.text, one.where, one.keys) for one in prose_of(procedure) if not one.has_names)
    for section in procedure.sections:
        yield from _own(section.where, {"title"})
    if procedure.trial is not None:
        yield from _own(procedure.trial.where, {"on"})


def _groups(where: Where, groups: Mapping[str, set[str]]) -> Iterator[Label]:
    for group, printed in groups.items():
        for name, data in where.document.data.get(group, {}).items():
            yield from _inside(data, where, (group, name), printed)


def _own(where: Where, printed: set[str]) -> Iterator[Label]:
    for key, below in where.data.items():
        if key in printed:
            yield from _texts(below, where, (key,))


def _inside(data: Any, where: Where, keys: tuple[str | int, ...], printed: set[str]) -> Iterator[Label]:
    """Yield the labels in an object of a group and in the objects below it, such as the windows of a value."""
    if isinstance(data, dict):
        for key, below in data.items():
            here = (*keys, key)
            yield from _texts(below, where, here) if key in printed else _inside(below, where, here, printed)
    elif isinstance(data, list):
        for place, below in enumerate(data):
            yield from _inside(below, where, (*keys, place), printed)


def _texts(data: Any, where: Where, keys: tuple[str | int, ...]) -> Iterator[Label]:
    if isinstance(data, str):
        yield Label(data, where, keys)
    elif isinstance(data, dict):
        for key, below in data.items():
            yield from _texts(below, where, (*keys, key))
    elif isinstance(data, list):
        for place, below in enumerate(data):
            yield from _texts(below, where, (*keys, place))
