"""What is read as a metric thread, and what is not."""

from __future__ import annotations

import time
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from authoring.workshop.metric_thread import COARSE_PITCHES_MM, MetricThread, metric_thread
from authoring.workshop.thread_geometry import pitch_diameter_mm, root_diameter_mm, stress_area_mm2

COARSE = sorted(COARSE_PITCHES_MM.items())


@pytest.mark.parametrize(
    ("text", "diameter", "pitch"),
    [
        ("M10", "10", "1.5"),
        ("M10 x 1.5", "10", "1.5"),
        ("M10x1.5", "10", "1.5"),
        ("M10 x 1.50", "10", "1.5"),
        ("M10×1.25", "10", "1.25"),
        ("M 10 x 1", "10", "1"),
        ("  M10 x 1.0  ", "10", "1"),
        ("M10-6g", "10", "1.5"),
        ("M10 x 1.25 - 6g", "10", "1.25"),
        ("M20 x 2-6H/5g6g", "20", "2"),
        ("M22 x 1.5", "22", "1.5"),
        ("M15 x 1", "15", "1"),
        ("M120 x 6", "120", "6"),
        ("M1.6", "1.6", "0.35"),
    ],
)
def test_a_metric_thread_is_read(text: str, diameter: str, pitch: str) -> None:
    """Diameter and pitch are exact, the coarse pitch stands in for a missing one, a tolerance class is left aside."""
    assert metric_thread(text) == MetricThread(Fraction(diameter), Fraction(pitch))


@pytest.mark.parametrize("text", ["M10-LH", "M10 x 1.5 LH", "M10x1.5-6g-LH"])
def test_a_left_hand_thread_is_told(text: str) -> None:
    """LH behind the thread is kept, since it turns the other way."""
    assert metric_thread(text) == MetricThread(Fraction(10), Fraction(3, 2), left_hand=True)


@pytest.mark.parametrize(
    "text",
    [
        "",
        "M",
        "10",
        "m10 x 1.5",
        "MJ10 x 1.5",
        "M10 x 1,5",
        "M10 x",
        "M10 x 2",
        "M10 x 1.4",
        "M10 x 0",
        "M10 x 15",
        "M10 x 1.5 x 30",
        "M10 x 30",
        "M10.5.2",
        "M0.5",
        "M0",
        "M15",
        "M15 x 2.5",
        "M400 x 6",
        "M10 10.9",
        "M10 bolt",
        "M16 x Ph3 P1.5",
        "M١٠",
        "G 1/2",
        "1/2-13 UNC",
        "3/4-16 UNF",
        "R 1/2",
        "NPT 1/4",
        "Tr 20 x 4",
        "worm screw",
        "wood screw",
    ],
)
def test_what_is_no_metric_thread_is_none(text: str) -> None:
    """Other threads, lengths, misspellings and pitches outside the plan give nothing, and nothing is raised."""
    assert metric_thread(text) is None


@given(st.text(alphabet="M0123456789.x× -gHL6h/", max_size=40))
@settings(max_examples=300)
def test_whatever_is_read_is_a_thread(text: str) -> None:
    """Any text gives nothing or a thread whose diameters lie in their order and whose area is above zero."""
    thread = metric_thread(text)
    if thread is not None:
        assert 0 < root_diameter_mm(thread) < pitch_diameter_mm(thread) < thread.diameter_mm
        assert stress_area_mm2(thread) > 0


def test_a_long_text_is_refused_at_once() -> None:
    """The time grows with the length of a hostile text and no faster."""
    started = time.perf_counter()
    assert metric_thread("M10" + " " * 100_000 + "x" * 100_000) is None
    assert metric_thread("M10 x 1.5" + "-6g" * 50_000) is None
    assert time.perf_counter() - started < 1


@given(st.sampled_from(COARSE), st.sampled_from(COARSE))
@settings(max_examples=100)
def test_a_thicker_coarse_thread_bears_more(one: tuple[Fraction, Fraction], other: tuple[Fraction, Fraction]) -> None:
    """The stress area grows with the size of a coarse thread."""
    if one < other:
        assert stress_area_mm2(MetricThread(*one)) < stress_area_mm2(MetricThread(*other))


@given(st.sampled_from(COARSE), st.integers(1, 9))
@settings(max_examples=100)
def test_a_finer_thread_bears_more(size: tuple[Fraction, Fraction], tenths: int) -> None:
    """At one diameter the finer pitch leaves the larger area, and scale leaves its shape as it is."""
    diameter, pitch = size
    finer = MetricThread(diameter, pitch * tenths / 10)
    assert stress_area_mm2(finer) > stress_area_mm2(MetricThread(diameter, pitch))
    twice = MetricThread(2 * diameter, 2 * finer.pitch_mm)
    assert stress_area_mm2(twice) == pytest.approx(4 * stress_area_mm2(finer))
