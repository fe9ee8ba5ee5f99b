"""What is known of a group of fasteners beside its torque: where they stand, and what they are screwed into."""

from __future__ import annotations

from msgspec import Struct

from authoring.model.specification import Specification
from authoring.quantities.quantity import Quantity
from authoring.source.document import Where


class Positions(Struct, frozen=True, eq=False):
    """Where fasteners stand: evenly on a circle from `first` clockwise, or each at a place.

    `circle` is the diameter of the circle; `first` a clock position, such as "1:30".
    `places` are (to the right, up) in `unit`, mm or in, in the order of the fasteners' numbers; None where nobody said.
    """

    circle: Quantity | None
    first: str
    places: tuple[tuple[float, float], ...]
    unit: str | None
    seen_from: str | None
    where: Where


class Tapped(Struct, frozen=True, eq=False):
    """The tapped hole of a bolt: what it is made of, the whole threads engaged, and its shear strength.

    `engaged` and `shear_strength` have one source.
    """

    material: str
    engaged: Specification
    shear_strength: Specification
    where: Where
