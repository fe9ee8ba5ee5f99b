"""Unit spellings that are refused on purpose: why each misleads, and what to write. Loaded by a refusal alone."""

from __future__ import annotations

import difflib

from authoring.quantities.hints import offer
from authoring.quantities.spellings import NATIONLESS
from authoring.quantities.units import SPELLINGS, Dimension, Unit, plain_spelling

_MASS_IN_TORQUE = (
    "kg·m",
    "kg.m",
    "kg*m",
    "kg-m",
    "kg m",
    "kgm",
    "m·kg",
    "m-kg",
    "m.kg",
    "m kg",
    "mkg",
    "kg·cm",
    "kgcm",
)
_KILOPOND = ("kp", "kp·m", "kp-m", "kp.m", "kp m", "kpm", "mkp")
_PER_LENGTH = ("lb/ft", "lbs/ft", "lbf/ft", "ft/lb", "ft/lbs", "ft/lbf", "foot/pounds", "lb/in", "in/lb", "lbs/in")
_MASS_ON_AREA = ("lb/in²", "lb/in2", "lbs/in²", "lbs/in2", "lb/sq in", "lbs/sq in", "#/in²")
_GAUGE = ("psig", "barg", "kPag", "MPag", "psia", "bara", "kPaa", "ata", "atü", "atu")
_SAYS_MASS = '"{0}" multiplies a mass, and torque needs a force.'
_SMALL_FIRST = '"{0}" is easily read as millinewton.'

_ALIKE: tuple[tuple[tuple[str, ...], str, str], ...] = (
    (
        ("J", "kJ", "Joule", "joule", "joules", "Wh", "kWh", "W·h", "kW·h", "kW h", "cal", "kcal", "Nms", "ft-lbs/s"),
        '"{0}" is a unit of energy; torque is a turning force.',
        'For torque write "N·m".',
    ),
    (
        ("nm", "NM", "nM", "nanometre", "nanometres"),
        '"{0}" is not the newton metre: small n is nano, NM a nautical mile.',
        'Write "N·m".',
    ),
    (("m·N", "m.N", "m*N", "m-N", "m N", "mNewton"), _SMALL_FIRST, 'Write the newton first: "N·m".'),
    (
        ("mN·m", "mNm", "mN m", "mN.m", "mN-m"),
        '"{0}" is a thousandth of a newton metre and is easily misread.',
        'Write it in "N·m" or "N·mm".',
    ),
    (
        ("dN·m", "dNm", "dN m", "dN.m", "dN-m"),
        '"{0}" is a tenth of a newton metre, and is taken for daN·m, ten of them.',
        'Write it in "N·m".',
    ),
    (_MASS_IN_TORQUE, _SAYS_MASS, 'Write "kgf·m" or "kgf·cm".'),
    (
        _KILOPOND,
        '"{0}" is in kiloponds, an old name of the kilogram-force.',
        'Write "kgf" for force or "kgf·m" for torque.',
    ),
    (_PER_LENGTH, '"{0}" divides; torque is force times length.', 'Write "lbf·ft" or "lbf·in".'),
    (_MASS_ON_AREA, '"{0}" puts a mass on an area, and pressure is a force on an area.', 'Write "psi".'),
    (("kg/cm²", "kg/cm2", "kg/cm^2", "kp/cm²", "at"), '"{0}" is an old pressure in kilograms.', 'Write "kgf/cm²".'),
    (
        _GAUGE,
        '"{0}" says from where the pressure is counted, which is no part of the unit.',
        'Write "psi" or "bar", and say gauge or absolute in the value\'s name.',
    ),
    (
        ("C", "c"),
        '"{0}" alone is no temperature: C is the coulomb.',
        'Write "°C" (or "degC").',
    ),
    (
        ("F", "f"),
        '"{0}" alone is no temperature: F is the farad.',
        'Write "°F" (or "degF").',
    ),
    (("°K", "degK", "deg K", "degrees K", "degrees kelvin"), "The kelvin has no degree sign.", 'Write "K".'),
    (("k", "kilo", "kilos"), '"{0}" is only a prefix: a thousand of something.', 'Write "kg", "kΩ" or "K" for kelvin.'),
    (
        ("'", "′", "’"),
        "An apostrophe or prime means feet to some and minutes of arc to others.",
        'Write "ft" or "arcmin".',
    ),
    (("''", "′′"), "Two apostrophes mean inches to some and seconds of arc to others.", 'Write "in" or "arcsec".'),
    (
        ("ton", "tons", "tonf"),
        '"{0}" is long, short or metric.',
        'Write the mass in "t" (1000 kg), "kg" or "lb", a force in "kN".',
    ),
    (("centigrade", "degrees centigrade", "deg centigrade"), '"{0}" is an old name.', 'Write "°C".'),
    (("gr", "grs"), '"{0}" is a grain to some and a gram to others.', 'For gram write "g".'),
    (("gm", "gms", "grm"), '"{0}" is not the sign of the gram.', 'Write "g".'),
    (
        ("cup", "cups", "tsp", "tbsp", "teaspoon", "teaspoons", "tablespoon", "tablespoons"),
        '"{0}" differs from one country to the next.',
        'Write millilitres ("mL").',
    ),
    (
        ("gpm", "GPM", "gal/min", "gallons per minute"),
        'A gallon in "{0}" is one volume in the US and another in the UK.',
        'Write "US gal/min", "imp gal/min" or "L/min".',
    ),
    (
        ("US oz", "imp oz", "oz fl"),
        '"{0}" is a weight to some and a volume to others.',
        'Write "US fl oz" or "imp fl oz" for a volume, "oz" for a weight.',
    ),
    (("rpm/min", "r/min/min", "rpm/m"), '"{0}" says "each minute" twice.', 'Write "r/min".'),
    (
        ("U/min", "u/min", "t/min", "tr/min"),
        '"{0}" is how other languages write the speed of rotation.',
        'Write "r/min".',
    ),
)

MISLEADING: dict[str, tuple[str, str]] = {
    "mN": (
        '"mN" is the millinewton, a force, and never a newton metre.',
        'Write "N·m" for torque; a force so small stands in "N".',
    ),
    "mPa": ('"mPa" is a thousandth of a pascal.', 'For megapascal write "MPa".'),
    "M": ('"M" is not a unit.', 'Write "m" for metre or "min" for minute.'),
    "Mm": ('"Mm" is a thousand kilometres.', 'Write "mm".'),
    "ML": ('"ML" is a million litres.', 'Write "mL".'),
    "#": ('"#" is not a unit.', 'Write "lb".'),
    **{one: (reason.format(one), cure) for words, reason, cure in _ALIKE for one in words},
}
"""Spellings that have their own reason and cure."""

UNPLACED: dict[str, str] = {
    word: kind
    for kind, words in {
        "power": ("W", "kW", "MW", "hp", "HP", "PS", "bhp", "watt", "watts"),
        "area": ("m²", "cm²", "mm²", "m2", "cm2", "mm2", "in²", "in2", "ft²", "sq in", "sq ft"),
        "speed": ("m/s", "km/h", "mph", "kph", "kmh", "mm/s"),
        "frequency": ("Hz", "kHz"),
        "viscosity": ("cSt", "mm²/s", "mm2/s", "cP"),
        "charge": ("Ah", "A·h", "mAh"),
        "stiffness": ("N/m", "N/mm", "kN/m"),
        "air flow": ("cfm", "CFM", "ft³/min"),
        "consumption": ("mpg", "L/100km"),
    }.items()
    for word in words
}
"""Good units of what no value of a procedure states, and what they measure."""


def unit_advice(spelling: str, dimension: Dimension | None) -> tuple[str, str]:
    """Return reason and cure for a spelling the table does not have; `dimension` is what the place takes."""
    plain = plain_spelling(spelling)
    for typed in (spelling, plain):
        if typed in MISLEADING:
            return MISLEADING[typed]
        if typed in UNPLACED:
            return f'"{typed}" is a unit of {UNPLACED[typed]}, which is not read here.', offer(dimension)
    if plain in NATIONLESS:
        short = NATIONLESS[plain]
        return (
            f'"{plain}" is one volume in the US and another in the UK.',
            f'Write "US {short}" or "imp {short}", or litres ("L").',
        )
    if spelling.endswith(".") and spelling[:-1] in SPELLINGS:
        return "The sign of a unit has no full stop.", f'Write "{spelling[:-1]}".'
    shown = plain if len(plain) <= _LONG else plain[:_LONG] + "…"
    near = nearest_spelling(plain, dimension)
    if near:
        return f'"{shown}" is not a unit known here.', f'Did you mean "{near}"?'
    return f'"{shown}" is not a unit known here.', offer(dimension)


_LONG = 30
_ALIKE_ENOUGH = 0.75


def nearest_spelling(plain: str, dimension: Dimension | None) -> str | None:
    """Return the known spelling closest to `plain`, of the dimension asked for when there is one.

    The first letter must be the same, since a prefix that is added or left out changes the size a thousandfold.
    """
    known = [spelling for spelling, unit in SPELLINGS.items() if dimension in (None, _kind(unit, dimension))]
    folded = plain.casefold()
    for spelling in known:
        if spelling.casefold() == folded:
            return spelling
    if "/" in plain:  # a quotient is near nothing: "m/s" is no mistyped "ms"
        return None
    alike = [spelling for spelling in known if spelling[0].casefold() == folded[:1]]
    found = difflib.get_close_matches(plain[:_LONG], alike, n=1, cutoff=_ALIKE_ENOUGH)
    return found[0] if found else None


def _kind(unit: Unit, wanted: Dimension | None) -> Dimension:
    if unit.dimension is Dimension.TEMPERATURE and wanted is Dimension.TEMPERATURE_DIFFERENCE:
        return wanted
    return unit.dimension
