"""Whether a fact of a thing may lie beyond a bound of the shop's policy."""

from __future__ import annotations

import pytest

from authoring.model.meant import beyond
from authoring.pipeline import check
from authoring.quantities.quantity import Quantity
from authoring.quantities.read import read_quantity

HEAD = """\
equipment: hob
name: Hob
sources: {plate: {title: Plate, edition: "1", kind: maker}}
items:
  pipe:
    name: pipe
"""

REACHED = {
    "59 °C": False,
    "60 °C": False,
    "61 °C": True,
    "at most 61 °C": True,
    "50 to 60 °C": False,
    "at least 20 °C": True,
}


@pytest.mark.parametrize("reached", REACHED)
def test_a_thing_lies_beyond_a_bound_when_nothing_keeps_it_below(reached: str) -> None:
    """The most counts; where only a least is stated, it may be as hot as you like."""
    hot = f"    hot: {{value: {reached}, source: plate, at: l, surface: bare-metal}}\n"
    item = check({"hob.yaml": (HEAD + hot).encode()}, []).library.equipment["hob"].items["pipe"]
    bound = read_quantity("60 °C")
    assert isinstance(bound, Quantity)
    assert beyond(item, "hotter-than", bound) is REACHED[reached]
