"""Every picture of a library: the figures of its procedures, and the drawings of tools that the shop made."""

from __future__ import annotations

from collections.abc import Iterator

from msgspec import Struct

from authoring.model.figure import Figure
from authoring.model.library import Library


class Picture(Struct, frozen=True):
    """One picture, and how a message calls it."""

    called: str
    figure: Figure


def pictures(library: Library) -> Iterator[Picture]:
    """Yield every picture, the drawings of the stock first."""
    for tool in library.stock.tools.values() if library.stock is not None else ():
        if tool.drawing is not None:
            yield Picture(f'drawing of "{tool.id}"', tool.drawing)
    for procedure in library.procedures.values():
        for figure in procedure.figures.values():
            yield Picture(f'figure "{figure.id}"', figure)
