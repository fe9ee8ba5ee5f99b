"""How does a fluid grow with its temperature, and how far does its level move by it?

Formula:
    V = V1 (1 + beta (T - T0))/(1 + beta (T1 - T0))
    level shift = beta V dT/V_marks

Symbols:
    V, V1: volume in m³ at T and at T1
    T, T1, T0: temperatures in K; T0 is where beta is stated
    dT: change of temperature in K
    beta: coefficient of volume for each K; three times that of length
    V_marks: volume in m³ between two marks

Source: OpenStax, University Physics volume 2, Thermal Expansion: dV = beta V dT.

Assumptions: beta is constant; the vessel keeps its size.

Limits: within 40 K of where beta is stated an oil differs from `oil_density` by less than a thousandth, and by more
further away; not for water near 4 °C, which shrinks on warming.
A level that moves by more than the whole way leaves its marks: how far it then stands beyond them is not known, as no
width is.
"""

from __future__ import annotations

from fractions import Fraction

from authoring.workshop.impossible import Impossible


def volume_at(
    temperature: Fraction,
    volume: Fraction,
    measured_at: Fraction,
    expansion: Fraction,
    reference: Fraction | None = None,
) -> Fraction | Impossible:
    """Return the volume that a fluid has at `temperature`: V = V0 * (1 + beta * (T - T0)) / (1 + beta * (T1 - T0)).

    `volume` in m³ was measured at `measured_at`; `expansion` is beta for each K; temperatures in K.
    `reference` (T0) is the temperature at which beta is stated; when it is left out, beta is taken to hold at
    `measured_at`, and the formula is that of the text book: V = V1 * (1 + beta * (T - T1)).
    Assumption: beta is constant and the vessel keeps its size.
    Limits: within 40 K of where beta is stated an oil differs from `oil_density` by less than a thousandth, and by more
    further away; not for water near 4 °C, which shrinks on warming.
    Impossible when beta is so large that the fluid would vanish: a coefficient typed in the wrong unit.
    """
    base = measured_at if reference is None else reference
    before = 1 + expansion * (measured_at - base)
    after = 1 + expansion * (temperature - base)
    if before <= 0 or after <= 0:
        return Impossible(
            "With this expansion the fluid would shrink to nothing.",
            "Write the expansion as a share for each kelvin; mineral oils have about 0.0007.",
        )
    return volume * after / before


def level_shift(
    volume: Fraction,
    step: Fraction,
    expansion: Fraction,
    between_marks: Fraction,
) -> Fraction | Impossible:
    """Return how far a level moves on warming, as a share of the way between two marks: beta * V * dT / volume between.

    `volume` is all the fluid that grows, in m³; `step` in K; `between_marks` the volume in m³ between the marks.
    Assumption: as for `fills.top_up`, and the vessel keeps its size.
    Limit: above 1 the level has left its marks, and the share says only that there is more than lies between them.
    Impossible when nothing lies between the marks.
    """
    if between_marks <= 0:
        return Impossible("Nothing lies between the marks.", "State the volume between the marks; it is above zero.")
    return expansion * volume * step / between_marks
