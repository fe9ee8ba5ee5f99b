"""How does a bore grow on heating, and how hot must it be to go over a shaft with room to spare?

Formula:
    d_hot = d (1 + alpha dT)
    T = T0 + (shaft + clearance - bore)/(alpha bore)

Symbols:
    d, bore, shaft, clearance: in m
    dT: change of temperature in K
    T, T0: temperature of the part with the bore, and that at which it was measured, in K
    alpha: coefficient of length for each K

Source: OpenStax, University Physics volume 2, Thermal Expansion, dL = alpha L dT, and there also that a hole grows as
if it were filled; the same for shrink fits in an engineering reference, dT = delta/(alpha d).

Assumptions: the whole part has that temperature; a bore heated from within only grows less.

Limits: alpha is taken as constant, and alloys differ by a tenth.
What heat a seal, a cage or a hardened ring bears is for its maker to say.
"""

from __future__ import annotations

import enum
from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

from authoring.workshop.impossible import Impossible


class Metal(enum.Enum):
    """A metal whose coefficient is tabulated."""

    STEEL = "iron or steel"
    ALUMINIUM = "aluminium"
    BRASS = "brass"
    COPPER = "copper"


EXPANSIONS: Mapping[Metal, Fraction] = MappingProxyType(
    {
        Metal.STEEL: Fraction(12, 10**6),
        Metal.ALUMINIUM: Fraction(25, 10**6),
        Metal.BRASS: Fraction(19, 10**6),
        Metal.COPPER: Fraction(17, 10**6),
    }
)
"""Coefficients of length for each K, near room temperature.

OpenStax, University Physics volume 2, table of thermal expansion coefficients.
Alloys differ: the steel of a bearing maker's table has 10.9 times 10^-6.
"""


def grown(diameter: Fraction, step: Fraction, expansion: Fraction) -> Fraction:
    """Return the diameter after a change of temperature: d * (1 + alpha * dT).

    `step` in K, negative for a shaft that is cooled.
    Assumption: the whole part has that temperature; a bore heated from within only grows less.
    """
    return diameter * (1 + expansion * step)


def temperature_to_fit(
    bore: Fraction,
    shaft: Fraction,
    clearance: Fraction,
    measured_at: Fraction,
    expansion: Fraction,
) -> Fraction | Impossible:
    """Return how hot the part with the bore must be, in K: T = T0 + (shaft + clearance - bore) / (alpha * bore).

    `bore` and `clearance` in m; the careful choice is the smallest bore and the largest shaft that the limits allow.
    `measured_at` (T0) is the temperature at which the bore was measured.
    `shaft` is the shaft as it will be when it is joined; for a cooled one give `grown(shaft, step, alpha)`.
    It is T0 when the parts go together with that clearance as they are.
    Limits: alpha is taken as constant, which the text book finds good enough in practice.
    What heat a seal, a cage or a hardened ring bears is for its maker to say.
    Impossible for sizes or coefficients that are not above zero, and for a negative clearance.
    """
    if bore <= 0 or shaft <= 0 or expansion <= 0 or clearance < 0:
        return Impossible(
            "Diameters and the expansion are above zero, and the clearance is not below it.",
            "Check the sizes and their units.",
        )
    lacking = max(shaft + clearance - bore, Fraction(0))
    return measured_at + lacking / (expansion * bore)
