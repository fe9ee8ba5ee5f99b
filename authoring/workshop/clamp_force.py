"""Which clamp force does a torque give, and which torque does a clamp force need?

Formula:
    T = F (P/(2 pi) + mu_th d2/(2 cos 30°) + mu_b D_b/2) = F (0.159 P + 0.577 d2 mu_th + mu_b D_b/2)
    T = K F d (the short form)

Symbols:
    T: torque in N·m
    F: clamp force in N
    P, d, d2: pitch, nominal diameter and pitch diameter in mm
    mu_th, mu_b: friction in the thread and under the head
    D_b: mean of the bearing face's outer diameter and its hole in mm; 1.3 d where nobody states it
    K: nut factor; it carries a source of its own

Source: ISO 16047:2005 and VDI 2230 Part 1, from memory; JIS B 1083 has the same, as restated in a reference page.
The short form: Shigley's Mechanical Engineering Design, 9th edition, eq. 8-27 and Table 8-15.

Assumptions: the helix angle is small, the friction is the same all the way, the wrench turns what the friction is meant
for, and no nut locks by drag.

Limits: friction scatters; the force from one torque scatters by about a quarter up and down even on equal bolts
(the ten of Shigley's Table 8-14 by less than a fifth).
A flange head has a wider face, and the same torque then clamps less.
"""

from __future__ import annotations

import math

from authoring.workshop.metric_thread import MetricThread
from authoring.workshop.thread_geometry import pitch_diameter_mm

_MM_IN_A_METRE = 1000
_FLANK = 1 / (2 * math.cos(math.radians(30)))
_USUAL_BEARING = 1.3


def usual_bearing_diameter_mm(thread: MetricThread) -> float:
    """Return D_b = 1.3 d in mm: a hexagon or socket head on a hole of the medium series (ISO 273).

    Common practice: the torques and forces of VDI 2230 come out with 1.25 to 1.30 d, Shigley takes 1.25 d.
    A flange head has more, and the same torque then clamps less.
    """
    return _USUAL_BEARING * float(thread.diameter_mm)


def torque_for_friction(
    force_newton: float,
    thread: MetricThread,
    thread_friction: float,
    head_friction: float,
    bearing_mm: float | None = None,
) -> float:
    """Return the torque in N·m that gives a clamp force, by the full formula; `bearing_mm` is 1.3 d when left out."""
    return force_newton * _lever_mm(thread, thread_friction, head_friction, bearing_mm) / _MM_IN_A_METRE


def force_for_friction(
    torque_newton_metre: float,
    thread: MetricThread,
    thread_friction: float,
    head_friction: float,
    bearing_mm: float | None = None,
) -> float:
    """Return the clamp force in N that a torque gives, by the full formula; `bearing_mm` is 1.3 d when left out."""
    return torque_newton_metre * _MM_IN_A_METRE / _lever_mm(thread, thread_friction, head_friction, bearing_mm)


def torque_for_nut_factor(force_newton: float, thread: MetricThread, nut_factor: float) -> float:
    """Return the torque in N·m that gives a clamp force: T = K F d; K carries the source of its own."""
    return nut_factor * force_newton * float(thread.diameter_mm) / _MM_IN_A_METRE


def force_for_nut_factor(torque_newton_metre: float, thread: MetricThread, nut_factor: float) -> float:
    """Return the clamp force in N that a torque gives: F = T / (K d); K carries the source of its own."""
    return torque_newton_metre * _MM_IN_A_METRE / (nut_factor * float(thread.diameter_mm))


def nut_factor(
    thread: MetricThread, thread_friction: float, head_friction: float, bearing_mm: float | None = None
) -> float:
    """Return the nut factor K at which the short formula gives what the full one does."""
    return _lever_mm(thread, thread_friction, head_friction, bearing_mm) / float(thread.diameter_mm)


def _lever_mm(thread: MetricThread, thread_friction: float, head_friction: float, bearing_mm: float | None) -> float:
    """Return T/F in mm."""
    bearing = usual_bearing_diameter_mm(thread) if bearing_mm is None else bearing_mm
    in_thread = float(thread.pitch_mm) / (2 * math.pi) + _FLANK * pitch_diameter_mm(thread) * thread_friction
    return in_thread + head_friction * bearing / 2
