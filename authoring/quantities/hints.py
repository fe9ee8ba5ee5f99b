"""Unit spellings that are refused on purpose: why each misleads, and what to write."""

from __future__ import annotations

from authoring.quantities.units import SPELLINGS, Dimension, Unit, plain_spelling

EXAMPLES: dict[Dimension, tuple[str, ...]] = {
    Dimension.TORQUE: ("N·m", "lbf·ft"),
    Dimension.LENGTH: ("mm", "in"),
    Dimension.VOLUME: ("L", "mL"),
    Dimension.TEMPERATURE: ("°C", "°F"),
    Dimension.TEMPERATURE_DIFFERENCE: ("K", "°C"),
    Dimension.PRESSURE: ("kPa", "psi"),
    Dimension.MASS: ("kg", "g"),
    Dimension.TIME: ("min", "s"),
    Dimension.ANGLE: ("°", "turn"),
    Dimension.COUNT: ("pieces",),
    Dimension.FORCE: ("N", "lbf"),
    Dimension.RATIO: ("%",),
    Dimension.ROTATION: ("r/min",),
    Dimension.FLOW: ("L/min", "US gal/min"),
    Dimension.VOLTAGE: ("V", "mV"),
    Dimension.CURRENT: ("A", "mA"),
    Dimension.RESISTANCE: ("Ω", "kΩ"),
    Dimension.DENSITY: ("kg/m³", "kg/L"),
}
"""Units to offer for each dimension."""

_NATIONLESS = {
    "gal": ("gal", "gallon", "gallons", "Gal", "GAL"),
    "qt": ("qt", "qts", "quart", "quarts"),
    "pt": ("pt", "pts", "pint", "pints"),
    "fl oz": ("fl oz", "fl. oz.", "fl.oz", "floz", "fluid ounce", "fluid ounces"),
}
NATIONLESS: dict[str, str] = {word: short for short, words in _NATIONLESS.items() for word in words}
"""Volume words that differ between the two nations, and the short form the nation goes before."""

_ENERGY = ("J", "kJ", "Joule", "joule", "joules", "Wh", "kWh", "cal", "kcal")
_NANO = ("nm", "NM", "nM", "nanometre", "nanometres")
_FORCE_LAST = ("m·N", "m.N", "m*N", "m-N", "m N", "mNewton")
_WEIGHT = ("kg·m", "kg.m", "kg*m", "kg-m", "kg m", "kgm", "mkg", "mkp", "kpm", "kp·m")
_PER_FOOT = ("lb/ft", "lbs/ft", "lbf/ft", "ft/lb", "ft/lbs", "ft/lbf", "foot/pounds", "lb/in", "in/lb", "lbs/in")

MISLEADING: dict[str, tuple[str, str]] = {
    "mN": ('"mN" is the millinewton, a force, and never a newton metre.', 'For torque write "N·m".'),
    "mN·m": ('"mN·m" is a thousandth of a newton metre and is easily misread.', 'Write it in "N·m" or "N·mm".'),
    "C": ('"C" alone is the coulomb, not a temperature.', 'Write "°C" (or "degC").'),
    "F": ('"F" alone is the farad, not a temperature.', 'Write "°F" (or "degF").'),
    "'": ("An apostrophe means feet to some and minutes of arc to others.", 'Write "ft" or "°".'),
    "′": ("A prime means feet to some and minutes of arc to others.", 'Write "ft" or "°".'),
    "mPa": ('"mPa" is a thousandth of a pascal.', 'For megapascal write "MPa".'),
    "M": ('"M" is not a unit.', 'Write "m" for metre or "min" for minute.'),
    "ton": ('A "ton" is long, short or metric.', 'Write the mass in "t" (1000 kg), "kg" or "lb".'),
    "tons": ('A "ton" is long, short or metric.', 'Write the mass in "t" (1000 kg), "kg" or "lb".'),
    "#": ('"#" is not a unit.', 'Write "lb".'),
}
"""Spellings that have their own reason and cure."""


def unit_advice(spelling: str, dimension: Dimension | None) -> tuple[str, str]:
    """Return reason and cure for a spelling the table does not have; `dimension` is what the place takes."""
    plain = plain_spelling(spelling)
    if plain in MISLEADING:
        return MISLEADING[plain]
    if plain in NATIONLESS:
        short = NATIONLESS[plain]
        return (
            f'"{plain}" is one volume in the US and another in the UK.',
            f'Write "US {short}" or "imp {short}", or litres ("L").',
        )
    for words, reason, cure in (
        (_ENERGY, f'"{plain}" is a unit of energy; torque is a turning force.', 'For torque write "N·m".'),
        (_NANO, f'"{plain}" is not the newton metre: small n is nano, NM a nautical mile.', 'Write "N·m".'),
        (_FORCE_LAST, f'"{plain}" is easily read as millinewton.', 'Write the newton first: "N·m".'),
        (_WEIGHT, f'"{plain}" multiplies a mass, and torque needs a force.', 'Write "kgf·m".'),
        (_PER_FOOT, f'"{plain}" divides; torque is force times length.', 'Write "lbf·ft" or "lbf·in".'),
    ):
        if plain in words:
            return reason, cure
    shown = plain if len(plain) <= _LONG else plain[:_LONG] + "…"
    near = nearest_spelling(plain, dimension)
    if near:
        return f'"{shown}" is not a unit known here.', f'Did you mean "{near}"?'
    return f'"{shown}" is not a unit known here.', offer(dimension)


_LONG = 30


def nearest_spelling(plain: str, dimension: Dimension | None) -> str | None:
    """Return the known spelling closest to `plain`, of the dimension asked for when there is one."""
    known = [spelling for spelling, unit in SPELLINGS.items() if dimension in (None, _kind(unit, dimension))]
    folded = plain.casefold()
    for spelling in known:
        if spelling.casefold() == folded:
            return spelling
    if "/" in plain:  # a quotient is near nothing: "m/s" is no mistyped "ms"
        return None
    import difflib  # noqa: PLC0415  # 2 ms that a quantity which is read need not pay

    found = difflib.get_close_matches(plain[:_LONG], known, n=1, cutoff=0.6)
    return found[0] if found else None


def _kind(unit: Unit, wanted: Dimension | None) -> Dimension:
    if unit.dimension is Dimension.TEMPERATURE and wanted is Dimension.TEMPERATURE_DIFFERENCE:
        return wanted
    return unit.dimension


def offer(dimension: Dimension | None) -> str:
    """Return a cure that names units fit for the place."""
    if dimension is None:
        return 'Write a number and its unit, such as "42 N·m", "1.5 mm" or "90 °C".'
    if dimension is Dimension.COUNT:
        return 'Write whole pieces, such as "4".'
    if dimension is Dimension.RATIO:
        return 'Write a plain number, such as "0.14" or "0.12 to 0.16", or a percentage.'
    units = " or ".join(f'"{symbol}"' for symbol in EXAMPLES[dimension])
    return f"Write it in a unit of {dimension.value}, such as {units}."


_MEANT: dict[tuple[str, Dimension], str] = {
    ("lb", Dimension.FORCE): 'For a force write "lbf".',
    ("kg", Dimension.FORCE): 'For a force write "kgf" or "N".',
    ("oz", Dimension.VOLUME): 'For a volume write "US fl oz" or "imp fl oz".',
    ("m", Dimension.TIME): 'For minutes write "min".',
    ("°", Dimension.TEMPERATURE): 'Say which degrees: "°C" or "°F".',
    ("°", Dimension.TEMPERATURE_DIFFERENCE): 'Say which degrees: "°C" or "°F".',
    ("N", Dimension.TORQUE): 'For torque write "N·m".',
    ("lbf", Dimension.TORQUE): 'For torque write "lbf·ft" or "lbf·in".',
    ("lb", Dimension.TORQUE): 'For torque write "lbf·ft" or "lbf·in".',
    ("ft", Dimension.TORQUE): 'For torque write "lbf·ft".',
}


def wrong_dimension(spelling: str, unit: Unit, wanted: Dimension) -> tuple[str, str]:
    """Return reason and cure for a good unit in the wrong place."""
    reason = f'"{plain_spelling(spelling)}" is a unit of {unit.dimension.value}, and this place takes {wanted.value}.'
    if unit.symbol == "%":
        return reason, 'Write a percentage behind a value, such as "42 N·m ± 10 %".'
    return reason, _MEANT.get((unit.symbol, wanted)) or offer(wanted)
