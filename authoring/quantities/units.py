"""The closed table of units a procedure may use, each with its exact factor.

Base units: N·m, m, m³, K, Pa, kg, s, degree, piece, N, r/min, m³/s, V, A, Ω, kg/m³, and 1 for a ratio.
Torque is its own dimension and never mixes with energy, though both are newton times metre.
Factors follow from the definitions behind NIST SP 811 (2008), Appendix B.8: inch, pound, gallon, standard gravity.
"""

from __future__ import annotations

import enum
from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

from msgspec import Struct

from authoring.quantities.spellings import (
    ABBREVIATIONS,
    ANGLE_SIGNS,
    FORMS,
    LOOKALIKES,
    TORQUE_JOINTS,
    TORQUE_WORDS,
)


class Dimension(enum.Enum):
    """What kind of thing a quantity measures."""

    TORQUE = "torque"
    LENGTH = "length"
    VOLUME = "volume"
    TEMPERATURE = "temperature"
    TEMPERATURE_DIFFERENCE = "temperature difference"
    PRESSURE = "pressure"
    MASS = "mass"
    TIME = "time"
    ANGLE = "angle"
    COUNT = "count"
    FORCE = "force"
    RATIO = "ratio"
    ROTATION = "speed of rotation"
    FLOW = "flow"
    VOLTAGE = "voltage"
    CURRENT = "current"
    RESISTANCE = "resistance"
    DENSITY = "density"


class Unit(Struct, frozen=True):
    """One unit: `base = number * factor + offset`, both exact; `symbol` is written the SI way."""

    symbol: str
    dimension: Dimension
    factor: Fraction
    offset: Fraction = Fraction(0)


_INCH = Fraction(254, 10_000)
_FOOT = 12 * _INCH
_POUND = Fraction(45_359_237, 100_000_000)
_GRAVITY = Fraction(980_665, 100_000)
_LBF = _POUND * _GRAVITY
_US_GALLON = 231 * _INCH**3
_IMP_GALLON = Fraction(454_609, 100_000_000)
# The one factor that is no fraction: pi to 50 decimals, far beyond any digit that is ever shown.
_PI = Fraction(314159265358979323846264338327950288419716939937510, 10**50)
_MERCURY = Fraction(135_951, 10)  # kg/m³, the conventional density behind "inch of mercury (conventional)"

_LINEAR: Mapping[Dimension, Mapping[str, Fraction | int]] = {
    Dimension.LENGTH: {
        "m": 1,
        "cm": Fraction(1, 100),
        "mm": Fraction(1, 1000),
        "µm": Fraction(1, 10**6),
        "km": 1000,
        "in": _INCH,
        "ft": _FOOT,
        "mil": _INCH / 1000,
    },
    Dimension.VOLUME: {
        "m³": 1,
        "dm³": Fraction(1, 1000),
        "L": Fraction(1, 1000),
        "dL": Fraction(1, 10**4),
        "cL": Fraction(1, 10**5),
        "mL": Fraction(1, 10**6),
        "cm³": Fraction(1, 10**6),
        "mm³": Fraction(1, 10**9),
        "in³": _INCH**3,
        "US gal": _US_GALLON,
        "US qt": _US_GALLON / 4,
        "US pt": _US_GALLON / 8,
        "US fl oz": _US_GALLON / 128,
        "imp gal": _IMP_GALLON,
        "imp qt": _IMP_GALLON / 4,
        "imp pt": _IMP_GALLON / 8,
        "imp fl oz": _IMP_GALLON / 160,
    },
    Dimension.PRESSURE: {
        "Pa": 1,
        "hPa": 100,
        "kPa": 1000,
        "MPa": 10**6,
        "N/mm²": 10**6,
        "bar": 10**5,
        "mbar": 100,
        "psi": _LBF / _INCH**2,
        "atm": 101_325,
        "kgf/cm²": _GRAVITY * 10**4,
        "inHg": _MERCURY * _GRAVITY * _INCH,
    },
    Dimension.MASS: {
        "kg": 1,
        "g": Fraction(1, 1000),
        "mg": Fraction(1, 10**6),
        "t": 1000,
        "lb": _POUND,
        "oz": _POUND / 16,
    },
    Dimension.TIME: {"s": 1, "ms": Fraction(1, 1000), "min": 60, "h": 3600, "d": 86_400},
    Dimension.ANGLE: {"°": 1, "′": Fraction(1, 60), "″": Fraction(1, 3600), "rad": 180 / _PI, "turn": 360},
    Dimension.COUNT: {"": 1},
    Dimension.RATIO: {"%": Fraction(1, 100)},
    Dimension.FORCE: {
        "N": 1,
        "daN": 10,
        "kN": 1000,
        "lbf": _LBF,
        "kgf": _GRAVITY,
        "ozf": _LBF / 16,
    },
    Dimension.ROTATION: {"r/min": 1, "r/s": 60},
    Dimension.FLOW: {
        "m³/s": 1,
        "m³/h": Fraction(1, 3600),
        "L/s": Fraction(1, 1000),
        "L/min": Fraction(1, 60_000),
        "L/h": Fraction(1, 3_600_000),
        "mL/min": Fraction(1, 60_000_000),
        "US gal/min": _US_GALLON / 60,
        "imp gal/min": _IMP_GALLON / 60,
    },
    Dimension.VOLTAGE: {"V": 1, "mV": Fraction(1, 1000), "kV": 1000},
    Dimension.CURRENT: {"A": 1, "mA": Fraction(1, 1000)},
    Dimension.RESISTANCE: {"Ω": 1, "mΩ": Fraction(1, 1000), "kΩ": 1000, "MΩ": 10**6},
    Dimension.DENSITY: {"kg/m³": 1, "kg/L": 1000, "g/cm³": 1000},
    Dimension.TORQUE: {
        "N·m": 1,
        "N·cm": Fraction(1, 100),
        "cN·m": Fraction(1, 100),
        "N·mm": Fraction(1, 1000),
        "daN·m": 10,
        "kN·m": 1000,
        "lbf·ft": _LBF * _FOOT,
        "lbf·in": _LBF * _INCH,
        "ozf·in": _LBF / 16 * _INCH,
        "kgf·m": _GRAVITY,
        "kgf·cm": _GRAVITY / 100,
    },
}

_DEGREES: Mapping[str, tuple[Fraction, Fraction]] = {
    "K": (Fraction(1), Fraction(0)),
    "°C": (Fraction(1), Fraction(27_315, 100)),
    "°F": (Fraction(5, 9), Fraction(45_967, 180)),
}


def _table() -> dict[str, Unit]:
    units = {
        symbol: Unit(symbol, dimension, Fraction(factor))
        for dimension, factors in _LINEAR.items()
        for symbol, factor in factors.items()
    }
    for symbol, (factor, offset) in _DEGREES.items():
        units[symbol] = Unit(symbol, Dimension.TEMPERATURE, factor, offset)
    return units


UNITS: Mapping[str, Unit] = MappingProxyType(_table())
"""Every unit by the symbol it is printed with; the unit of a count has an empty symbol."""

PLAIN_NUMBER = Unit("", Dimension.RATIO, Fraction(1))
"""The unit of a number that measures nothing, such as a coefficient of friction."""

DIFFERENCES: Mapping[str, Unit] = MappingProxyType(
    {symbol: Unit(symbol, Dimension.TEMPERATURE_DIFFERENCE, factor) for symbol, (factor, _) in _DEGREES.items()},
)
"""The degrees read as steps of temperature: without an offset."""


def _torque_spellings(symbol: str) -> set[str]:
    force, length = symbol.split("·")
    forces = TORQUE_WORDS.get(force, (force,))
    lengths = TORQUE_WORDS.get(length, (length,))
    pairs = [(one, other) for one in forces for other in lengths]
    if length in TORQUE_WORDS:  # the trade says these both ways round; m·N stays out, it is half way to mN
        pairs += [(other, one) for one, other in pairs]
    return {joint.join(pair) for pair in pairs for joint in TORQUE_JOINTS}


def _spellings() -> dict[str, Unit]:
    found: dict[str, Unit] = {}
    for symbol, unit in UNITS.items():
        written = {symbol, *FORMS.get(symbol, ())} - {"", *ANGLE_SIGNS.values()}
        if unit.dimension is Dimension.TORQUE:
            written |= _torque_spellings(symbol)
        for spelling in sorted(written):
            if found.setdefault(spelling, unit) is not unit:
                message = f"{spelling!r} names two units: {found[spelling].symbol} and {symbol}"
                raise ValueError(message)
    return found


SPELLINGS: Mapping[str, Unit] = MappingProxyType(_spellings())
"""Every accepted spelling and its unit; degrees are given as temperatures."""

LOOKALIKE_SIGNS = str.maketrans({sign: right for sign, right in LOOKALIKES.items() if len(right) == 1})
"""The look-alike signs that are one character for one, for `str.translate`."""

_LOOKALIKES = str.maketrans(dict(LOOKALIKES))


def plain_spelling(spelling: str) -> str:
    """Return the spelling with look-alike signs, runs of blanks and blanks round a joint made plain.

    A full stop behind an English abbreviation goes too: "ft.-lb." is "ft-lb".
    """
    plain = " ".join(spelling.translate(_LOOKALIKES).split())
    if plain.endswith(".") or ". " in plain or ".-" in plain:
        plain = " ".join("-".join(map(_unstopped, word.split("-"))) for word in plain.split())
    for joint in "·*-":
        plain = plain.replace(f" {joint}", joint).replace(f"{joint} ", joint)
    return plain


def _unstopped(word: str) -> str:
    stem = word.removesuffix(".")
    return stem if stem.rpartition(".")[2] in ABBREVIATIONS else word


def unit_named(spelling: str, dimension: Dimension | None = None) -> Unit | None:
    """Return the unit a spelling stands for, or None when the table does not have it.

    `dimension` is what the place takes: where it is an angle, ' and " are minutes and seconds of arc.
    """
    if dimension is Dimension.ANGLE and spelling in ANGLE_SIGNS:
        return UNITS[ANGLE_SIGNS[spelling]]
    return SPELLINGS.get(spelling) or SPELLINGS.get(plain_spelling(spelling))


def as_difference(unit: Unit) -> Unit:
    """Return a temperature unit as the unit of a temperature difference; any other unit as it is."""
    return DIFFERENCES.get(unit.symbol, unit)
