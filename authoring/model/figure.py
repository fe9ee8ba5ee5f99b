"""A picture in a file of the library, and the numbers on it."""

from __future__ import annotations

from msgspec import Struct

from authoring.source.document import Where


class Callout(Struct, frozen=True, eq=False):
    """A number on a picture: what it points at, and where in percent of width and height."""

    on: str
    across: float
    down: float
    where: Where


class Figure(Struct, frozen=True, eq=False):
    """A picture in a file of the library; `shows` is before, during or after, or None where that was not said."""

    id: str
    file: str
    title: str
    alt: str | None
    callouts: tuple[Callout, ...]
    where: Where
    shows: str | None = None
