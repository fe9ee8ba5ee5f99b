"""What to write where a unit is missing or stands in the wrong place. Loaded by a refusal alone."""

from __future__ import annotations

from authoring.quantities.units import Dimension, Unit, plain_spelling

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
    ("lb", Dimension.PRESSURE): 'For a pressure write "psi".',
    ("kg", Dimension.PRESSURE): 'For a pressure write "kgf/cm²", "bar" or "kPa".',
    ("kg", Dimension.TORQUE): 'For torque write "N·m" or "kgf·m".',
    ("kgf", Dimension.TORQUE): 'For torque write "kgf·m" or "kgf·cm".',
    ("°C", Dimension.ANGLE): 'For an angle write "°" alone.',
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
