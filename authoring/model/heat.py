"""How hot an item gets, and how it cools."""

from __future__ import annotations

from msgspec import Struct

from authoring.model.specification import Specification
from authoring.quantities.quantity import Quantity
from authoring.source.document import Where


class Hot(Struct, frozen=True, eq=False):
    """The temperature that a surface reaches, what it is, and how long a hand may rest on it.

    `surface` is bare-metal, coated-metal, stone, plastic or wood; `touch` is None where a touch lasts a second.
    """

    reached: Specification
    surface: str
    touch: Quantity | None
    where: Where


class Cooled(Struct, frozen=True, eq=False):
    """Two readings of something that cools, the time between them, and the temperature of the air.

    `first` has the source of all four.
    """

    first: Specification
    second: Quantity | None
    between: Quantity | None
    air: Quantity | None
    where: Where
