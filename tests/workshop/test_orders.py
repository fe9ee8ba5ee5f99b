"""Orders of tightening: each fastener once, opposite ones in turn, outwards, and the same whatever the numbering."""

from __future__ import annotations

import itertools
import math
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from authoring.workshop.bolt_pattern import Pattern, Point, pattern_of
from authoring.workshop.tightening_order import (
    order_faults,
    order_in_row,
    order_on_circle,
    tightening_order,
)

steady = settings(max_examples=100)
counts = st.integers(0, 40)
points = st.tuples(st.integers(-300, 300), st.integers(-300, 300))


def circle(count: int, radius: float = 100, turned: float = 0) -> list[Point]:
    """Return places evenly round a circle, clockwise from 12 o'clock, turned by some degrees."""
    angles = [2 * math.pi * one / count + math.radians(turned) for one in range(count)]
    return [(radius * math.sin(angle), radius * math.cos(angle)) for angle in angles]


def rectangle(wide: int, high: int, pitch: float = 40) -> list[Point]:
    """Return the places on the outline of a rectangle of so many by so many."""
    return [
        (pitch * x, pitch * y)
        for x, y in itertools.product(range(wide), range(high))
        if x in (0, wide - 1) or y in (0, high - 1)
    ]


@given(counts)
@steady
def test_an_order_names_each_once(count: int) -> None:
    """Circle and row of any count are permutations."""
    assert order_faults(order_on_circle(count), count).sound
    assert order_faults(order_in_row(count), count).sound


@given(st.lists(points, max_size=24))
@steady
def test_any_positions_give_a_permutation(positions: list[tuple[int, int]]) -> None:
    """Whatever the positions, even with two in one place, each fastener is named once."""
    assert order_faults(tightening_order([(float(x), float(y)) for x, y in positions]), len(positions)).sound


@pytest.mark.parametrize("count", range(4, 41, 4))
def test_four_in_turn_are_a_square_cross(count: int) -> None:
    """With a multiple of four, each four are: one, its opposite, a quarter turn on, and the opposite of that."""
    order = order_on_circle(count)
    for one, two, three, four in zip(*[iter(order)] * 4, strict=True):
        assert ((two - one) * 2 % (2 * count), (four - three) * 2 % (2 * count)) == (count, count)
        assert (three - one) * 4 % (4 * count) == count


@pytest.mark.parametrize("count", range(2, 41, 2))
def test_two_in_turn_are_opposite(count: int) -> None:
    """With an even number, each two are half a turn apart."""
    order = order_on_circle(count)
    for one, other in zip(order[::2], order[1::2], strict=True):
        assert (other - one) % count == count // 2


@pytest.mark.parametrize("count", range(3, 41, 2))
def test_an_odd_star_is_nearly_opposite(count: int) -> None:
    """With an odd number, each next is the nearest to opposite."""
    order = order_on_circle(count)
    assert {(after - before) % count for before, after in itertools.pairwise(order)} == {count // 2}


@pytest.mark.parametrize("count", range(6, 41))
def test_neighbours_never_follow_one_another(count: int) -> None:
    """On a circle of six or more, no two neighbours are tightened one right after the other."""
    order = order_on_circle(count)
    for before, after in itertools.pairwise(order):
        assert (after - before) % count not in (1, count - 1)


@given(st.integers(1, 40))
@steady
def test_a_row_goes_outwards(count: int) -> None:
    """What is tightened at any time is one stretch without a gap, and it grows on both sides in turn."""
    order = order_in_row(count)
    for done in range(1, count + 1):
        stretch = sorted(order[:done])
        assert stretch == list(range(stretch[0], stretch[0] + done))
    middle = (count + 1) / 2
    off = [abs(one - middle) for one in order]
    assert off == sorted(off)


def test_a_rectangle_goes_outwards_and_across() -> None:
    """Of ten in two rows the middle pair comes first; each ring is worked across before the next one further out."""
    positions = [(40.0 * x, 60.0 * y) for y in (1, 0) for x in range(5)]
    assert tightening_order(positions) == (3, 8, 2, 9, 7, 4, 6, 5, 1, 10)


def test_four_at_the_corners_go_across() -> None:
    """A rectangle of four is worked corner to corner, square or not."""
    assert tightening_order([(0, 60), (100, 60), (100, 0), (0, 0)]) == (1, 3, 2, 4)
    assert tightening_order([(0, 100), (100, 100), (100, 0), (0, 0)]) == (1, 3, 2, 4)


@pytest.mark.parametrize(("wide", "high"), [(2, 2), (3, 2), (4, 2), (7, 2), (3, 3), (5, 4), (6, 6)])
def test_an_outline_never_goes_inwards(wide: int, high: int) -> None:
    """From the first to the last, the distance from the middle does not shrink by more than the slack."""
    positions = rectangle(wide, high)
    middle = (40 * (wide - 1) / 2, 40 * (high - 1) / 2)
    distances = [math.dist(positions[one - 1], middle) for one in tightening_order(positions)]
    size = math.dist(positions[0], positions[-1])
    assert all(after >= before - size / 50 for before, after in itertools.pairwise(distances))


@pytest.mark.parametrize(
    "positions",
    [
        circle(5),
        circle(6, turned=30),
        circle(8, turned=22.5),
        circle(24),
        circle(7, radius=3),
        [(25.0 * one, 0) for one in range(9)],
        [(0, 25.0 * one) for one in range(6)],
        [(10.0 * one, 7.0 * one) for one in range(5)],
        rectangle(5, 2),
        rectangle(4, 3),
        [*circle(6), (0, 0)],
        [(0, 0), (90, 10), (160, 80), (150, 170), (40, 190), (-30, 120)],
    ],
    ids=str,
)
def test_numbering_does_not_matter(positions: list[Point]) -> None:
    """The same places are tightened in the same order, however the fasteners are numbered."""
    expected = [positions[one - 1] for one in tightening_order(positions)]
    for seed in range(10):
        shuffled = random.Random(seed).sample(positions, len(positions))  # noqa: S311  # a shuffle, no secret
        assert [shuffled[one - 1] for one in tightening_order(shuffled)] == expected


@given(st.integers(3, 24), st.floats(1, 1000), st.floats(-500, 500))
@steady
def test_size_and_place_of_a_circle_do_not_matter(count: int, radius: float, moved: float) -> None:
    """A circle clockwise from 12 o'clock has the order of its count, wherever it lies and however large."""
    positions = [(x + moved, y - moved) for x, y in circle(count, radius)]
    assert pattern_of(positions) is Pattern.CIRCLE
    assert tightening_order(positions) == order_on_circle(count)


@pytest.mark.parametrize("count", range(3, 25))
def test_a_drawing_read_to_the_nearest_unit_is_still_a_circle(count: int) -> None:
    """Positions rounded to a hundredth of the size are still evenly round."""
    rounded = [(float(round(x)), float(round(y))) for x, y in circle(count)]
    assert pattern_of(rounded) is Pattern.CIRCLE
    assert tightening_order(rounded) == order_on_circle(count)


@pytest.mark.parametrize(
    ("positions", "pattern"),
    [
        ([], Pattern.ROW),
        ([(0, 0)], Pattern.ROW),
        ([(0, 0), (10, 0)], Pattern.ROW),
        ([(0, 0), (10, 0), (20, 0.2)], Pattern.ROW),
        ([(0, 0), (10, 0), (20, 5)], Pattern.OUTLINE),
        ([(5.0, 5.0)] * 4, Pattern.ROW),
        (circle(3), Pattern.CIRCLE),
        (circle(8)[:7], Pattern.OUTLINE),
        ([*circle(8), (0, 0)], Pattern.OUTLINE),
        (rectangle(3, 2), Pattern.OUTLINE),
        (rectangle(2, 2), Pattern.CIRCLE),
        ([(0, 0), (100, 0), (100, 50), (0, 50)], Pattern.CORNERS),
        ([(0, 0), (100, 0), (50, 90), (50, 30)], Pattern.OUTLINE),
    ],
)
def test_the_pattern_is_told(positions: list[Point], pattern: Pattern) -> None:
    """A line is a row, even spacing round a point a circle, four others corners, and all else an outline."""
    assert pattern_of(positions) is pattern


def test_a_stated_order_must_be_a_permutation() -> None:
    """What is left out, said again or unknown is told by its number."""
    assert order_faults([1, 3, 2, 4], 4).sound
    faults = order_faults([1, 3, 3, 5, 0], 4)
    assert (faults.missing, faults.repeated, faults.unknown) == ((2, 4), (3,), (0, 5))
    assert not faults.sound
    assert order_faults([], 2).missing == (1, 2)
    assert order_faults([], 0).sound


@given(st.permutations(range(1, 9)))
@steady
def test_every_permutation_is_sound_and_its_spoils_are_not(order: list[int]) -> None:
    """Any permutation passes; with one number taken out or said again it does not."""
    assert order_faults(order, 8).sound
    assert order_faults(order[1:], 8).missing == (order[0],)
    assert order_faults([*order, order[0]], 8).repeated == (order[0],)


@given(
    st.integers(40, 300), st.integers(40, 300), st.integers(40, 200), st.integers(-60, 60), st.permutations(range(4))
)
@steady
def test_four_corners_go_crosswise_whatever_their_shape(
    top: int, bottom: int, high: int, shift: int, numbers: list[int]
) -> None:
    """On a trapezoid, however crooked, the second is across from the first, and the fourth from the third."""
    corners = [(-top / 2 + shift, high), (top / 2 + shift, high), (bottom / 2, 0), (-bottom / 2, 0)]
    order = [numbers[one - 1] for one in tightening_order([corners[number] for number in numbers])]
    assert {frozenset(order[:2]), frozenset(order[2:])} == {frozenset({0, 2}), frozenset({1, 3})}


def test_a_bolt_inside_the_three_others_comes_first() -> None:
    """Four that are no corners are an outline: the one in the middle is tightened first."""
    assert tightening_order([(0, 0), (100, 0), (50, 90), (50, 30)])[0] == 4
