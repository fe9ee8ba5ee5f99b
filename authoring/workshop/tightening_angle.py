"""What does a turn beyond the snug torque do to a bolt, as long as bolt and joint stay elastic?

Formula:
    take-up = P angle/360
    F = take-up/(1/k_b + 1/k_m)
    k_b = A_d A_t E/(A_d l_t + A_t l_d)

Symbols:
    P: pitch in mm
    angle: in degrees, from where the faces lie flat
    F: clamp force in N that the turn adds
    k_b, k_m: stiffness of the bolt and of the clamped parts in N/mm
    A_d, A_t: area of the shank and stress area in mm²
    l_d, l_t: lengths in the grip without and with thread in mm
    E: modulus of the bolt in MPa

Source: Shigley's Mechanical Engineering Design, 9th edition, Table 8-7 for k_b, Table 8-12 for values of both; the turn
as a sum of two springs is the turn-of-nut relation of the same chapter, from memory, and of MIL-HDBK-60, as restated.

Assumptions: the faces lie flat once snug, nothing embeds, and the thread's own give is left out.
A joint without a known stiffness is taken as a span, 4 to 8 times as stiff as its bolt.

Limits: below the proof load; bolts that are turned into yield stretch more and pull less than this says.
A gasket, aluminium or a waisted bolt gives more way than the span allows for.
"""

from __future__ import annotations

import math
from fractions import Fraction

from authoring.workshop.metric_thread import MetricThread
from authoring.workshop.thread_geometry import stress_area_mm2

STEEL_MODULUS_MPA = 207_000.0
"""Young's modulus of steel, 30 Mpsi (Shigley, 9th edition, Table 8-8, from memory)."""

USUAL_JOINT_SHARE = (4.0, 8.0)
"""How many times stiffer than its bolt a steel joint is: 4.9 to 7.8 in Shigley's Table 8-12, widened."""

_TURN_DEGREE = 360


def take_up_mm(angle_degree: Fraction, thread: MetricThread) -> Fraction:
    """Return by how much a turn brings nut and head together: P * angle/360, in mm, exact.

    It is the stretch of the bolt and the squeeze of the joint together.
    """
    return thread.pitch_mm * angle_degree / _TURN_DEGREE


def bolt_stiffness_newton_per_mm(
    diameter_mm: float,
    stress_area_mm2: float,
    plain_length_mm: float,
    threaded_length_mm: float,
    modulus_mpa: float = STEEL_MODULUS_MPA,
) -> float:
    """Return k_b in N/mm for a bolt whose grip holds a plain and a threaded length, in mm.

    Raises ZeroDivisionError for a grip of no length: the caller states what is clamped.
    """
    shank_mm2 = math.pi / 4 * diameter_mm**2
    give = shank_mm2 * threaded_length_mm + stress_area_mm2 * plain_length_mm
    return shank_mm2 * stress_area_mm2 * modulus_mpa / give


def force_from_turn_newton(
    angle_degree: Fraction, thread: MetricThread, bolt_newton_per_mm: float, joint_newton_per_mm: float
) -> float:
    """Return the clamp force in N that a turn adds to what the snug torque gave."""
    give_mm_per_newton = 1 / bolt_newton_per_mm + 1 / joint_newton_per_mm
    return float(take_up_mm(angle_degree, thread)) / give_mm_per_newton


def force_span_from_turn_newton(angle_degree: Fraction, thread: MetricThread, grip_mm: float) -> tuple[float, float]:
    """Return the least and the greatest clamp force in N that a turn adds when only the grip is known.

    The bolt is of steel, from threaded all over to plain; the joint is of steel, by `USUAL_JOINT_SHARE`.
    Limit: a gasket, aluminium or a waisted bolt gives more way, and the force is then less than the least.
    """
    diameter, area = float(thread.diameter_mm), stress_area_mm2(thread)
    soft = bolt_stiffness_newton_per_mm(diameter, area, 0.0, grip_mm)
    stiff = bolt_stiffness_newton_per_mm(diameter, area, grip_mm, 0.0)
    least, greatest = USUAL_JOINT_SHARE
    return (
        force_from_turn_newton(angle_degree, thread, soft, soft * least),
        force_from_turn_newton(angle_degree, thread, stiff, stiff * greatest),
    )
