"""Ours held against other libraries, and against other ways to the same answer, over inputs drawn at random."""

from __future__ import annotations

import math
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Decimal
from fractions import Fraction
from typing import Any

import numpy as np
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from scipy import constants, integrate, optimize, special

from authoring.quantities.convert import convert
from authoring.quantities.rounding import down, nearest, up
from authoring.quantities.units import UNITS
from authoring.workshop.clamp_force import torque_for_friction
from authoring.workshop.cooling import Estimate, time_constant, time_to_cool
from authoring.workshop.gauges import Rule, acceptance
from authoring.workshop.interval import Interval
from authoring.workshop.oil_density import LUBRICATING_OIL, volume_correction
from authoring.workshop.shrink_fit import grown, temperature_to_fit
from authoring.workshop.thread_geometry import pitch_diameter_mm, stress_area_mm2
from authoring.workshop.tightening_angle import (
    STEEL_MODULUS_MPA,
    bolt_stiffness_newton_per_mm,
    force_from_turn_newton,
    take_up_mm,
)
from tests.outside.agreement import Agreement
from tests.outside.kept import kept, thread

KEPT = kept("second_opinions.yaml")
COOLING, TIME_CONSTANT, OIL, WEDGE, SPRINGS, RODS, FITS = (
    KEPT[name][0] for name in ("cooling", "time_constant", "oil", "wedge", "springs", "rods", "fits")
)
# The record of one test is shared by its examples on purpose: the table wants the worst of them.
drawn = settings(max_examples=40, suppress_health_check=[HealthCheck.function_scoped_fixture])
threads = st.sampled_from(["M6", "M8", "M8x1", "M10", "M12x1.25", "M16", "M20", "M24x2"]).map(thread)
kelvins = st.integers(1, 300).map(Fraction)
frictions = st.floats(0.05, 0.25)
lengths = st.floats(5, 120)

Row = dict[str, Any]


def _held(agree: Agreement, row: Row, ours: float, theirs: float) -> None:
    agree({**row, "published": theirs}, ours)


@pytest.mark.parametrize("row", KEPT["constants"], ids=lambda row: row["unit"])
def test_another_librarys_constants_are_ours(row: Row, agree: Agreement) -> None:
    """Each unit in its base unit; a torque is the product of a force and a length."""
    theirs = math.prod(getattr(constants, name) for name in row["second"].split())
    _held(agree, row, float(UNITS[row["unit"]].factor), theirs)


@pytest.mark.parametrize("row", KEPT["temperatures"], ids=lambda row: row["from"] + row["to"])
@given(st.decimals(-40, 300, places=2))
@drawn
def test_another_library_converts_temperatures_alike(row: Row, agree: Agreement, degrees: Decimal) -> None:
    """With the offset, whatever the temperature; what is nearly zero is held by its distance from 300 degrees."""
    ours = convert(Fraction(degrees), UNITS[row["from"]], UNITS[row["to"]])
    theirs = float(constants.convert_temperature(float(degrees), *row["second"]))
    _held(agree, row, float(ours) + 300, theirs + 300)


WAYS = {"nearest": (nearest, ROUND_HALF_EVEN), "up": (up, ROUND_CEILING), "down": (down, ROUND_FLOOR)}


@pytest.mark.parametrize("row", KEPT["rounding"], ids=lambda row: row["way"])
@given(st.decimals(-1000, 1000, places=4), st.integers(-2, 4))
@drawn
def test_the_decimal_module_rounds_alike(row: Row, agree: Agreement, value: Decimal, places: int) -> None:
    """Halves to even; a lower limit up and an upper one down, on either side of zero."""
    ours, theirs = WAYS[row["way"]]
    rounded = value.quantize(Decimal(1).scaleb(-places), rounding=theirs)
    agree({**row, "published": str(rounded)}, ours(Fraction(value), places))


@given(kelvins, kelvins, kelvins, st.floats(60, 7200))
@drawn
def test_stepping_through_time_takes_as_long(
    agree: Agreement, air: Fraction, above: Fraction, more: Fraction, tau: float
) -> None:
    """The differential equation, solved step by step, meets the target when ours says."""
    target, start, constant = air + above, air + above + more, Estimate(tau)
    wait = time_to_cool(start, target, air, constant)
    assert isinstance(wait, Estimate)
    solved = integrate.solve_ivp(
        lambda _, warm: -(warm - float(air)) / tau,
        (0, wait.value * 1.5),
        [float(start)],
        events=lambda _, warm: float(warm[0]) - float(target),
        rtol=1e-10,
        atol=1e-10,
    )
    _held(agree, COOLING, wait.value, float(solved.t_events[0][0]))


@given(kelvins, kelvins, kelvins, st.integers(60, 7200))
@drawn
def test_the_fitted_constant_is_ours(
    agree: Agreement, air: Fraction, above: Fraction, more: Fraction, seconds: int
) -> None:
    """Sought as a root, without a logarithm, the constant is the same."""
    first, second = air + above + more, air + above
    ours = time_constant(first, second, Fraction(seconds), air)
    assert isinstance(ours, Estimate)
    left = float(above / (above + more))
    rate = optimize.brentq(lambda one: math.exp(-one * seconds) - left, 0.0, 10.0 / seconds, xtol=1e-18, rtol=1e-14)
    _held(agree, TIME_CONSTANT, ours.value, 1 / rate)


@given(st.integers(810, 1160), st.integers(-40, 140))
@drawn
def test_the_oil_grows_as_its_expansion_adds_up(agree: Agreement, density: int, celsius: int) -> None:
    """The factor is the expansion added up degree by degree, itself growing as the formula supposes."""
    alpha = float(LUBRICATING_OIL.k1) / density
    grown_by, _ = integrate.quad(lambda one: alpha * (1 + 1.6 * alpha * one), 0, celsius - 15)
    ours = volume_correction(Fraction(celsius) + Fraction("273.15"), Fraction(density))
    assert isinstance(ours, float)
    _held(agree, OIL, ours, math.exp(-grown_by))


@given(threads, frictions, frictions, st.floats(1000, 100_000))
@drawn
def test_the_wedge_of_statics_needs_the_same_torque(
    agree: Agreement, bolt: Any, in_thread: float, under_head: float, force: float
) -> None:
    """That the helix angle is small is worth less than a fiftieth of the torque."""
    across, face = pitch_diameter_mm(bolt), 1.3 * float(bolt.diameter_mm)
    climb = math.atan(float(bolt.pitch_mm) / (math.pi * across))
    lever = across / 2 * math.tan(climb + math.atan(in_thread / math.cos(math.radians(30)))) + under_head * face / 2
    _held(agree, WEDGE, torque_for_friction(force, bolt, in_thread, under_head), force * lever / 1000)


@given(threads, st.integers(1, 360), st.floats(1e4, 1e6), st.floats(1e4, 1e7))
@drawn
def test_two_springs_share_the_turn_alike(agree: Agreement, bolt: Any, turn: int, own: float, joint: float) -> None:
    """Force, stretch and squeeze as three unknowns of three equations."""
    angle = Fraction(turn)
    equations = np.array([[1.0, -own, 0.0], [1.0, 0.0, -joint], [0.0, 1.0, 1.0]])
    force, _, _ = np.linalg.solve(equations, np.array([0.0, 0.0, float(take_up_mm(angle, bolt))]))
    _held(agree, SPRINGS, force_from_turn_newton(angle, bolt, own, joint), float(force))


@given(threads, lengths, lengths)
@drawn
def test_a_bolt_gives_along_its_length(agree: Agreement, bolt: Any, plain: float, threaded: float) -> None:
    """A newton's stretch added up along shank and thread is one over the stiffness."""
    across, narrow = float(bolt.diameter_mm), stress_area_mm2(bolt)
    wide = math.pi / 4 * across**2
    give = sum(
        integrate.quad(lambda _, area=area: 1 / (area * STEEL_MODULUS_MPA), 0, length)[0]
        for area, length in ((wide, plain), (narrow, threaded))
    )
    _held(agree, RODS, bolt_stiffness_newton_per_mm(across, narrow, plain, threaded), 1 / give)


@given(st.integers(10, 500), st.integers(1, 400), st.integers(0, 200))
@drawn
def test_the_sought_temperature_leaves_the_clearance(agree: Agreement, bore: int, over: int, clear: int) -> None:
    """Sizes in mm and µm; the root of the growth is our temperature."""
    hole, shaft, room = Fraction(bore, 1000), Fraction(bore, 1000) + Fraction(over, 10**6), Fraction(clear, 10**6)
    cold, alpha = Fraction("293.15"), Fraction(12, 10**6)
    ours = temperature_to_fit(hole, shaft, room, cold, alpha)
    assert isinstance(ours, Fraction)
    theirs = optimize.brentq(
        lambda hot: float(grown(hole, Fraction(hot) - cold, alpha) - shaft - room), 293.15, 10_000, xtol=1e-9
    )
    _held(agree, FITS, float(ours), theirs)


@pytest.mark.parametrize("row", KEPT["risks"], ids=lambda row: row["rule"])
def test_what_is_accepted_is_seldom_out(row: Row, agree: Agreement) -> None:
    """A reading at the edge of what each rule accepts is of a part that is out no more often than the rule is said."""
    limit, spread = Fraction(10), Fraction(1, 10)
    edge = acceptance(Interval(None, limit), spread, Rule[row["rule"]])
    assert isinstance(edge, Interval)
    assert edge.high is not None
    deviation = float(spread) / 2
    agree.at_most(row, float(1 - special.ndtr(float(limit - edge.high) / deviation)))
