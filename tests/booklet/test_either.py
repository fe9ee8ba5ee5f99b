"""Conditions of which one is enough: nothing is lost when they are put together."""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from authoring.booklet.either import either
from authoring.model.fitments import may_hold
from authoring.model.specification import When
from tests.booklet.rare_booklet import booklet, rows

VALUES = {"axle": ("wide", "narrow", "none"), "brake": ("drum", "disc"), "cooler": ("open", "shut")}
MACHINES = [dict(zip(VALUES, picked, strict=True)) for picked in itertools.product(*VALUES.values())]

WHENS = st.lists(
    st.fixed_dictionaries(
        {},
        optional={
            feature: st.lists(st.sampled_from(values), min_size=1, unique=True).map(tuple)
            for feature, values in VALUES.items()
        },
    ),
    min_size=1,
    max_size=5,
)


@given(WHENS)
def test_the_same_machines_are_meant_before_and_after(whens: list[When]) -> None:
    """Over every machine there is: one of the conditions holds before just where one holds after."""
    left = either(whens, VALUES)
    for machine in MACHINES:
        before = any(may_hold(when, machine) for when in whens)
        assert before == (not left or any(may_hold(when, machine) for when in left))
    assert len(left) <= len(whens)


@pytest.mark.parametrize(
    ("whens", "left"),
    [
        ([{"axle": ("wide",)}, {"axle": ("none",)}], ({"axle": ("wide", "none")},)),
        ([{"brake": ("drum",)}, {"brake": ("disc",)}], ()),
        ([{"brake": ("drum",)}, {}], ()),
        ([{"brake": ("drum",)}, {"cooler": ("open",)}], ({"brake": ("drum",)}, {"cooler": ("open",)})),
        ([{"brake": ("drum",)}, {"brake": ("drum",), "cooler": ("open",)}], ({"brake": ("drum",)},)),
        (
            [{"axle": ("wide",), "brake": ("drum",)}, {"axle": ("none",), "brake": ("disc",)}],
            ({"axle": ("wide",), "brake": ("drum",)}, {"axle": ("none",), "brake": ("disc",)}),
        ),
        (
            [{"axle": ("wide",), "brake": ("drum",)}, {"axle": ("wide",), "brake": ("disc",)}],
            ({"axle": ("wide",)},),
        ),
    ],
)
def test_two_conditions_become_one_where_one_is_as_good(whens: list[When], left: tuple[When, ...]) -> None:
    """Two values of a feature go together, all of them say nothing, and two features stay two conditions."""
    assert either(whens, VALUES) == left


def test_a_thing_for_two_different_conditions_tells_both() -> None:
    """A part of two steps, one for a cover and one for a breather, and what both take off, is not for everybody."""
    steps = """
      - step: Remove the [case] and fit a [clip].
        when: {cover: square}
        do: [{remove: case}, {fit: clip}]
      - step: Remove the [case] and fit a [clip].
        when: {breather: hose}
        do: [{remove: case}, {fit: clip}]
      - step: Set the [lever]"""
    one = booklet(FL_310=("\n      - step: Set the [lever]", steps))
    both = " (only cover: square cover; or only if chosen: raised hose)"
    assert [name for name in rows(one, "setup", "parts") if name.endswith(both)]
    assert f"chain case{both}" in rows(one, "closing", "count")
