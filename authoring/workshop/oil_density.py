"""What volume has a petroleum oil at another temperature, from its density?

Formula:
    alpha = K0/rho² + K1/rho + K2
    VCF = exp(-alpha d (1 + 0.8 alpha d)), d = T - base
    volume at base = VCF volume at T

Symbols:
    alpha: coefficient of volume at the base, for each degree of the scale that the constants are made for
    rho: density at the base temperature in kg/m³
    K0, K1, K2: constants of the group of oils; K1 = 0.6278 for lubricating oils, base 15 °C, degrees of Celsius
    T, base: temperatures in K
    VCF: volume correction factor, a share

Source: API Manual of Petroleum Measurement Standards, chapter 11.1 (ASTM D1250-04, IP 200/04), as restated by others.
A tabulated factor was read for a gasoline alone; none for a lubricating oil.

Assumptions: the pressure is that of the open air; the rounding steps that trade in oil prescribes are left out, which
moves the fifth decimal.

Limits: 801 to 1163 kg/m³ for lubricating oils, -50 to 150 °C.
"""

from __future__ import annotations

import math
from fractions import Fraction

from msgspec import Struct

from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval

_CURVATURE = Fraction(8, 10)


class OilGroup(Struct, frozen=True):
    """The constants of a group of oils: K0, K1, K2, the base in K, the size of a degree in K, densities in kg/m³.

    The constants of a Celsius set and of a Fahrenheit set look alike and are not: the degree belongs to them.
    """

    k0: Fraction
    k1: Fraction
    k2: Fraction
    base: Fraction
    degree: Fraction
    densities: Interval


LUBRICATING_OIL = OilGroup(
    k0=Fraction(0),
    k1=Fraction(6278, 10_000),
    k2=Fraction(0),
    base=Fraction(28_815, 100),
    degree=Fraction(1),
    densities=Interval(Fraction(801), Fraction(1163)),
)
"""Lubricating oils, base 15 °C (tables 53D and 54D); the densities are those of the 60 °F set, cut to whole numbers."""

_TEMPERATURES = Interval(Fraction(22_315, 100), Fraction(42_315, 100))
"""-50 to 150 °C, the range of the 2004 edition; from memory."""


def expansion_of_oil(density: Fraction, group: OilGroup = LUBRICATING_OIL) -> Fraction | Impossible:
    """Return the coefficient of volume expansion at the base temperature, for each K: alpha as above.

    `density` at the base temperature in kg/m³.
    Impossible outside the densities that the group is made for.
    """
    if density not in group.densities:
        return Impossible(
            "The density is outside the range for which the formula holds.",
            "Check the unit: lubricating oils have about 850 to 900 kg/m³ at 15 °C.",
        )
    return (group.k0 / density**2 + group.k1 / density + group.k2) / group.degree


def volume_correction(
    temperature: Fraction,
    density: Fraction,
    group: OilGroup = LUBRICATING_OIL,
) -> float | Impossible:
    """Return VCF: the volume at the base temperature as a share of the volume at `temperature` (K).

    `density` at the base temperature in kg/m³.
    Limits: the group's densities, -50 to 150 °C, pressure of the open air.
    The rounding steps that trade in oil prescribes are left out; they move the fifth decimal.
    """
    if temperature not in _TEMPERATURES:
        return Impossible(
            "The temperature is outside the range for which the formula holds.",
            "Check the unit; the formula holds from -50 to 150 °C.",
        )
    alpha = expansion_of_oil(density, group)
    if isinstance(alpha, Impossible):
        return alpha
    grown = alpha * (temperature - group.base)
    return math.exp(-grown * (1 + _CURVATURE * grown))


def oil_volume_at(
    temperature: Fraction,
    volume: Fraction,
    measured_at: Fraction,
    density: Fraction,
    group: OilGroup = LUBRICATING_OIL,
) -> float | Impossible:
    """Return the volume in m³ at `temperature` of what had `volume` at `measured_at` (both K): V * VCF(T1) / VCF(T).

    The limits are those of `volume_correction`.
    """
    before = volume_correction(measured_at, density, group)
    after = volume_correction(temperature, density, group)
    if isinstance(before, Impossible):
        return before
    return after if isinstance(after, Impossible) else float(volume) * before / after
