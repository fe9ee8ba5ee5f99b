"""Which diameters has a metric thread, and which area bears its tension?

Formula:
    H = sqrt(3)/2 P
    d2 = d - 3/4 H = d - 0.649519 P
    d3 = d - 17/12 H = d - 1.226869 P
    A_s = pi/4 ((d2 + d3)/2)²

Symbols:
    d, P: nominal diameter and pitch in mm
    H: height of the fundamental triangle in mm
    d2, d3: pitch diameter and root diameter of the bolt in mm
    A_s: nominal stress area in mm²

Source: ISO 68-1 and ISO 724 (basic profile), ISO 898-1 (nominal stress area), as restated in Shigley's Mechanical
Engineering Design, 9th edition, Tables 8-1 and 8-2.

Assumptions: basic sizes, without the tolerances of ISO 965.

Limits: metric threads alone: an inch thread has a sharper root and less area; waisted and hollow bolts bear less.
"""

from __future__ import annotations

import math

from authoring.workshop.metric_thread import MetricThread

_HEIGHT = math.sqrt(3) / 2  # H/P


def pitch_diameter_mm(thread: MetricThread) -> float:
    """Return d2 = d - 3/4 H = d - 0.649519 P, in mm."""
    return float(thread.diameter_mm) - 3 / 4 * _HEIGHT * float(thread.pitch_mm)


def root_diameter_mm(thread: MetricThread) -> float:
    """Return d3 = d - 17/12 H = d - 1.226869 P, the root of the bolt's thread with its rounding, in mm."""
    return float(thread.diameter_mm) - 17 / 12 * _HEIGHT * float(thread.pitch_mm)


def stress_area_mm2(thread: MetricThread) -> float:
    """Return the nominal stress area A_s = pi/4 * ((d2 + d3)/2)², in mm²."""
    return math.pi / 4 * ((pitch_diameter_mm(thread) + root_diameter_mm(thread)) / 2) ** 2
