"""From which temperature does a touched surface burn the skin, and what must a safety message about it say at least?

Table: thresholds for five kinds of surface, touched for 1 s, 1 min, 10 min and 8 h.
The threshold for a touch of up to 1 s is a band: below it there is no burn, inside it there may be one, above it there
will be one (how the band is meant is from memory).
A rule takes the lower edge.

Symbols:
    temperature: of the surface, in K
    contact: how long the surface is touched, in s

Source: DIN EN 563:1994, forerunner of ISO 13732-1:2006 with the same data, as printed in DGUV Vorschrift 79, §12.

Assumptions: between two tabulated times the longer one counts; a burn that just begins is moderate, which is our
reading and stands in no source.

Limits: a touch of 0.5 s or longer (scope of ISO 13732-1); not where a tenth of the body's skin, or the face, can touch;
not for liquids.
"""

from __future__ import annotations

import enum
from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

from msgspec import Struct

from authoring.quantities.convert import convert
from authoring.quantities.units import UNITS
from authoring.workshop.impossible import Impossible

SECOND = Fraction(1)
MINUTE = Fraction(60)
TEN_MINUTES = Fraction(600)
EIGHT_HOURS = Fraction(28_800)
TABULATED = (SECOND, MINUTE, TEN_MINUTES, EIGHT_HOURS)
"""The contact times of the table; the last stands for all longer ones."""


class Surface(enum.Enum):
    """What is touched, as the table sorts it."""

    BARE_METAL = "bare metal"
    COATED_METAL = "metal with a coat of 50 µm"
    STONE = "ceramic, glass or stone"
    PLASTIC = "plastic"
    WOOD = "wood"


class Band(Struct, frozen=True):
    """Temperatures in K: below `low` no burn, up to `high` there may be one, above `high` there will be one."""

    low: Fraction
    high: Fraction


class Touch(Struct, frozen=True):
    """What a touch does: harm at least `severity`, which `likelihood` says could or will happen."""

    severity: str
    likelihood: str


# °C, lower and upper edge, for the tabulated times in order.
_TABLE: Mapping[Surface, tuple[tuple[int, int], ...]] = MappingProxyType(
    {
        Surface.BARE_METAL: ((65, 70), (51, 51), (48, 48), (43, 43)),
        Surface.COATED_METAL: ((75, 80), (51, 51), (48, 48), (43, 43)),
        Surface.STONE: ((80, 86), (56, 56), (48, 48), (43, 43)),
        Surface.PLASTIC: ((86, 93), (60, 60), (48, 48), (43, 43)),
        Surface.WOOD: ((110, 140), (60, 60), (48, 48), (43, 43)),
    }
)


def burn_band(surface: Surface, contact: Fraction) -> Band | Impossible:
    """Return the band in K in which a touch of `contact` seconds begins to burn.

    Between two tabulated times the next longer one counts, whose threshold is lower: the careful side.
    A touch shorter than a second counts as one of a second, a longer one than eight hours as one of eight hours.
    Impossible for a touch that does not last.
    """
    if contact <= 0:
        return Impossible("A touch lasts longer than nothing.", "State how long the surface is touched.")
    row = next((at for at, time in enumerate(TABULATED) if contact <= time), len(TABULATED) - 1)
    low, high = _TABLE[surface][row]
    return Band(_kelvin(low), _kelvin(high))


def burn_threshold(surface: Surface, contact: Fraction) -> Fraction | Impossible:
    """Return the temperature in K from which a touch of `contact` seconds may burn: the band's lower edge."""
    band = burn_band(surface, contact)
    return band if isinstance(band, Impossible) else band.low


def harm_of_touch(surface: Surface, temperature: Fraction, contact: Fraction) -> Touch | Impossible | None:
    """Return what a safety message about a touch must state at least, or None where no burn begins.

    Severity and likelihood are in the words of safety messages.
    The table tells where burns begin, not how deep they go, so the severity is a least one; that a burn which just
    begins is moderate is our reading, and no source says so.
    From the lower edge on it could happen, above the upper edge it will.
    Whoever knows more (a red-hot exhaust, a face, a large area of skin) states more; nothing here ever allows less.
    """
    band = burn_band(surface, contact)
    if isinstance(band, Impossible):
        return band
    if temperature < band.low:
        return None
    return Touch("moderate", "could" if temperature <= band.high else "will")


def _kelvin(celsius: int) -> Fraction:
    return convert(Fraction(celsius), UNITS["°C"], UNITS["K"])
