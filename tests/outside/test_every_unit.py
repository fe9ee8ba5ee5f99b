"""Every unit of the table built anew from the constants of another library, prefix by prefix."""

from __future__ import annotations

import pytest
from scipy import constants as c

from authoring.quantities.units import DIFFERENCES, UNITS

SQUARE_INCH, SQUARE_CM = c.inch**2, c.centi**2
LITRE = c.liter
BUILT: dict[str, float] = {
    "m": 1, "cm": c.centi, "mm": c.milli, "µm": c.micron, "km": c.kilo,
    "in": c.inch, "ft": c.foot, "mil": c.mil,
    "m³": 1, "dm³": c.deci**3, "L": LITRE, "dL": LITRE * c.deci, "cL": LITRE * c.centi, "mL": LITRE * c.milli,
    "cm³": c.centi**3, "mm³": c.milli**3, "in³": c.inch**3,
    "US gal": c.gallon, "US qt": c.gallon / 4, "US pt": c.gallon / 8, "US fl oz": c.fluid_ounce,
    "imp gal": c.gallon_imp, "imp qt": c.gallon_imp / 4, "imp pt": c.gallon_imp / 8, "imp fl oz": c.fluid_ounce_imp,
    "Pa": 1, "hPa": c.hecto, "kPa": c.kilo, "MPa": c.mega, "N/mm²": 1 / c.milli**2,
    "bar": c.bar, "mbar": c.bar * c.milli, "psi": c.lbf / SQUARE_INCH, "atm": c.atm, "kgf/cm²": c.kgf / SQUARE_CM,
    "inHg": 13_595.1 * c.g * c.inch,
    "kg": 1, "g": c.gram, "mg": c.gram * c.milli, "t": c.metric_ton, "lb": c.pound, "oz": c.oz,
    "s": 1, "ms": c.milli, "min": c.minute, "h": c.hour, "d": c.day,
    "°": 1, "′": c.arcmin / c.degree, "″": c.arcsec / c.degree, "rad": 1 / c.degree, "turn": 2 * c.pi / c.degree,
    "": 1, "%": c.centi,
    "N": 1, "daN": c.deka, "kN": c.kilo, "lbf": c.lbf, "kgf": c.kgf, "ozf": c.oz * c.g,
    "r/min": 1, "r/s": c.minute,
    "m³/s": 1, "m³/h": 1 / c.hour, "L/s": LITRE, "L/min": LITRE / c.minute, "L/h": LITRE / c.hour,
    "mL/min": LITRE * c.milli / c.minute, "US gal/min": c.gallon / c.minute, "imp gal/min": c.gallon_imp / c.minute,
    "V": 1, "mV": c.milli, "kV": c.kilo, "A": 1, "mA": c.milli, "Ω": 1, "mΩ": c.milli, "kΩ": c.kilo, "MΩ": c.mega,
    "kg/m³": 1, "kg/L": 1 / LITRE, "g/cm³": c.gram / c.centi**3,
    "N·m": 1, "N·cm": c.centi, "cN·m": c.centi, "N·mm": c.milli, "daN·m": c.deka, "kN·m": c.kilo,
    "lbf·ft": c.lbf * c.foot, "lbf·in": c.lbf * c.inch, "ozf·in": c.oz * c.g * c.inch,
    "kgf·m": c.kgf, "kgf·cm": c.kgf * c.centi,
    "K": 1, "°C": 1, "°F": c.degree_Fahrenheit,
}  # fmt: skip
"""Each unit in the base unit of its dimension. Mercury at 13 595.1 kg/m³ is the convention, no constant of theirs."""


def test_every_unit_is_built() -> None:
    """A unit that is added to the table is added here too."""
    assert set(BUILT) == set(UNITS)


@pytest.mark.parametrize("symbol", BUILT)
def test_another_librarys_constants_give_the_unit(symbol: str) -> None:
    """The factor agrees to thirteen digits."""
    assert float(UNITS[symbol].factor) == pytest.approx(BUILT[symbol], rel=1e-13)


@pytest.mark.parametrize("symbol", DIFFERENCES)
def test_another_librarys_steps_of_temperature_are_ours(symbol: str) -> None:
    """A step has the size of the degree, and starts nowhere."""
    assert float(DIFFERENCES[symbol].factor) == pytest.approx(BUILT[symbol], rel=1e-13)
    assert DIFFERENCES[symbol].offset == 0


@pytest.mark.parametrize("symbol", ["K", "°C", "°F"])
@pytest.mark.parametrize("degrees", [-40, 0, 20, 451])
def test_another_library_places_the_zero_alike(symbol: str, degrees: int) -> None:
    """Each scale starts where theirs does."""
    scale = {"K": "Kelvin", "°C": "Celsius", "°F": "Fahrenheit"}[symbol]
    ours = float(degrees * UNITS[symbol].factor + UNITS[symbol].offset)
    assert ours == pytest.approx(float(c.convert_temperature(degrees, scale, "Kelvin")), abs=1e-10)
