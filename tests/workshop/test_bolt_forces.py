"""Clamp force, load, turn and engagement: what grows with what, and what is not judged."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from authoring.workshop.bolt_load import bolt_load, bolt_load_for_nut_factor
from authoring.workshop.clamp_force import (
    force_for_friction,
    force_for_nut_factor,
    nut_factor,
    torque_for_friction,
    torque_for_nut_factor,
)
from authoring.workshop.interval import Interval, exactly
from authoring.workshop.metric_thread import MetricThread
from authoring.workshop.proof_load import proof_load_newton
from authoring.workshop.thread_engagement import (
    engagement_mm,
    shear_area_mm2_per_mm,
    stripping_force_newton,
)
from authoring.workshop.thread_geometry import stress_area_mm2
from authoring.workshop.tightening_angle import (
    bolt_stiffness_newton_per_mm,
    force_from_turn_newton,
    force_span_from_turn_newton,
    take_up_mm,
)
from tests.workshop.bolts import classes, thread, threads

torques = st.floats(1, 2000)
frictions = st.floats(0.04, 0.4)
angles = st.integers(1, 720).map(Fraction)
steady = settings(max_examples=100)


@given(torques, threads, frictions, frictions)
@steady
def test_force_and_torque_are_each_others_inverse(
    torque: float, bolt: MetricThread, in_thread: float, at_head: float
) -> None:
    """A torque gives a force that asks for the same torque, by both formulas, which agree at their nut factor."""
    force = force_for_friction(torque, bolt, in_thread, at_head)
    factor = nut_factor(bolt, in_thread, at_head)
    assert torque_for_friction(force, bolt, in_thread, at_head) == pytest.approx(torque)
    assert force_for_nut_factor(torque, bolt, factor) == pytest.approx(force)
    assert torque_for_nut_factor(force, bolt, factor) == pytest.approx(torque)


@given(torques, threads, frictions, st.floats(1.01, 3))
@steady
def test_more_friction_clamps_less(torque: float, bolt: MetricThread, friction: float, more: float) -> None:
    """Friction in the thread, under the head, and a wider face each cost clamp force; torque gains it in proportion."""
    force = force_for_friction(torque, bolt, friction, friction)
    assert force_for_friction(torque, bolt, friction * more, friction) < force
    assert force_for_friction(torque, bolt, friction, friction * more) < force
    assert force_for_friction(torque, bolt, friction, friction, 1.3 * more * float(bolt.diameter_mm)) < force
    assert force_for_friction(torque * more, bolt, friction, friction) == pytest.approx(force * more)


def test_without_friction_only_the_pitch_is_climbed() -> None:
    """With no friction the work of one turn is the force times the pitch: 2 pi T = F P."""
    assert force_for_friction(10, thread("M10"), 0, 0) * 1.5e-3 == pytest.approx(2 * math.pi * 10)


@given(threads, classes, st.integers(1, 2000), st.integers(0, 200), st.integers(8, 20), st.integers(0, 10))
@steady
def test_load_grows_with_the_span_of_what_is_not_known(
    bolt: MetricThread, property_class: str, low: int, wider: int, hundredths: int, error: int
) -> None:
    """Wider limits, a wider span of friction and a worse tool each spread the load and never narrow it."""
    torque = Interval(Fraction(low), Fraction(low + wider))
    friction = Interval(Fraction(hundredths, 100), Fraction(hundredths + 4, 100))
    spread = bolt_load(torque, bolt, property_class, friction, error / 100)
    narrow = bolt_load(exactly(Fraction(low)), bolt, property_class, exactly(Fraction(hundredths + 1, 100)))
    assert spread is not None
    assert narrow is not None
    assert spread.least_newton < narrow.least_newton == narrow.greatest_newton < spread.greatest_newton
    assert spread.overloaded == (spread.greatest_share > 1)
    assert spread.least_share < spread.greatest_share


@given(threads, classes, st.floats(0.5, 1.5))
@steady
def test_a_bolt_is_overloaded_just_beyond_its_proof_load(bolt: MetricThread, property_class: str, share: float) -> None:
    """A torque that gives a share of the proof load overloads when the share is above one, tool and all."""
    proof = proof_load_newton(bolt, property_class)
    assert proof is not None
    torque = torque_for_friction(share * proof, bolt, 0.12, 0.12)
    friction = Interval(Fraction(12, 100), Fraction(16, 100))
    load = bolt_load(exactly(Fraction(torque)), bolt, property_class, friction)
    worse = bolt_load(exactly(Fraction(torque)), bolt, property_class, friction, 0.04)
    assert load is not None
    assert worse is not None
    assert load.greatest_share == pytest.approx(share)
    assert worse.greatest_share == pytest.approx(1.04 * share)
    assert worse.least_share == pytest.approx(0.96 * load.least_share)
    assert load.overloaded == (load.greatest_share > 1)


def test_a_bolt_at_its_torque_holds_and_at_twice_it_does_not() -> None:
    """M10 8.8 at 48 N·m, oiled, is sound; at 96 N·m it is stretched for good, and 12.9 bears it."""
    oiled = Interval(Fraction("0.12"), Fraction("0.16"))
    once, twice = exactly(Fraction(48)), exactly(Fraction(96))
    for torque, property_class, overloaded in ((once, "8.8", False), (twice, "8.8", True), (once, "12.9", False)):
        load = bolt_load(torque, thread("M10"), property_class, oiled, 0.04)
        assert load is not None
        assert load.overloaded is overloaded


@pytest.mark.parametrize(
    ("torque", "property_class", "friction"),
    [
        (exactly(Fraction(48)), "A2-70", exactly(Fraction("0.12"))),
        (exactly(Fraction(48)), "8", exactly(Fraction("0.12"))),
        (exactly(Fraction(48)), "8.8", Interval(None, None)),
        (exactly(Fraction(48)), "8.8", exactly(Fraction(0))),
        (Interval(None, None), "8.8", exactly(Fraction("0.12"))),
    ],
)
def test_what_is_not_known_is_not_judged(torque: Interval, property_class: str, friction: Interval) -> None:
    """A class of another standard, no friction and no torque give no load instead of a guess."""
    assert bolt_load(torque, thread("M10"), property_class, friction) is None


def test_one_stated_end_counts_for_both() -> None:
    """At least 48 N·m, or at most, is judged as 48 N·m."""
    friction = exactly(Fraction("0.12"))
    loads = [
        bolt_load(torque, thread("M10"), "8.8", friction)
        for torque in (exactly(Fraction(48)), Interval(Fraction(48), None), Interval(None, Fraction(48)))
    ]
    assert loads[0] is not None
    assert loads == loads[:1] * 3


@given(threads, angles, st.floats(10, 200), st.floats(1, 20))
@steady
def test_a_turn_stretches_in_proportion(bolt: MetricThread, angle: Fraction, grip: float, stiffer: float) -> None:
    """Force grows with the angle; bolt and joint share the take-up; a stiff joint leaves it all to the bolt."""
    own = bolt_stiffness_newton_per_mm(float(bolt.diameter_mm), stress_area_mm2(bolt), 0.0, grip)
    force = force_from_turn_newton(angle, bolt, own, own * stiffer)
    assert force_from_turn_newton(2 * angle, bolt, own, own * stiffer) == pytest.approx(2 * force)
    stretch = force / own
    assert stretch + force / (own * stiffer) == pytest.approx(float(take_up_mm(angle, bolt)))
    assert force_from_turn_newton(angle, bolt, own, own * 1e9) / own == pytest.approx(float(take_up_mm(angle, bolt)))


@given(threads, angles, st.floats(10, 200), st.floats(0, 1), st.floats(4, 8))
@steady
def test_every_steel_bolt_lies_in_its_span(
    bolt: MetricThread, angle: Fraction, grip: float, plain: float, stiffer: float
) -> None:
    """With any part of the grip plain and any usual joint, the force of a turn is inside the span of the grip."""
    least, greatest = force_span_from_turn_newton(angle, bolt, grip)
    area = stress_area_mm2(bolt)
    own = bolt_stiffness_newton_per_mm(float(bolt.diameter_mm), area, plain * grip, (1 - plain) * grip)
    force = force_from_turn_newton(angle, bolt, own, own * stiffer)
    assert least * (1 - 1e-9) <= force <= greatest * (1 + 1e-9)
    assert least < greatest


def test_one_turn_is_one_pitch() -> None:
    """A full turn brings nut and head together by the pitch, exactly, and a right angle by a quarter of it."""
    assert take_up_mm(Fraction(360), thread("M10 x 1.25")) == Fraction(5, 4)
    assert take_up_mm(Fraction(90), thread("M10 x 1.25")) == Fraction(5, 16)


@given(threads, st.floats(1000, 100_000), st.floats(50, 400))
@steady
def test_engagement_grows_with_force_and_softness(bolt: MetricThread, force: float, strength: float) -> None:
    """Twice the force, or half the strength, needs twice the length; the length strips at just its force."""
    area = shear_area_mm2_per_mm(bolt)
    length = engagement_mm(force, strength, area)
    assert engagement_mm(2 * force, strength, area) == pytest.approx(2 * length)
    assert engagement_mm(force, strength / 2, area) == pytest.approx(2 * length)
    assert stripping_force_newton(length, strength, area) == pytest.approx(force)
    looser = shear_area_mm2_per_mm(bolt, float(bolt.diameter_mm) - 0.03, None)
    assert looser < area


def test_a_load_by_nut_factor_is_the_short_formula() -> None:
    """Shigley's T = K F d turned round, M10: 40 N·m at K = 0.20 and 50 N·m at 0.16, with a wrench off by a tenth."""
    load = bolt_load_for_nut_factor(
        Interval(Fraction(40), Fraction(50)), thread("M10"), "8.8", Interval(Fraction("0.16"), Fraction("0.20")), 0.1
    )
    assert load is not None
    assert load.least_newton == pytest.approx(40 * 0.9 / (0.20 * 0.010))
    assert load.greatest_newton == pytest.approx(50 * 1.1 / (0.16 * 0.010))
    assert load.proof_newton == proof_load_newton(thread("M10"), "8.8")
    assert bolt_load_for_nut_factor(exactly(Fraction(40)), thread("M10"), "8.8", Interval(None, None)) is None
