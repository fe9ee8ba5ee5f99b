"""How far a gauge may be off, whether it shows what is measured, and which of several is taken."""

from __future__ import annotations

from fractions import Fraction

import pytest

from authoring.model.gauging import Gauge, gauge_of
from authoring.pipeline import check
from authoring.quantities.quantity import Quantity
from authoring.quantities.read import read_quantity
from authoring.workshop.interval import Interval


def gauge(more: str) -> Gauge:
    """Return a gauge of a small stock file."""
    text = f"stock: Stores\ntools:\n  gauge: {{name: gauge, {more}}}\n"
    stock = check({"stock.yaml": text.encode()}, []).library.stock
    assert stock is not None
    found = gauge_of(stock.tools["gauge"])
    assert found is not None
    return found


def size(text: str) -> Quantity:
    """Return a size that is sound."""
    found = read_quantity(text)
    assert isinstance(found, Quantity)
    return found


OFF = {
    "": "0.025",
    ", by-eye: true": "0.05",
    ", accuracy: {value: 0.1 mm, source: s}": "0.1",
    ", accuracy: {value: at most 0.1 mm, source: s}": "0.1",
    ", accuracy: {value: 0.05 to 0.1 mm, source: s}": "0.1",
    ", accuracy: {value: 0.004 in, source: s}": "0.1016",
    ", accuracy: {value: at least 0.1 mm, source: s}": "0.025",
    ", accuracy: {value: 1 %, source: s}": "0.2",
    ", accuracy: {value: at most 1 %, source: s}": "0.2",
}


@pytest.mark.parametrize("more", OFF)
def test_the_most_that_is_stated_counts(more: str) -> None:
    """Near 20 mm: half a step, a whole one by eye, the stated amount at its most, or the stated share."""
    near = Interval(Fraction(10), Fraction(20))
    assert gauge(f"resolution: 0.05 mm{more}").blur(near) == Fraction(OFF[more])


def test_a_difference_is_an_accuracy_of_a_thermometer() -> None:
    """A kelvin is as far as a degree Celsius, and 1.8 degrees Fahrenheit."""
    for scale, off in (("0.5 °C", "1.5"), ("1 °F", "2.7")):
        found = gauge(f"resolution: {scale}, accuracy: {{value: 1.5 K, source: s}}")
        assert found.blur() == Fraction(off)


@pytest.mark.parametrize(
    "sizes",
    [["24 to 26 mm"], ["at least 30 mm"], ["10 mm", "26 mm"], ["20 °C"], ["1 in"]],
)
def test_a_gauge_does_not_show_what_lies_beyond_its_scale(sizes: list[str]) -> None:
    """One end outside is enough, in another unit too; and a length is no temperature."""
    found = gauge("resolution: 0.01 mm, range: {value: 0 to 25 mm, source: s}")
    assert not found.shows([size(one) for one in sizes])
    assert found.shows([size("0 to 25 mm"), size("at most 0.9 in")])
