"""What a shop's safety policy demands, and in which situation."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.source.document import Where

FACTS: Mapping[str, tuple[str, Dimension]] = {
    "hotter-than": ("hot", Dimension.TEMPERATURE),
    "heavier-than": ("mass", Dimension.MASS),
    "above-pressure": ("pressure", Dimension.PRESSURE),
    "above-voltage": ("voltage", Dimension.VOLTAGE),
    "above-voltage-ac": ("voltage-ac", Dimension.VOLTAGE),
    "higher-than": ("height", Dimension.LENGTH),
}
"""For each bound of a policy the key of an item that states the fact, and its dimension."""


class Policy(Struct, frozen=True, eq=False):
    """One demand of the shop, or a default that ships.

    A thing is meant that has the hazard and of which no fact says that it stays within the bounds.
    Of a default (`by_facts`) a thing is meant of which every bounded fact is stated and is beyond its bound.
    A bound that is None is where a touch burns (`workshop/burns.py`).
    `sign` tells the messages of a default, which knows none of the shop's names.
    `sort` is what a message of the kind is called; `source` and `status` say where a default comes from.
    `where` is None for a default that the shop does not name.
    """

    id: str
    why: str
    hazard: str | None = None
    acts: frozenset[str] | None = None
    only_while: str | None = None
    bounds: Mapping[str, Quantity | None] = {}
    severity: str | None = None
    likelihood: str | None = None
    message: str | None = None
    wear: tuple[str, ...] = ()
    hold: bool = False
    persons: int | None = None
    loosened: str | None = None
    where: Where | None = None
    by_facts: bool = False
    sign: str = ""
    sort: str = ""
    source: str = ""
    status: str = ""

    @property
    def asks_message(self) -> bool:
        """Whether a message of the kind must be in force."""
        return self.hazard is not None or bool(self.sort)
