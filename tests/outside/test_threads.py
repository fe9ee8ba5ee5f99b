"""Threads, proof loads and engagement held against published tables and worked examples."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from authoring.workshop.metric_thread import COARSE_PITCHES_MM, MetricThread
from authoring.workshop.proof_load import PROPERTY_CLASSES, proof_load_newton, proof_stress_mpa
from authoring.workshop.thread_engagement import engagement_mm, loosest_share, shear_area_mm2_per_mm
from authoring.workshop.thread_geometry import pitch_diameter_mm, root_diameter_mm, stress_area_mm2
from tests.outside.agreement import Agreement
from tests.outside.kept import inch_thread, kept, thread

THREADS = kept("metric_threads.yaml")
LOADS = kept("proof_loads.yaml")
ENGAGEMENT = kept("thread_engagement.yaml")
SQUARE_MM_IN_AN_INCH = 25.4**2

Row = dict[str, Any]


def _proof_load(size: str, property_class: str) -> float:
    load = proof_load_newton(thread(size), property_class)
    assert load is not None
    return load


@pytest.mark.parametrize("row", THREADS["coarse"], ids=lambda row: row["size"])
def test_no_pitch_means_the_published_coarse_one(row: Row, agree: Agreement) -> None:
    """A thread without a pitch has that of the table, and saying it changes nothing."""
    named = thread(f"M{row['size']}")
    agree(row, named.pitch_mm)
    assert named.coarse
    assert thread(f"M{row['size']} x {row['published']}") == named


@pytest.mark.parametrize("row", THREADS["fine"], ids=lambda row: f"{row['size']}x{row['published']}")
def test_fine_pitch_of_the_table_is_read(row: Row, agree: Agreement) -> None:
    """Every fine thread of the tables is a thread, and is not called coarse."""
    named = thread(f"M{row['size']}x{row['published']}")
    agree(row, named.pitch_mm)
    assert named.diameter_mm == Fraction(row["size"])
    assert not named.coarse


@pytest.mark.parametrize("row", THREADS["areas"], ids=lambda row: row["size"])
def test_stress_area_rounds_to_the_published_digits(row: Row, agree: Agreement) -> None:
    """The stress area of each coarse thread is the printed one, to its figures."""
    agree(row, stress_area_mm2(thread("M" + row["size"])))


@pytest.mark.parametrize("row", THREADS["diameters"], ids=lambda row: row["which"])
def test_diameters_follow_the_published_coefficient(row: Row, agree: Agreement) -> None:
    """Pitch and root diameter lie below the nominal one by the published multiple of the pitch."""
    diameter = {"pitch diameter": pitch_diameter_mm, "root diameter": root_diameter_mm}[row["which"]]
    for size, pitch in COARSE_PITCHES_MM.items():
        agree(row, (float(size) - diameter(MetricThread(size, pitch))) / float(pitch))


@pytest.mark.parametrize("row", THREADS["mean_diameter"])
def test_stress_area_has_the_published_diameter(row: Row, agree: Agreement) -> None:
    """The circle of the stress area lies below the nominal one by the published multiple of the pitch."""
    for size, pitch in COARSE_PITCHES_MM.items():
        across = (stress_area_mm2(MetricThread(size, pitch)) * 4 / 3.141592653589793) ** 0.5
        agree(row, (float(size) - across) / float(pitch))


@pytest.mark.parametrize("row", THREADS["inch"])
def test_an_inch_thread_has_an_area_of_its_own(row: Row, agree: Agreement) -> None:
    """The metric formula on an inch thread does not give the printed area: nobody may take it for one."""
    area = stress_area_mm2(inch_thread(row["diameter_in"], row["threads_per_inch"]))
    agree.not_wrong(row, area / SQUARE_MM_IN_AN_INCH)


@pytest.mark.parametrize("row", LOADS["loads"] + LOADS["small"], ids=lambda row: row["size"])
def test_proof_load_is_the_published_one(row: Row, agree: Agreement) -> None:
    """Every class and size comes within the rounding of the printed table, and what it leaves out is not computed."""
    agree(row, [proof_load_newton(thread(row["size"]), one) for one in row["classes"]])


@pytest.mark.parametrize("row", LOADS["loads"], ids=lambda row: row["size"])
def test_every_known_class_is_published(row: Row) -> None:
    """No class stands in ours that the table does not have."""
    assert tuple(row["classes"]) == PROPERTY_CLASSES


@pytest.mark.parametrize("row", LOADS["stresses"], ids=lambda row: f"{row['class']} M{row['size']}")
def test_proof_stress_is_the_published_one(row: Row, agree: Agreement) -> None:
    """The proof stress is that of the standard, and class 8.8 is stronger above M16."""
    agree(row, proof_stress_mpa(row["class"], Fraction(row["size"])))


@pytest.mark.parametrize("row", LOADS["tensile"], ids=lambda row: row["size"])
def test_a_bolt_breaks_above_its_proof_load(row: Row, agree: Agreement) -> None:
    """The proof load lies below the least tensile load of each class."""
    agree.at_most(row, [_proof_load(row["size"], one) for one in row["classes"]])


@pytest.mark.parametrize("row", LOADS["yield"], ids=lambda row: row["class"])
def test_proof_stress_lies_below_the_yield_that_the_class_names(row: Row, agree: Agreement) -> None:
    """Both digits of a class times ten are its nominal yield in MPa."""
    stress = proof_stress_mpa(row["class"], Fraction(row["size"]))
    first, second = (int(one) for one in row["class"].split("."))
    assert first * second * 10 == row["published"]
    agree.at_most(row, stress)


@pytest.mark.parametrize("row", LOADS["not_the_product"], ids=lambda row: str(row["wrong"]))
def test_the_table_is_no_rounded_product(row: Row, agree: Agreement) -> None:
    """Area times stress to three figures is not what is printed, so no test may ask for the last digit."""
    agree.not_wrong(row, float(f"{row['area'] * row['stress']:.3g}"))


@pytest.mark.parametrize("row", LOADS["misprint"], ids=lambda row: row["size"])
def test_proof_load_is_not_the_misprint(row: Row, agree: Agreement) -> None:
    """The proof load lies below the least tensile load, which one stored table prints ten times too large."""
    ours = _proof_load(row["size"], row["class"])
    assert row["meant"] / 2 < ours < row["meant"]
    agree.not_wrong(row, ours)


@pytest.mark.parametrize("row", ENGAGEMENT["worked"], ids=lambda row: str(row["published"]))
def test_engagement_is_the_worked_example(row: Row, agree: Agreement) -> None:
    """The length at which the hole strips is the one worked out in print."""
    area = shear_area_mm2_per_mm(thread(row["thread"]), row.get("least_major"), row.get("greatest_pitch"))
    agree(row, engagement_mm(row["force"], row["shear_strength"], area))


@pytest.mark.parametrize("row", ENGAGEMENT["loosest"], ids=lambda row: row["thread"])
def test_the_loosest_pair_bears_what_is_promised(row: Row, agree: Agreement) -> None:
    """Bolt at its least and hole at its greatest bear the share of the row; what is taken for all is no more."""
    worst = shear_area_mm2_per_mm(thread(row["thread"]), row["least_major"], row["greatest_pitch"])
    share = worst / shear_area_mm2_per_mm(thread(row["thread"]))
    agree(row, share)
    promised = loosest_share(thread(row["thread"]))
    assert promised is not None
    assert promised <= round(share, 2)


@pytest.mark.parametrize("size", ["M2", "M3 x 0.35", "M12 x 0.5"])
def test_no_share_is_promised_where_the_threads_are_too_fine(size: str) -> None:
    """By the limits from memory M3 x 0.35 keeps 0.61 and M12 x 0.5 keeps 0.66, less than any row promises."""
    assert loosest_share(thread(size)) is None
