"""How much thread must be engaged so that a tapped hole does not strip before its bolt is pulled to a force?

Formula:
    A = pi d_s/P (P/2 + (d_s - D_2) tan 30°)
    L = F/(A tau)

Symbols:
    A: shear area of the hole for each mm of engagement, in mm²
    d_s: the bolt's least major diameter in mm
    D_2: the hole's greatest pitch diameter in mm
    P: pitch in mm
    L: length of engagement in mm
    F: force of the bolt in N
    tau: shear strength of the material with the hole in MPa

Source: FED-STD-H28/2, formula from memory; a worked example was read in the abstract of a chapter of a handbook
(Bickford and Nassar, Handbook of Bolts and Bolted Joints, its title from memory), and comes out.

Assumptions: every thread in the length is whole, so chamfers and run-outs are added; all threads bear alike.

Limits: the hole is the weaker side; a thin wall that widens, or a bolt whose own threads strip first, needs more
(E. M. Alexander, SAE 770420, is not reckoned here).
Without the limits of size the basic sizes stand in; the worst pair bears a fifth to a third less than they promise.
"""

from __future__ import annotations

import math
from fractions import Fraction

from authoring.workshop.metric_thread import MetricThread
from authoring.workshop.thread_geometry import pitch_diameter_mm

LOOSEST_SHARE = 0.74
"""What is left at least of the shear area of the basic sizes where bolt and hole are at the loose end of 6g and 6H.

It is so from a pitch of 1 mm up: 0.74 for M6, 0.75 for M10 x 1, 0.77 for M8, 0.78 for M10 and 0.79 for M12, by the
limits of ISO 965-1, which are from memory.
"""

LOOSEST_SHARE_OF_FINE = 0.67
"""The same for a pitch below 1 mm, down to 0.5 mm, where the limits of size eat more of the thread.

It is 0.67 for M3, 0.71 for M4, 0.72 for M6 x 0.75 and 0.73 for M5 and M8 x 0.75, by the same limits.
"""

_COARSE_MM = 1
_FINEST_MM, _WIDEST_OF_FINE_MM = Fraction(1, 2), 11

_FLANK = math.tan(math.radians(30))


def loosest_share(thread: MetricThread) -> float | None:
    """Return the share of the shear area that is left at least at the loose end of 6g and 6H.

    None for a pitch below 0.5 mm, and for one below 1 mm on more than 11 mm, where less may be left.
    """
    if thread.pitch_mm >= _COARSE_MM:
        return LOOSEST_SHARE
    fine = thread.pitch_mm >= _FINEST_MM and thread.diameter_mm <= _WIDEST_OF_FINE_MM
    return LOOSEST_SHARE_OF_FINE if fine else None


def shear_area_mm2_per_mm(
    thread: MetricThread, least_major_mm: float | None = None, greatest_pitch_mm: float | None = None
) -> float:
    """Return the shear area of a tapped hole for each mm of engagement.

    Without the limits of size (ISO 965-1) the basic sizes stand in; the worst pair has `loosest_share` of that.
    """
    major = float(thread.diameter_mm) if least_major_mm is None else least_major_mm
    pitch_diameter = pitch_diameter_mm(thread) if greatest_pitch_mm is None else greatest_pitch_mm
    pitch = float(thread.pitch_mm)
    return math.pi * major / pitch * (pitch / 2 + _FLANK * (major - pitch_diameter))


def engagement_mm(force_newton: float, shear_strength_mpa: float, area_mm2_per_mm: float) -> float:
    """Return the length of whole threads in mm at which the hole strips at just this force, and no earlier."""
    return force_newton / (shear_strength_mpa * area_mm2_per_mm)


def stripping_force_newton(length_mm: float, shear_strength_mpa: float, area_mm2_per_mm: float) -> float:
    """Return the force in N at which a hole with this length of whole threads strips."""
    return length_mm * shear_strength_mpa * area_mm2_per_mm
