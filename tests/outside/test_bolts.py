"""Clamp forces, torques, stiffness and turns held against published tables and worked examples."""

from __future__ import annotations

import statistics
from fractions import Fraction
from typing import Any

import pint
import pytest

from authoring.quantities.units import UNITS
from authoring.workshop.bolt_load import bolt_load, bolt_load_for_nut_factor
from authoring.workshop.clamp_force import (
    force_for_friction,
    force_for_nut_factor,
    torque_for_friction,
    torque_for_nut_factor,
    usual_bearing_diameter_mm,
)
from authoring.workshop.interval import exactly
from authoring.workshop.meant_unit import units_probably_meant, usual_torque_newton_metre
from authoring.workshop.thread_geometry import stress_area_mm2
from authoring.workshop.tightening_angle import (
    STEEL_MODULUS_MPA,
    USUAL_JOINT_SHARE,
    bolt_stiffness_newton_per_mm,
    force_from_turn_newton,
    force_span_from_turn_newton,
    take_up_mm,
)
from tests.outside.agreement import Agreement
from tests.outside.kept import inch_thread, kept, thread

FORCES = kept("clamp_forces.yaml")
TURNS = kept("bolt_stiffness.yaml")
INCH_MM = 25.4
# Worked out by a second library, which knows the pound and the inch by itself.
REGISTRY: pint.UnitRegistry[float] = pint.UnitRegistry()
LBF_N = REGISTRY.Quantity(1.0, "force_pound").to("newton").magnitude
LBF_IN_NM = REGISTRY.Quantity(1.0, "force_pound * inch").to("newton * meter").magnitude
MLBF_PER_IN = REGISTRY.Quantity(1e6, "force_pound / inch").to("newton / millimeter").magnitude
STIFFEST = 1e15
"""A joint that does not give, in N/mm."""

Row = dict[str, Any]


def _friction_id(row: Row) -> str:
    return f"{row['thread']} {row['friction']}"


@pytest.mark.parametrize("row", FORCES["friction"], ids=_friction_id)
def test_full_formula_gives_the_published_torque(row: Row, agree: Agreement) -> None:
    """Torque and force of VDI 2230 belong to each other, with the real bearing face."""
    named, face, friction = thread(row["thread"]), statistics.mean(row["face"]), row["friction"]
    forces = [1000 * force for force in row["forces"]]
    agree(row, [torque_for_friction(force, named, friction, friction, face) for force in forces])
    for torque, force in zip(row["published"], forces, strict=True):
        back = force_for_friction(torque, named, friction, friction, face)
        assert back == pytest.approx(force, rel=row["tolerance"])


@pytest.mark.parametrize("row", FORCES["usual_face"], ids=_friction_id)
def test_the_usual_face_gives_nearly_the_published_torque(row: Row, agree: Agreement) -> None:
    """Where nobody states the bearing face, the torque of VDI 2230 is still near."""
    named, friction = thread(row["thread"]), row["friction"]
    ours = [torque_for_friction(1000 * force, named, friction, friction) for force in row["forces"]]
    agree(row, ours, of="clamp_force")


@pytest.mark.parametrize("row", FORCES["usual_face"], ids=_friction_id)
def test_published_torque_does_not_overload_its_bolt(row: Row, agree: Agreement) -> None:
    """At its own friction a table torque stays below the proof load, and its force is the table's."""
    friction = exactly(Fraction(str(row["friction"])))
    loads = [
        bolt_load(exactly(Fraction(str(torque))), thread(row["thread"]), one, friction)
        for torque, one in zip(row["published"], row["classes"], strict=True)
    ]
    forces = [load.greatest_newton / 1000 for load in loads if load is not None]
    assert [load.least_newton / 1000 for load in loads if load is not None] == forces
    assert not any(load is None or load.overloaded for load in loads)
    agree({**row, "published": row["forces"]}, forces, of="bolt_load")


@pytest.mark.parametrize("row", FORCES["usual_torque"], ids=_friction_id)
def test_published_torque_is_near_the_usual_one(row: Row, agree: Agreement) -> None:
    """What a torque is held against when its unit is in doubt lies within a quarter of the table's."""
    named = thread(row["thread"])
    usual = [usual_torque_newton_metre(named, one) for one in row["classes"]]
    agree(row, usual)
    for torque, one in zip(row["published"], row["classes"], strict=True):
        assert units_probably_meant(Fraction(str(torque)), UNITS["N·m"], named, one) == ()


@pytest.mark.parametrize("row", FORCES["usual"], ids=lambda row: f"{row['thread']} {row['class']}")
def test_usual_torque_is_the_one_worked_out_from_the_printed_load(row: Row, agree: Agreement) -> None:
    """A fifth of the diameter at three quarters of the proof load."""
    agree(row, usual_torque_newton_metre(thread(row["thread"]), row["class"]))


@pytest.mark.parametrize("row", FORCES["friction"], ids=_friction_id)
def test_usual_bearing_face_is_near_the_real_ones(row: Row) -> None:
    """The face that is taken when nobody states one is within 5 % of a hexagon head's."""
    real = statistics.mean(row["face"])
    assert usual_bearing_diameter_mm(thread(row["thread"])) == pytest.approx(real, rel=0.05)


@pytest.mark.parametrize("row", FORCES["worked"], ids=lambda row: row["thread"])
def test_short_formula_gives_the_worked_example(row: Row, agree: Agreement) -> None:
    """The torque for a share of the proof stress is the one worked out in print."""
    force = row["share"] * row["stress"] * row["area"]
    agree(row, torque_for_nut_factor(force, thread(row["thread"]), row["factor"]))


@pytest.mark.parametrize("row", FORCES["worked_load"], ids=lambda row: row["thread"])
def test_a_load_by_the_short_formula_is_the_worked_example(row: Row, agree: Agreement) -> None:
    """With one factor and a tool without error the least and the greatest force are the printed one."""
    torque, factor = exactly(Fraction(row["torque"])), exactly(Fraction(row["factor"]))
    load = bolt_load_for_nut_factor(torque, thread(row["thread"]), row["class"], factor)
    assert load is not None
    assert load.least_newton == load.greatest_newton
    assert not load.overloaded
    agree(row, load.greatest_newton / 1000)


@pytest.mark.parametrize("row", FORCES["short_inch"])
def test_short_formula_gives_the_inch_example(row: Row, agree: Agreement) -> None:
    """A worked example in pounds and inches comes out in newtons and metres; another library converts it."""
    named = inch_thread(row["diameter_in"], row["threads_per_inch"])
    agree(row, torque_for_nut_factor(row["force_lbf"] * LBF_N, named, row["factor"]) / LBF_IN_NM)


@pytest.mark.parametrize("row", FORCES["friction_inch"])
def test_full_formula_gives_the_inch_example(row: Row, agree: Agreement) -> None:
    """The same bolt by its friction, with the collar of the book."""
    named = inch_thread(row["diameter_in"], row["threads_per_inch"])
    face = row["collar"] * float(named.diameter_mm)
    force, friction = row["force_lbf"] * LBF_N, row["friction"]
    agree(row, torque_for_friction(force, named, friction, friction, face) / LBF_IN_NM)


@pytest.mark.parametrize("row", FORCES["nut_factors"], ids=lambda row: row["condition"])
def test_short_formula_gives_the_force_of_each_factor(row: Row, agree: Agreement) -> None:
    """F = T / (K d), as kept, and as another library with units works it out."""
    ours = force_for_nut_factor(row["torque"], thread(row["thread"]), row["factor"])
    agree(row, ours)
    lever = row["factor"] * REGISTRY.Quantity(float(thread(row["thread"]).diameter_mm), "millimeter")
    theirs = REGISTRY.Quantity(float(row["torque"]), "newton * meter") / lever
    assert ours == pytest.approx(theirs.to("newton").magnitude, rel=1e-12)


@pytest.mark.parametrize("row", FORCES["zinc"])
def test_one_handbooks_factor_is_not_the_others(row: Row, agree: Agreement) -> None:
    """The force by the one factor is far from that by the other, so a factor needs a source of its own."""
    agree.not_wrong(row, force_for_nut_factor(row["torque"], thread(row["thread"]), row["factor"]))


@pytest.mark.parametrize("row", TURNS["rows_of_grips"], ids=lambda row: str(row["grip"]))
def test_bolt_stiffness_is_the_published_one(row: Row, agree: Agreement) -> None:
    """The stiffness of a bolt with shank and thread is the table's, and so is its share of the joint's."""
    plain = row["bolt_length"] - row["thread_in"]
    threaded = row["grip"] - plain
    # The formula has no unit of its own: with inches and Mpsi it gives Mlbf/in.
    ours = bolt_stiffness_newton_per_mm(
        row["diameter_in"], row["stress_area_in2"], plain, threaded, row["modulus_mpsi"]
    )
    agree(row, ours)
    assert ours / (ours + row["joint"]) == pytest.approx(row["share"], abs=0.001)
    assert USUAL_JOINT_SHARE[0] < row["joint"] / ours < USUAL_JOINT_SHARE[1]


@pytest.mark.parametrize("row", TURNS["rows_of_grips"], ids=lambda row: str(row["grip"]))
def test_published_bolt_and_joint_lie_in_the_span_of_their_grip(row: Row) -> None:
    """The force of a turn, worked out from the printed stiffnesses, is inside the span that the grip alone gives."""
    own, joint = row["published"] * MLBF_PER_IN, row["joint"] * MLBF_PER_IN
    named = inch_thread(row["diameter_in"], row["threads_per_inch"])
    least, greatest = force_span_from_turn_newton(Fraction(30), named, row["grip"] * INCH_MM)
    assert least < force_from_turn_newton(Fraction(30), named, own, joint) < greatest


@pytest.mark.parametrize("row", TURNS["shares"], ids=lambda row: str(row["published"]))
def test_bolt_and_joint_share_a_turn_as_published(row: Row, agree: Agreement) -> None:
    """What the joint gives of a turn is the bolt's share of the stiffness: the constant C of the book."""
    named, turn = thread("M12"), Fraction(90)
    own, joint = row["bolt"] * MLBF_PER_IN, row["joint"] * MLBF_PER_IN
    stretch = force_from_turn_newton(turn, named, own, joint) / own
    agree(row, 1 - stretch / float(take_up_mm(turn, named)))


@pytest.mark.parametrize("row", TURNS["rigid"], ids=lambda row: row["thread"])
def test_a_rigid_joint_needs_the_published_angle(row: Row, agree: Agreement) -> None:
    """The turn that stresses a bolt in a joint that does not give is the handbook's."""
    named = thread(row["thread"])
    area = stress_area_mm2(named)
    own = area * STEEL_MODULUS_MPA / row["length"]
    stress_of_a_degree = force_from_turn_newton(Fraction(1), named, own, STIFFEST) / area
    agree(row, row["stress"] / stress_of_a_degree)


@pytest.mark.parametrize(
    "row", TURNS["take_up"] + TURNS["quarter_turn"], ids=lambda row: f"{row['thread']} {row['angle']}"
)
def test_a_turn_takes_up_its_share_of_the_pitch(row: Row, agree: Agreement) -> None:
    """The way in µm, for a degree and for a quarter turn."""
    agree(row, take_up_mm(Fraction(row["angle"]), thread(row["thread"])) * 1000)


@pytest.mark.parametrize("row", TURNS["stages"])
def test_turns_add_up_to_the_published_one(row: Row, agree: Agreement) -> None:
    """A head turned in four stages is turned by their sum."""
    named = thread(row["thread"])
    way = sum(take_up_mm(Fraction(angle), named) for angle in row["angles"])
    agree(row, way / take_up_mm(Fraction(1), named))
