"""A torque in the wrong unit is told with the right one; a sane torque is left alone."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from authoring.quantities.units import UNITS
from authoring.workshop.clamp_force import nut_factor, torque_for_nut_factor
from authoring.workshop.meant_unit import bears, unit_that_makes, units_probably_meant, usual_torque_newton_metre
from authoring.workshop.metric_thread import MetricThread
from authoring.workshop.proof_load import proof_load_newton
from tests.workshop.bolts import CLASSES, THREADS, classes, thread, threads

steady = settings(max_examples=200)
TYPED = ("N·m", "lbf·ft", "lbf·in", "kgf·m", "kgf·cm")
# What was meant, and what was typed for it, where the two are far enough apart to be told.
MISTAKES = [
    ("lbf·in", "N·m"),
    ("lbf·in", "lbf·ft"),
    ("lbf·in", "kgf·m"),
    ("lbf·ft", "lbf·in"),
    ("lbf·ft", "kgf·cm"),
    ("N·m", "lbf·in"),
    ("N·m", "kgf·m"),
    ("N·m", "kgf·cm"),
    ("kgf·m", "N·m"),
    ("kgf·m", "kgf·cm"),
    ("kgf·cm", "N·m"),
    ("kgf·cm", "kgf·m"),
]


@pytest.mark.parametrize("bolt", THREADS, ids=lambda bolt: f"M{float(bolt.diameter_mm):g}x{float(bolt.pitch_mm):g}")
@pytest.mark.parametrize("property_class", CLASSES)
def test_no_sane_torque_is_told(bolt: MetricThread, property_class: str) -> None:
    """From slippery to dry and from 30 % of the proof load to all of it, in every unit, nothing is said."""
    proof = proof_load_newton(bolt, property_class)
    assert proof is not None
    for friction in (0.08, 0.10, 0.12, 0.14, 0.16, 0.20):
        for share in (0.3, 0.5, 0.75, 0.9, 1.0):
            torque = Fraction(torque_for_nut_factor(share * proof, bolt, nut_factor(bolt, friction, friction)))
            for symbol in TYPED:
                unit = UNITS[symbol]
                assert units_probably_meant(torque / unit.factor, unit, bolt, property_class) == ()


@given(threads, classes, st.sampled_from(MISTAKES), st.floats(0.36, 1.2))
@steady
def test_a_mistaken_unit_is_named(
    bolt: MetricThread, property_class: str, mistake: tuple[str, str], share: float
) -> None:
    """A sane number in a unit eight times off or more is told, and the unit that was meant is among those named."""
    usual = usual_torque_newton_metre(bolt, property_class)
    assert usual is not None
    meant, typed = (UNITS[symbol] for symbol in mistake)
    number = Fraction(share * usual) / meant.factor
    assert units_probably_meant(number, meant, bolt, property_class) == ()
    assert meant in units_probably_meant(number, typed, bolt, property_class)


@pytest.mark.parametrize(
    ("number", "typed", "bolt", "property_class", "named"),
    [
        ("45", "lbf·in", "M10", "8.8", ["lbf·ft", "N·m"]),
        ("440", "lbf·ft", "M10", "8.8", ["lbf·in", "kgf·cm"]),
        ("420", "N·m", "M10", "8.8", ["lbf·in", "kgf·cm"]),
        ("5", "N·m", "M10", "8.8", ["kgf·m"]),
        ("50", "kgf·m", "M10", "8.8", ["N·m"]),
        ("46", "kgf·m", "M10", "8.8", ["N·m", "lbf·ft"]),
        ("88", "lbf·ft", "M10", "8.8", []),
        ("45", "N·m", "M18", "8.8", []),
        ("50", "N·m", "M10", "8.8", []),
        ("37", "lbf·ft", "M10", "8.8", []),
        ("2000", "N·m", "M10", "8.8", []),
        ("0.5", "N·m", "M10", "8.8", []),
        ("0", "N·m", "M10", "8.8", []),
        ("420", "N·m", "M10", "A2-70", []),
        ("420", "N·m", "M10", "10", []),
    ],
)
def test_the_likeliest_unit_stands_first(
    number: str, typed: str, bolt: str, property_class: str, named: list[str]
) -> None:
    """The same force goes first, then the nearest; nothing is named where nothing helps or the class is not known."""
    units = units_probably_meant(Fraction(number), UNITS[typed], thread(bolt), property_class)
    assert [unit.symbol for unit in units] == named


@pytest.mark.parametrize(
    ("number", "factor", "named"), [("45", 0.2, 0), ("42", 0.2, 1), ("42", 0.16, 0), ("45", 0.3, 1)]
)
def test_no_unit_is_named_in_which_the_bolt_is_overloaded(number: str, factor: float, named: int) -> None:
    """M18 of class 8.8 bears 115 kN (Shigley, Table 8-11), 0.20 * 115 * 18 = 415 N·m; 45 kgf·m are 441, 42 are 412."""
    assert named == len(units_probably_meant(Fraction(number), UNITS["N·m"], thread("M18"), "8.8", nut_factor=factor))
    assert bears(Fraction(number) * UNITS["kgf·m"].factor, thread("M18"), "8.8", factor) is bool(named)


@given(st.integers(34, 900), st.permutations(["N·m", "lbf·ft", "kgf·m"]))
@steady
def test_a_number_that_is_a_known_torque_in_another_unit_is_told(number: int, units: list[str]) -> None:
    """Though the known torque was rounded to a whole number; typed in its own unit nothing is said."""
    meant, typed = UNITS[units[0]], UNITS[units[1]]
    known = round(number * meant.factor)
    assert unit_that_makes(Fraction(number), typed, Fraction(known)) == meant
    assert unit_that_makes(Fraction(number), meant, Fraction(known)) is None


def test_a_torque_that_no_unit_explains_is_another_torque() -> None:
    """38 and 43 N·m are two torques, and nothing is no torque."""
    assert unit_that_makes(Fraction(38), UNITS["N·m"], Fraction(43)) is None
    assert unit_that_makes(Fraction(0), UNITS["N·m"], Fraction(43)) is None
