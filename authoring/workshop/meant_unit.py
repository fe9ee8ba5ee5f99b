"""Was a torque stated in a unit that its author did not mean?

Formula:
    T_usual = 0.2 d 0.75 F_p
    doubtful if T < 0.15 T_usual or T > 2 T_usual
    meant only in a unit with T <= K F_p d

Symbols:
    T: stated torque in N·m
    d: nominal diameter in m
    F_p: proof load in N by `proof_load`
    K: nut factor, 0.2 where nobody states it

Source: Shigley's Mechanical Engineering Design, 9th edition, section 8-8, K = 0.2 from Table 8-15.
The bounds are common practice.

Assumptions: a bolt of a class of steel, used for its strength.
Friction from 0.08 to 0.20, and from 30 % of the proof load to all of it, stay inside the bounds, as do the torques of
VDI 2230; a factor of 8.8 (lbf·in), 9.8 (kgf·m), 10.2 (kgf·cm) or 12 (foot for inch) does not.

Limits: N·m for lbf·ft is a factor of 1.36, less than friction makes; it is told only beyond twice the usual torque.
A snug torque before a turn, a plug and a jet have no torque of a bolt's class and are not to be asked about.
"""

from __future__ import annotations

import math
from fractions import Fraction

from authoring.quantities.units import UNITS, Unit
from authoring.workshop.clamp_force import torque_for_nut_factor
from authoring.workshop.metric_thread import MetricThread
from authoring.workshop.proof_load import proof_load_newton

LEAST_SHARE, GREATEST_SHARE = 0.15, 2.0
"""Between these shares of the usual torque nothing is said."""

USUAL_NUT_FACTOR = 0.2
"""K where nobody states one: zinc-plated steel in Shigley's Table 8-15."""

_LEAST_MEANT = 0.3  # nobody means a unit in which the torque would be odd again
_PRELOAD_SHARE = 0.75
_ROUNDED = Fraction(15, 1000)  # 31.7 lbf·ft are written 32
_MEANT = tuple(UNITS[symbol] for symbol in ("N·m", "lbf·ft", "lbf·in", "kgf·m", "kgf·cm"))


def usual_torque_newton_metre(thread: MetricThread, property_class: str) -> float | None:
    """Return 0.2 * 0.75 * F_p * d in N·m: about what a plain bolt takes; None for a class without a proof load."""
    proof = proof_load_newton(thread, property_class)
    return None if proof is None else torque_for_nut_factor(_PRELOAD_SHARE * proof, thread, USUAL_NUT_FACTOR)


def bears(
    torque_newton_metre: Fraction, thread: MetricThread, property_class: str, nut_factor: float = USUAL_NUT_FACTOR
) -> bool:
    """Tell whether T <= K F_p d, so that the bolt stays below its proof load; True for a class without one."""
    proof = proof_load_newton(thread, property_class)
    return proof is None or float(torque_newton_metre) <= torque_for_nut_factor(proof, thread, nut_factor)


def units_probably_meant(
    number: Fraction, unit: Unit, thread: MetricThread, property_class: str, *, nut_factor: float = USUAL_NUT_FACTOR
) -> tuple[Unit, ...]:
    """Return the units in which the number would be a usual torque, the likeliest first; none when it is sane as it is.

    None either when no unit would help: a torque that is too much in every unit is a matter for `bolt_load`, and a
    unit in which the bolt would be pulled beyond its proof load, at the least `nut_factor`, is never named.
    A unit with the same force, such as lbf·in for lbf·ft, goes first, then what comes nearest to the usual torque.
    """
    usual = usual_torque_newton_metre(thread, property_class)
    if usual is None or number <= 0 or LEAST_SHARE <= float(number * unit.factor) / usual <= GREATEST_SHARE:
        return ()
    shares = {meant: float(number * meant.factor) / usual for meant in _MEANT if meant != unit}
    likely = [
        meant
        for meant, share in shares.items()
        if _LEAST_MEANT <= share <= GREATEST_SHARE and bears(number * meant.factor, thread, property_class, nut_factor)
    ]
    return tuple(sorted(likely, key=lambda meant: (_force(meant) != _force(unit), abs(math.log(shares[meant])))))


def unit_that_makes(number: Fraction, unit: Unit, torque_newton_metre: Fraction) -> Unit | None:
    """Return the other unit in which a number is a known torque; None where none is, or it is that torque already.

    The two may differ by what rounding to two digits costs, `_ROUNDED`.
    """
    if number <= 0 or _near(number * unit.factor, torque_newton_metre):
        return None
    others = (meant for meant in _MEANT if meant != unit)
    return next((meant for meant in others if _near(number * meant.factor, torque_newton_metre)), None)


def _near(one: Fraction, other: Fraction) -> bool:
    return abs(one - other) <= _ROUNDED * other


def _force(unit: Unit) -> str:
    return unit.symbol.split("·")[0]
