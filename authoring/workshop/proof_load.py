"""How much tension does a bolt of a property class bear without lasting stretch?

Formula:
    F_p = S_p A_s

Symbols:
    F_p: proof load in N
    S_p: nominal proof stress in MPa, a table by class and diameter
    A_s: nominal stress area in mm² by `thread_geometry`

Source: ISO 898-1:2013, mechanical properties of fasteners.
8.8 above M16, 10.9 and 12.9 are printed in Shigley's Mechanical Engineering Design, 9th edition, Table 8-11; the other
stresses follow from a distributor's restatement of the table of proof loads.

Assumptions: a full shank.

Limits: M1.6 to M39; no stainless steel, no nuts; hot-dip galvanized M8 and M10 bear less (ISO 10684, Annex A).
The printed table rounds in its own way: M6 8.8 is 11 600 N there and 11 671 N here, within 0.7 %.
"""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

from authoring.workshop.metric_thread import MetricThread
from authoring.workshop.thread_geometry import stress_area_mm2

_STRESS_MPA: Mapping[str, int] = MappingProxyType(
    {"4.6": 225, "4.8": 310, "5.6": 280, "5.8": 380, "6.8": 440, "8.8": 580, "9.8": 650, "10.9": 830, "12.9": 970}
)
_THICK_8_8_MPA = 600
_THICK_MM = 16  # ISO 898-1 parts class 8.8 here, and class 9.8 ends here
_SMALLEST_MM, _LARGEST_MM = Fraction("1.6"), 39  # the scope of ISO 898-1

PROPERTY_CLASSES = tuple(_STRESS_MPA)
"""The property classes of steel bolts that are known here, the weakest first."""


def proof_stress_mpa(property_class: str, diameter_mm: Fraction) -> int | None:
    """Return the nominal proof stress S_p in MPa of a class, such as "8.8", at a nominal diameter.

    None for a class that ISO 898-1 does not have at that diameter: a nut's class, stainless steel, a misspelling.
    """
    if not _SMALLEST_MM <= diameter_mm <= _LARGEST_MM:
        return None
    if diameter_mm > _THICK_MM and property_class in ("8.8", "9.8"):
        return _THICK_8_8_MPA if property_class == "8.8" else None
    return _STRESS_MPA.get(property_class)


def proof_load_newton(thread: MetricThread, property_class: str) -> float | None:
    """Return the proof load F_p = S_p * A_s in N (S_p in MPa, A_s in mm²), or None as for `proof_stress_mpa`.

    The printed table rounds on its own way: M6 8.8 is 11 600 N there and 11 671 N here, within 0.7 %.
    Limit: full shank, no hot-dip galvanizing of M8 and M10 (ISO 10684, Annex A, gives those less).
    """
    stress = proof_stress_mpa(property_class, thread.diameter_mm)
    return None if stress is None else stress * stress_area_mm2(thread)
