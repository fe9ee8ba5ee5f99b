"""Which end of what is stated counts when a hot part must have cooled: the careful one, or none."""

from __future__ import annotations

import math

import pytest

from authoring.model.cooling import constant_of, contact_of, harm_of
from authoring.model.things import Equipment, Item
from authoring.pipeline import check
from authoring.workshop.cooling import Estimate

HEAD = """\
equipment: hob
name: Hob
sources: {plate: {title: Plate, edition: "1", kind: maker}}
items:
  pipe:
    name: pipe
"""


def item(more: str) -> Item:
    """Return an item of a small equipment file."""
    found = check({"hob.yaml": f"{HEAD}    {more}\n".encode()}, []).library.equipment["hob"]
    assert isinstance(found, Equipment)
    return found.items["pipe"]


def constant(more: str) -> float | None:
    """Return the time constant in minutes; None where nothing limits it."""
    told = constant_of(item(more))
    assert told is None or isinstance(told, Estimate)
    return None if told is None else told.value / 60


@pytest.mark.parametrize(
    ("stated", "minutes"),
    [
        ("25 min", 25),
        ("20 to 30 min", 30),
        ("25 ± 5 min", 30),
        ("at most 30 min", 30),
        ("at least 30 min", None),
    ],
)
def test_the_longest_time_constant_counts(stated: str, minutes: float | None) -> None:
    """Of a range the longest; of what is only a least one nothing is promised."""
    assert constant(f"cooling: {{value: {stated}, source: plate, at: line 1}}") == minutes


def test_readings_are_taken_at_their_slowest() -> None:
    """The coolest start, the warmest end, the longest time and the coldest air give the longest constant."""
    spans = "cooled: {from: 170 to 180 °C, to: 90 to 95 °C, in: 18 to 20 min, air: 15 to 25 °C, source: plate, at: l}"
    slowest = 20 / math.log((170 - 15) / (95 - 15))
    assert constant(spans) == pytest.approx(slowest)
    for first in (170, 180):
        for second in (90, 95):
            for air in (15, 25):
                one = f"cooled: {{from: {first} °C, to: {second} °C, in: 20 min, air: {air} °C, source: plate, at: l}}"
                told = constant(one)
                assert told is not None
                assert told <= slowest + 1e-9
    assert constant("cooled: {from: 170 °C, to: at least 95 °C, in: 20 min, air: 20 °C, source: plate, at: l}") is None


TOUCHES = {"": 1, ", touch: 0.5 s": 1, ", touch: 1 to 2 min": 120, ", touch: at least 1 s": 28_800}


@pytest.mark.parametrize("touch", TOUCHES)
def test_the_longest_touch_counts(touch: str) -> None:
    """A second where nobody said or less is said, and eight hours where nothing limits it."""
    hot = item(f"hot: {{value: 80 °C, source: plate, at: l, surface: bare-metal{touch}}}").hot
    assert hot is not None
    assert contact_of(hot) == TOUCHES[touch]


REACHED = {"64 °C": False, "at most 64 °C": False, "60 to 66 °C": True, "at least 20 °C": True}


@pytest.mark.parametrize("reached", REACHED)
def test_a_thing_burns_as_hot_as_it_may_get(reached: str) -> None:
    """The upper end counts; without one it may get hot enough."""
    hot = item(f"hot: {{value: {reached}, source: plate, at: l, surface: bare-metal}}").hot
    assert hot is not None
    assert (harm_of(hot) is not None) is REACHED[reached]
