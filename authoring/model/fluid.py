"""A fluid in the machine: what it is, how much there is of it, and which part of its circuit opens only when hot."""

from __future__ import annotations

from msgspec import Struct

from authoring.model.specification import Specification, When
from authoring.source.document import Where


class Circuit(Struct, frozen=True, eq=False):
    """A part of a fluid's circuit that a thermostat keeps shut until the fluid is hot.

    `opens` is the temperature from the first to the last opening; `when` the vehicles that have the thermostat.
    """

    name: str
    opens: Specification
    when: When
    where: Where


class Fluid(Struct, frozen=True, eq=False):
    """An oil, coolant or other fluid in the machine.

    `held_in` is the item that holds it, `mixes_with` other fluids that may come to it.
    `left_in` is what stays in after draining, `between_marks` what lies between two marks.
    `density` is that of a petroleum oil at 15 °C, from which it is known how the oil grows.
    """

    id: str
    name: str
    kind: str
    capacity: Specification | None
    disposal: str | None
    when: When
    where: Where
    expansion: Specification | None = None
    held_in: str | None = None
    mixes_with: tuple[str, ...] = ()
    left_in: Specification | None = None
    between_marks: Specification | None = None
    circuit: Circuit | None = None
    density: Specification | None = None


def apart(one: Fluid, other: Fluid) -> bool:
    """Tell whether two fluids are of different kinds, and neither says that it may come to the other."""
    mix = other.id in one.mixes_with or one.id in other.mixes_with
    return one.kind.casefold().split() != other.kind.casefold().split() and not mix
