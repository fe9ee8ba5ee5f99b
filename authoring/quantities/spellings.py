"""How people type the units: plain data, read by the table of units.

A spelling that could mean two things is left out on purpose; `hints.py` says what to write instead.
"""

from __future__ import annotations

from collections.abc import Mapping

LOOKALIKES: Mapping[str, str] = {
    "⋅": "·",
    "∙": "·",
    "•": "·",
    "\u2010": "-",
    "\u2011": "-",
    "\u03bc": "\u00b5",
    "º": "°",
    "˚": "°",
    "℃": "°C",
    "℉": "°F",
    "″": '"',
    "”": '"',
    "ℓ": "l",
    "\u2126": "\u03a9",
}
"""Signs that look like the right one, and the right one."""

ANGLE_SIGNS: Mapping[str, str] = {"'": "′", "′": "′", "’": "′", '"': "″", "″": "″", "”": "″", "''": "″", "′′": "″"}
"""The signs of minutes and seconds of arc, read so only where an angle is asked for; elsewhere they are lengths."""

ABBREVIATIONS = frozenset(
    {"in", "ft", "lb", "lbs", "lbf", "oz", "gal", "qt", "pt", "cu", "deg", "mil", "hr", "hrs", "sec", "imp", "Imp"}
)
"""English abbreviations that many write with a full stop, which is then passed over; "min." stays out, a minimum."""

TORQUE_JOINTS = ("·", ".", "*", "-", " ", "")
"""What people put between the force and the length of a torque unit."""

TORQUE_WORDS: Mapping[str, tuple[str, ...]] = {
    "lbf": ("lbf", "lb", "lbs"),
    "ozf": ("ozf", "oz"),
    "ft": ("ft",),
    "in": ("in",),
}
"""The words of the torque units that the trade shortens and turns round: foot-pound, pound-foot."""

US = ("US", "U.S.", "us")
IMP = ("imp", "Imp", "imp.", "imperial", "Imperial", "UK")
"""How the nation of a volume is written, before its unit."""


def _national(nations: tuple[str, ...], words: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(f"{nation} {word}" for nation in nations for word in words)


_GALLON = ("gal", "gallon", "gallons")
_QUART = ("qt", "qts", "quart", "quarts")
_PINT = ("pt", "pts", "pint", "pints")
_FLUID_OUNCE = ("fl oz", "fl. oz.", "fl.oz", "floz", "fluid ounce", "fluid ounces")

_SHORT = {"gal": (*_GALLON, "Gal", "GAL"), "qt": _QUART, "pt": _PINT, "fl oz": _FLUID_OUNCE}
NATIONLESS: Mapping[str, str] = {word: short for short, words in _SHORT.items() for word in words}
"""Volume words that lack their nation, and the short form the nation goes before."""

FORMS: Mapping[str, tuple[str, ...]] = {
    "m": ("metre", "metres", "meter", "meters"),
    "cm": ("centimetre", "centimetres", "centimeter", "centimeters"),
    "mm": ("millimetre", "millimetres", "millimeter", "millimeters"),
    "µm": ("um", "micron", "microns", "micrometre", "micrometres"),
    "km": ("kilometre", "kilometres", "kilometer", "kilometers"),
    "in": ('"', "inch", "inches", "in."),
    "ft": ("foot", "feet"),
    "mil": ("mils", "thou"),
    "m³": ("m3", "m^3"),
    "dm³": ("dm3", "dm^3"),
    "mm³": ("mm3", "mm^3"),
    "L": ("l", "ltr", "ltrs", "litre", "litres", "liter", "liters"),
    "dL": ("dl",),
    "cL": ("cl",),
    "mL": ("ml", "mls", "millilitre", "millilitres", "milliliter", "milliliters"),
    "cm³": ("cc", "ccm", "cm3", "cm^3"),
    "in³": ("in3", "in^3", "cu in", "cu. in.", "cu.in"),
    "US gal": _national(US, _GALLON),
    "US qt": _national(US, _QUART),
    "US pt": _national(US, _PINT),
    "US fl oz": _national(US, _FLUID_OUNCE),
    "imp gal": _national(IMP, _GALLON),
    "imp qt": _national(IMP, _QUART),
    "imp pt": _national(IMP, _PINT),
    "imp fl oz": _national(IMP, _FLUID_OUNCE),
    "psi": ("PSI", "lbf/in²", "lbf/in2", "lbf/in^2"),
    "N/mm²": ("N/mm2", "N/mm^2"),
    "bar": ("bars",),
    "kgf/cm²": ("kgf/cm2", "kgf/cm^2"),
    "inHg": ("in Hg",),
    "kg": ("kilogram", "kilograms"),
    "g": ("gram", "grams"),
    "t": ("tonne", "tonnes"),
    "lb": ("lbs", "lbm", "pound", "pounds"),
    "oz": ("ounce", "ounces"),
    "s": ("sec", "secs", "second", "seconds"),
    "min": ("mins", "minute", "minutes"),
    "h": ("hr", "hrs", "hour", "hours"),
    "d": ("day", "days"),
    "°": ("deg", "degs", "degree", "degrees"),
    "′": ("arcmin", "arcmins", "minute of arc", "minutes of arc"),
    "″": ("arcsec", "arcsecs", "second of arc", "seconds of arc"),
    "rad": ("radian", "radians"),
    "turn": ("turns", "rev", "revs", "revolution", "revolutions"),
    "": ("piece", "pieces", "pc", "pcs"),
    "N": ("newton", "newtons"),
    "r/min": ("rpm", "RPM", "rev/min", "revs/min", "1/min", "min-1", "min⁻¹", "min^-1", "revolutions per minute"),
    "r/s": ("rev/s", "revs/s", "1/s"),
    "m³/s": ("m3/s", "m^3/s"),
    "m³/h": ("m3/h", "m^3/h"),
    "L/s": ("l/s",),
    "L/min": ("l/min", "lpm", "litres per minute", "liters per minute"),
    "L/h": ("l/h",),
    "mL/min": ("ml/min",),
    "US gal/min": (*(f"{one}/min" for one in _national(US, _GALLON)), "US gpm"),
    "imp gal/min": (*(f"{one}/min" for one in _national(IMP, _GALLON)), "imp gpm"),
    "kg/m³": ("kg/m3", "kg/m^3"),
    "kg/L": ("kg/l", "kg/dm³", "kg/dm3", "kg/dm^3"),
    "g/cm³": ("g/cm3", "g/cm^3", "g/mL", "g/ml", "g/cc"),
    "V": ("volt", "volts"),
    "mV": ("millivolt", "millivolts"),
    "A": ("amp", "amps", "ampere", "amperes"),
    "mA": ("milliamp", "milliamps"),
    "Ω": ("ohm", "ohms", "Ohm", "Ohms"),
    "mΩ": ("mohm", "milliohm", "milliohms"),
    "kΩ": ("kohm", "kilohm", "kilohms"),
    "MΩ": ("Mohm", "megohm", "megohms"),
    "°C": ("degC", "deg C", "° C", "degrees C", "degrees Celsius", "degree Celsius", "Celsius", "celsius"),
    "°F": ("degF", "deg F", "° F", "degrees F", "degrees Fahrenheit", "degree Fahrenheit", "Fahrenheit", "fahrenheit"),
    "K": ("kelvin", "kelvins"),
    "N·m": tuple(f"newton{joint}{word}" for joint in " -" for word in ("metre", "metres", "meter", "meters")),
    "lbf·ft": (
        *(f"{one}{joint}{other}" for one in ("foot", "feet") for joint in " -" for other in ("lb", "lbs", "lbf")),
        "ft pounds",
        "ft-pounds",
        "foot-pound",
        "foot-pounds",
        "foot pounds",
        "pound-foot",
        "pound-feet",
        "pound feet",
        "ft. lb.",
        "ft. lbs.",
    ),
    "lbf·in": (
        *(f"inch{joint}{other}" for joint in " -" for other in ("lb", "lbs", "lbf")),
        "inch-pound",
        "inch-pounds",
        "inch pounds",
        "pound-inch",
        "pound-inches",
        "in. lb.",
        "in. lbs.",
    ),
}
"""The spellings of each unit beside its own symbol."""
