"""A quantity as an author typed it, exact, or the reason why it was not taken."""

from __future__ import annotations

import enum
from fractions import Fraction

from msgspec import Struct

from authoring.quantities.units import Dimension, Unit


class Form(enum.Enum):
    """What a quantity states about its value."""

    VALUE = "value"
    TOLERANCE = "tolerance"
    RANGE = "range"
    MINIMUM = "minimum"
    MAXIMUM = "maximum"
    ABOUT = "about"


class Quantity(Struct, frozen=True):
    """A number, a window or a limit with its unit.

    `nominal`, `low` and `high` are exact numbers in the unit as typed.
    A value and an "about" have a nominal, a tolerance all three, a range low and high, a minimum low, a maximum high.
    `places` is the largest count of decimals typed in a number that carries the unit.
    `typed` holds the numbers as typed, without grouping: one, or low and high, or nominal, plus and minus.
    `percent` says that plus and minus are a share of the nominal; `even` that they were typed as one.
    """

    text: str
    dimension: Dimension
    unit: Unit
    form: Form
    nominal: Fraction | None
    low: Fraction | None
    high: Fraction | None
    places: int
    typed: tuple[str, ...]
    percent: bool = False
    even: bool = True


class Refusal(Struct, frozen=True):
    """Why a text is no quantity, what to write instead, and which characters of it are at fault."""

    reason: str
    cure: str
    start: int
    end: int
