"""Threads, proof loads, clamp forces, stiffness and engagement held against published tables and worked examples."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Any, NamedTuple

import pint
import pytest
import yaml

from authoring.quantities.units import UNITS
from authoring.workshop.bolt_load import bolt_load
from authoring.workshop.clamp_force import (
    bearing_diameter_mm,
    force_for_friction,
    force_for_nut_factor,
    torque_for_friction,
    torque_for_nut_factor,
    usual_bearing_diameter_mm,
)
from authoring.workshop.interval import exactly
from authoring.workshop.meant_unit import units_probably_meant, usual_torque_newton_metre
from authoring.workshop.metric_thread import COARSE_PITCHES_MM, MetricThread, metric_thread
from authoring.workshop.proof_load import PROPERTY_CLASSES, proof_load_newton, proof_stress_mpa
from authoring.workshop.thread_engagement import engagement_mm, shear_area_mm2_per_mm
from authoring.workshop.thread_geometry import pitch_diameter_mm, root_diameter_mm, stress_area_mm2
from authoring.workshop.tightening_angle import (
    USUAL_JOINT_SHARE,
    bolt_stiffness_newton_per_mm,
    force_from_turn_newton,
    force_span_from_turn_newton,
)

HERE = Path(__file__).parent


def _data(name: str) -> dict[str, Any]:
    data: dict[str, Any] = yaml.safe_load((HERE / name).read_text(encoding="utf-8"))
    return data


THREADS = _data("metric_threads.yaml")
LOADS = _data("proof_loads.yaml")
FORCES = _data("clamp_forces.yaml")
STIFFNESS = _data("bolt_stiffness.yaml")
ENGAGEMENT = _data("thread_engagement.yaml")


class Tightened(NamedTuple):
    """One torque of the table: its thread, bearing face in mm, friction, class, force in N and torque in N·m."""

    thread: str
    face: tuple[float, float]
    friction: float
    property_class: str
    force: float
    torque: float


TIGHTENED = [
    Tightened(group["thread"], tuple(group["face"]), row["friction"], property_class, force * 1000, torque)
    for group in FORCES["friction"]
    for row in group["rows"]
    for property_class, force, torque in zip(("8.8", "10.9", "12.9"), row["forces"], row["torques"], strict=True)
]


def _thread(text: str) -> MetricThread:
    thread = metric_thread(text)
    assert thread is not None, text
    return thread


@pytest.mark.parametrize("row", THREADS["coarse"], ids=lambda row: row["size"])
def test_no_pitch_means_the_published_coarse_one(row: dict[str, str]) -> None:
    """A thread without a pitch has that of the table, and saying it changes nothing."""
    thread = _thread(f"M{row['size']}")
    assert thread.pitch_mm == Fraction(row["pitch"])
    assert thread.coarse
    assert _thread(f"M{row['size']} x {row['pitch']}") == thread


@pytest.mark.parametrize("row", THREADS["fine"], ids=lambda row: f"{row['size']}x{row['pitch']}")
def test_fine_pitch_of_the_table_is_read(row: dict[str, str]) -> None:
    """Every fine thread of the tables is a thread, and is not called coarse."""
    thread = _thread(f"M{row['size']}x{row['pitch']}")
    assert (thread.diameter_mm, thread.pitch_mm) == (Fraction(row["size"]), Fraction(row["pitch"]))
    assert not thread.coarse


@pytest.mark.parametrize("row", [row for row in THREADS["coarse"] if "area" in row], ids=lambda row: row["size"])
def test_stress_area_rounds_to_the_published_digits(row: dict[str, str]) -> None:
    """The stress area of each coarse thread is the printed one, to its three figures."""
    assert f"{stress_area_mm2(_thread('M' + row['size'])):.3g}".rstrip(".0") == row["area"].rstrip(".0")


@pytest.mark.parametrize("row", THREADS["diameters"], ids=lambda row: row["of"])
def test_diameters_follow_the_published_coefficient(row: dict[str, str]) -> None:
    """Pitch and root diameter lie below the nominal one by the published multiple of the pitch."""
    diameter = {"pitch diameter": pitch_diameter_mm, "root diameter": root_diameter_mm}[row["of"]]
    for size, pitch in COARSE_PITCHES_MM.items():
        below = (float(size) - diameter(MetricThread(size, pitch))) / float(pitch)
        assert below == pytest.approx(float(row["coefficient"]), abs=1e-6)


@pytest.mark.parametrize("row", LOADS["loads"], ids=lambda row: row["size"])
def test_proof_load_is_the_published_one(row: dict[str, Any]) -> None:
    """Every class and size comes within the rounding of the printed table, and what it leaves out is not computed."""
    assert tuple(LOADS["classes"]) == PROPERTY_CLASSES
    for property_class, printed in zip(LOADS["classes"], row["loads"], strict=True):
        ours = proof_load_newton(_thread(row["size"]), property_class)
        assert ours == (None if printed is None else pytest.approx(printed, rel=LOADS["tolerance"]))


@pytest.mark.parametrize("row", LOADS["stresses"], ids=lambda row: f"{row['class']} M{row['size']}")
def test_proof_stress_is_the_published_one(row: dict[str, Any]) -> None:
    """The proof stress is that of the standard, and class 8.8 is stronger above M16."""
    assert proof_stress_mpa(row["class"], Fraction(row["size"])) == row["stress"]


def test_proof_load_is_not_the_misprint() -> None:
    """The proof load lies below the least tensile load, which one stored table prints ten times too large."""
    (row,) = LOADS["misprint"]
    ours = proof_load_newton(_thread(row["size"]), row["class"])
    assert ours is not None
    assert row["meant"] / 2 < ours < row["meant"] < row["misprinted"] / 2


@pytest.mark.parametrize("row", TIGHTENED)
def test_full_formula_gives_the_published_torque(row: Tightened) -> None:
    """Torque and force of VDI 2230 belong to each other, with the real bearing face and nearly with the usual one."""
    thread, face, friction = _thread(row.thread), bearing_diameter_mm(*row.face), row.friction
    exact, usual = FORCES["friction_tolerance"], FORCES["usual_face_tolerance"]
    assert torque_for_friction(row.force, thread, friction, friction, face) == pytest.approx(row.torque, rel=exact)
    assert force_for_friction(row.torque, thread, friction, friction, face) == pytest.approx(row.force, rel=exact)
    assert torque_for_friction(row.force, thread, friction, friction) == pytest.approx(row.torque, rel=usual)


@pytest.mark.parametrize("row", TIGHTENED)
def test_published_torque_does_not_overload_its_bolt(row: Tightened) -> None:
    """At its own friction a table torque stays below the proof load, and its force is the table's."""
    torque, friction = (exactly(Fraction(str(number))) for number in (row.torque, row.friction))
    load = bolt_load(torque, _thread(row.thread), row.property_class, friction)
    assert load is not None
    assert not load.overloaded
    assert load.greatest_newton == load.least_newton == pytest.approx(row.force, rel=FORCES["usual_face_tolerance"])


@pytest.mark.parametrize("row", TIGHTENED)
def test_published_torque_is_near_the_usual_one(row: Tightened) -> None:
    """What a torque is held against when its unit is in doubt lies within a quarter of the table's."""
    usual = usual_torque_newton_metre(_thread(row.thread), row.property_class)
    assert usual is not None
    assert row.torque == pytest.approx(usual, rel=0.25)
    assert units_probably_meant(Fraction(str(row.torque)), UNITS["N·m"], _thread(row.thread), row.property_class) == ()


@pytest.mark.parametrize("thread", dict.fromkeys((row.thread, row.face) for row in TIGHTENED if row.friction == 0.1))
def test_usual_bearing_face_is_near_the_real_ones(thread: tuple[str, tuple[float, float]]) -> None:
    """The face that is taken when nobody states one is within 5 % of a hexagon head's."""
    name, face = thread
    assert usual_bearing_diameter_mm(_thread(name)) == pytest.approx(bearing_diameter_mm(*face), rel=0.05)


@pytest.mark.parametrize("row", FORCES["worked"], ids=lambda row: row["thread"])
def test_short_formula_gives_the_worked_example(row: dict[str, Any]) -> None:
    """The torque for a share of the proof stress is the one worked out in print."""
    force = row["share"] * row["stress"] * row["area"]
    torque = torque_for_nut_factor(force, _thread(row["thread"]), row["factor"])
    assert torque == pytest.approx(row["torque"], abs=row["tolerance"])


def _inch_thread(row: dict[str, Any]) -> MetricThread:
    """Return an inch thread in mm: a UN thread has the profile, and so the formulas, of a metric one."""
    inch = Fraction(254, 10)
    pitch = inch / row.get("threads_per_inch", 16)
    return MetricThread(Fraction(str(row["diameter_in"])) * inch, pitch)


@pytest.mark.parametrize("row", FORCES["inch"], ids=lambda row: row["way"])
def test_both_formulas_give_the_inch_example(row: dict[str, Any]) -> None:
    """A worked example in pounds and inches comes out in newtons and metres; another library converts it."""
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    force = registry.Quantity(row["force_lbf"], "force_pound").to("newton").magnitude
    thread = _inch_thread(row)
    if row["way"] == "nut factor":
        ours = torque_for_nut_factor(force, thread, row["factor"])
    else:
        face = row["collar"] * float(thread.diameter_mm)
        ours = torque_for_friction(force, thread, row["friction"], row["friction"], face)
    theirs = registry.Quantity(row["torque_lbf_in"], "force_pound * inch").to("newton * meter").magnitude
    assert ours == pytest.approx(theirs, rel=row.get("tolerance", 1e-9))


@pytest.mark.parametrize("row", FORCES["nut_factors"], ids=lambda row: row["condition"])
def test_second_library_agrees_on_the_units_of_the_short_formula(row: dict[str, Any]) -> None:
    """F = T / (K d) worked out with units by another library is the same force."""
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    theirs = registry.Quantity(42.0, "newton * meter") / (row["factor"] * registry.Quantity(10.0, "millimeter"))
    ours = force_for_nut_factor(42.0, _thread("M10"), row["factor"])
    assert ours == pytest.approx(theirs.to("newton").magnitude, rel=1e-12)


@pytest.mark.parametrize("row", STIFFNESS["rows"], ids=lambda row: str(row["grip"]))
def test_bolt_stiffness_is_the_published_one(row: dict[str, Any]) -> None:
    """The stiffness of a bolt with shank and thread is the table's, and so is its share of the joint's."""
    plain = row["bolt_length"] - STIFFNESS["thread_in"]
    threaded = row["grip"] - plain
    # The formula has no unit of its own: with inches and Mpsi it gives Mlbf/in.
    ours = bolt_stiffness_newton_per_mm(
        STIFFNESS["diameter_in"], STIFFNESS["stress_area_in2"], plain, threaded, STIFFNESS["modulus_mpsi"]
    )
    assert ours == pytest.approx(row["bolt"], abs=0.005)
    assert ours / (ours + row["joint"]) == pytest.approx(row["share"], abs=0.001)
    assert USUAL_JOINT_SHARE[0] < row["joint"] / ours < USUAL_JOINT_SHARE[1]


@pytest.mark.parametrize("row", STIFFNESS["rows"], ids=lambda row: str(row["grip"]))
def test_published_bolt_and_joint_lie_in_the_span_of_their_grip(row: dict[str, Any]) -> None:
    """The force of a turn, worked out from the printed stiffnesses, is inside the span that the grip alone gives."""
    registry: pint.UnitRegistry[float] = pint.UnitRegistry()
    own, joint = (
        registry.Quantity(row[part] * 1e6, "force_pound / inch").to("newton / millimeter").magnitude
        for part in ("bolt", "joint")
    )
    inch = Fraction(254, 10)
    thread = MetricThread(inch / 2, inch / STIFFNESS["threads_per_inch"])
    least, greatest = force_span_from_turn_newton(Fraction(30), thread, row["grip"] * float(inch))
    assert least < force_from_turn_newton(Fraction(30), thread, own, joint) < greatest


@pytest.mark.parametrize("row", ENGAGEMENT["worked"], ids=lambda row: str(row["length"]))
def test_engagement_is_the_worked_example(row: dict[str, Any]) -> None:
    """The length at which the hole strips is the one worked out in print."""
    area = shear_area_mm2_per_mm(_thread(row["thread"]), row.get("least_major"), row.get("greatest_pitch"))
    assert engagement_mm(row["force"], row["shear_strength"], area) == pytest.approx(
        row["length"], abs=row["tolerance"]
    )


def _rows(part: object) -> list[dict[str, Any]]:
    """Return every group of a file that states how it is known, wherever it stands."""
    if isinstance(part, list):
        return [row for one in part for row in _rows(one)]
    if not isinstance(part, dict):
        return []
    return [part] if "status" in part else [row for one in part.values() for row in _rows(one)]


def test_every_row_says_how_it_is_known() -> None:
    """Each section of each file names its source, and each row carries one of the four statuses."""
    for data in (THREADS, LOADS, FORCES, STIFFNESS, ENGAGEMENT):
        sections = {name: _rows(part) for name, part in data.items() if name != "sources"}
        assert {name for name, rows in sections.items() if rows} == set(data["sources"])
        statuses = {row["status"] for rows in sections.values() for row in rows}
        assert statuses <= {"read", "restated", "memory", "common practice"}
