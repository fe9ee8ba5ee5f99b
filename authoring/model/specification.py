"""A stated quantity with its source, and for which vehicles something holds."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import TypeAlias

from msgspec import Struct

from authoring.quantities.quantity import Quantity
from authoring.source.document import Where

When: TypeAlias = Mapping[str, tuple[str, ...]]
"""For which fitments something holds: the allowed values of each feature named; empty means for all."""

ALWAYS: When = MappingProxyType({})
"""For all fitments."""


class Specification(Struct, frozen=True, eq=False):
    """A quantity and the document that states it: short name of the source, and where in it."""

    value: Quantity | None
    source: str | None
    at: str | None
    where: Where
