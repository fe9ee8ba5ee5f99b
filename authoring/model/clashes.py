"""Pairs of things that one reader meets under the same key: a short name, or the words on the page."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from typing import TypeAlias

from authoring.model.library import Library, Named, of_equipment, of_procedure, of_stock

Key: TypeAlias = Callable[[Named], str | None]
"""What two things must not share; None keeps a thing out."""

_Seen: TypeAlias = dict[str, list[Named]]


def clashes(
    library: Library, key: Key, together: Callable[[Named, Named], bool] = lambda _one, _other: True
) -> Iterator[tuple[Named, Named]]:
    """Yield (thing, the one it clashes with): within a file, with its equipment's file, and with the stock.

    Each pair is told once and at the narrower place, whatever number of procedures meet it.
    `together` says whether one reader can meet both.
    """
    stock: _Seen = {}
    if library.stock is not None:
        yield from _among(of_stock(library.stock), key, together, [stock])
    machines: dict[str, _Seen] = {}
    for equipment in library.equipment.values():
        mine = machines[equipment.id] = {}
        yield from _among(of_equipment(equipment), key, together, [mine, stock])
    for procedure in library.procedures.values():
        around = [machines.get(procedure.equipment, {}), stock]
        yield from _among(of_procedure(procedure), key, together, [{}, *around])


def _among(
    things: Iterable[Named], key: Key, together: Callable[[Named, Named], bool], around: Sequence[_Seen]
) -> Iterator[tuple[Named, Named]]:
    for thing in things:
        shared = key(thing)
        if shared is None:
            continue
        known = (other for seen in around for other in seen.get(shared, ()))
        clash = next((other for other in known if together(thing, other)), None)
        if clash is not None:
            yield thing, clash
        around[0].setdefault(shared, []).append(thing)
