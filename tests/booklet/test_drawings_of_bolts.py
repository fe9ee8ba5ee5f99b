"""Bolt patterns: true to the places, readable, and the same in words."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from authoring.booklet.markup import said
from authoring.booklet.shapes import BoltPattern
from tests.booklet.drawn_booklet import group, order_line, tightened

CIRCLE = "positions: {circle: 90 mm, seen-from: behind}"
ROW = "positions: {places: [[0, 0], [40, 0], [80, 0], [120, 0]], in: mm, seen-from: below}"
COLUMN = "positions: {places: [[0, 0], [0, 40], [0, 80], [0, 120]], in: mm, seen-from: below}"
RIM = "positions: {places: [[-60, 40], [60, 40], [60, -40], [-60, -40]], in: mm, seen-from: below}"

spots = st.lists(st.tuples(st.integers(-200, 200), st.integers(-200, 200)), min_size=3, max_size=12, unique=True)


def shape(count: int, more: str) -> BoltPattern | None:
    """Return the pattern that is drawn for a group of lid bolts; None where none is."""
    found = tightened(group("lid-bolts", count, more))
    if not found:
        return None
    assert len(found) == 1
    assert isinstance(found[0].shape, BoltPattern)
    return found[0].shape


@settings(max_examples=25, deadline=None)
@given(spots)
def test_a_pattern_is_similar_to_its_places(places: list[tuple[int, int]]) -> None:
    """All distances shrink alike, up stays up and left stays left, no disc leaves the frame or meets another."""
    drawn = shape(len(places), f"positions: {{places: {[list(one) for one in places]}, in: mm, seen-from: below}}")
    if drawn is None:  # too crowded
        return
    pairs = list(itertools.combinations(range(len(places)), 2))
    discs = drawn.discs
    paper = [math.dist((discs[a].x, discs[a].y), (discs[b].x, discs[b].y)) for a, b in pairs]
    scale = [on / math.dist(places[a], places[b]) for on, (a, b) in zip(paper, pairs, strict=True)]
    assert scale == pytest.approx([max(scale)] * len(scale), rel=0.02)
    for a, b in pairs:
        assert (discs[a].x - discs[b].x) * (places[a][0] - places[b][0]) >= 0
        assert (discs[a].y - discs[b].y) * (places[a][1] - places[b][1]) <= 0
    assert min(paper) > 2 * drawn.radius
    assert all(drawn.radius < one.x < drawn.width - drawn.radius for one in discs)
    assert all(drawn.radius < one.y < drawn.height - drawn.radius for one in discs)
    assert sorted(one.turn for one in discs) == list(range(1, len(places) + 1))
    assert drawn.radius >= 2.69
    assert drawn.width < 130
    assert drawn.height < 95


def test_the_line_round_a_pattern_leaves_nobody_outside() -> None:
    """The corners of the line are bolts, in turn, and the one inside is none of them."""
    drawn = shape(
        5, "positions: {places: [[-60, 40], [60, 40], [0, 0], [60, -40], [-60, -40]], in: mm, seen-from: below}"
    )
    assert drawn is not None
    corners = {(one.x, one.y) for at, one in enumerate(drawn.discs) if at != 2}
    assert set(drawn.outline) == corners
    assert len(drawn.outline) == 4


def test_a_circle_has_no_line_round_it_but_its_centre_line() -> None:
    """The radius on paper is the distance of each disc from the middle."""
    drawn = shape(5, CIRCLE)
    assert drawn is not None
    assert drawn.outline == ()
    reach = [math.dist((one.x, one.y), (drawn.x, drawn.y)) for one in drawn.discs]
    assert reach == pytest.approx([drawn.circle] * 5, abs=0.02)
    assert drawn.circle == pytest.approx(20)


@pytest.mark.parametrize(
    ("more", "words"),
    [
        (
            CIRCLE,
            (
                "evenly on a circle. Seen from behind. "
                "The order of tightening, as on the face of a clock: 1 at 12; 2 at 6; 3 at 3; 4 at 9."
            ),
        ),
        (
            ROW,
            (
                "in a row. Seen from below. The order of tightening: 1 the second from the left; "
                "2 the third from the left; 3 the first from the left; 4 the fourth from the left."
            ),
        ),
        (
            COLUMN,
            (
                "in a row. Seen from below. The order of tightening: 1 the second from the top; "
                "2 the third from the top; 3 the first from the top; 4 the fourth from the top."
            ),
        ),
        (
            RIM,
            (
                "at four corners. Seen from below. "
                "The order of tightening, as on the face of a clock: 1 at 10; 2 at 4; 3 at 2; 4 at 8."
            ),
        ),
    ],
)
def test_the_words_say_what_the_drawing_shows(more: str, words: str) -> None:
    """Who cannot see the drawing is told which comes first, and where it stands."""
    [drawing] = tightened(group("lid-bolts", 4, more))
    assert drawing.alt == f"Drawing: 4 lid bolts, {words}"
    assert drawing.title == "Order of tightening: lid bolts"


def test_two_in_one_direction_are_told_by_how_far_out_they_are() -> None:
    """At one o'clock alone there would be two; a bolt in the middle is called that."""
    places = "[[0, 0], [0, 30], [0, 60], [60, 0], [-60, 0], [0, -60]]"
    [drawing] = tightened(group("lid-bolts", 6, f"positions: {{places: {places}, in: mm, seen-from: below}}"))
    assert "1 in the middle; 2 at 12, 50 % of the way out; " in drawing.alt
    assert "at 12, 100 % of the way out" in drawing.alt


def test_groups_that_look_alike_share_a_drawing() -> None:
    """Left and right are one drawing; from another side, or with another order, it is another drawing."""
    left, right = group("left-bolts", 4, CIRCLE), group("right-bolts", 4, CIRCLE)
    [shared] = tightened(left, right, what="[left-bolts, right-bolts]")
    assert shared.title == "Order of tightening: left bolts and right bolts"
    assert shared.alt.startswith("Drawing: left bolts and right bolts, 4 each, evenly on a circle. ")
    for other in (
        CIRCLE.replace("behind", "above"),
        f"{CIRCLE}, order: [4, 3, 2, 1]",
        CIRCLE.replace("90 mm", '90 mm, first: "3"'),
    ):
        assert len(tightened(left, group("right-bolts", 4, other), what="[left-bolts, right-bolts]")) == 2


def test_a_stated_order_is_drawn_as_it_stands() -> None:
    """Turn n stands at the fastener that the order names in place n."""
    drawn = shape(4, f"{CIRCLE}, order: [2, 3, 4, 1]")
    assert drawn is not None
    assert [one.turn for one in drawn.discs] == [4, 1, 2, 3]


@pytest.mark.parametrize(
    ("count", "more"),
    [
        (4, "order: [1, 3, 2, 4]"),
        (2, "positions: {circle: 90 mm}"),
        (4, f"{CIRCLE}, order: [1, 2, 3]"),
        (4, "positions: {places: [[0, 0], [1, 0], [0, 400], [400, 0]], in: mm, seen-from: below}"),
        (60, CIRCLE),
    ],
)
def test_what_could_not_be_read_is_not_drawn(count: int, more: str) -> None:
    """Without places, of two, with an order that leaves one out, and too crowded for numbers 2.5 mm high."""
    assert shape(count, more) is None


@pytest.mark.parametrize(
    ("count", "more", "words"),
    [
        (4, "order: [1, 3, 2, 4]", "1, 3, 2, 4"),
        (4, f"{CIRCLE}, order: [1, 3, 2, 4]", "1 to 4 as in the drawing"),
        (4, CIRCLE, "1 to 4 as in the drawing; worked out for these places: crosswise. {maker}"),
        (3, CIRCLE, "1 to 3 as in the drawing; worked out for these places: one after the other. {maker}"),
        (4, ROW, "1 to 4 as in the drawing; worked out for these places: from the middle outwards. {maker}"),
        (
            4,
            RIM,
            "1 to 4 as in the drawing; {worked} crosswise. {maker}",
        ),
        (60, CIRCLE, "Worked out for these places: crosswise. {maker}"),
        (4, "side: left", ""),
        (
            4,
            f"{CIRCLE}, stages: [10 N·m, 22 N·m]",
            (
                "1 to 4 as in the drawing, anew in each stage; {worked} crosswise. {maker} "
                "After the last stage go round all of them once more at 22 N·m (16.2 lbf·ft)."
            ),
        ),
        (
            4,
            f"{CIRCLE}, stages: [10 N·m, 90 °]",
            "1 to 4 as in the drawing, anew in each stage; {worked} crosswise. {maker}",
        ),
        (4, "order: [1, 3, 2, 4], stages: [10 N·m, 22 N·m]", "1, 3, 2, 4, anew in each stage"),
    ],
)
def test_the_torque_says_which_order_and_on_what_it_rests(count: int, more: str, words: str) -> None:
    """A stated order stands as it is; one that is worked out says so and gives way to the maker's.

    The last round is the circular pass of ASME PCC-1, from memory. An angle is not turned a second time.
    """
    told = {
        "maker": "An order from the maker goes before.",
        "worked": "worked out for these places:",
    }
    assert order_line(count, more) == words.format(**told)


@pytest.mark.parametrize(
    ("count", "more", "words"),
    [
        (4, CIRCLE, "The circle through their middles measures 90 mm (3.54 in)."),
        (4, ROW, "The two that are furthest apart stand 120 mm (4.72 in) from middle to middle."),
        (4, RIM, "The two that are furthest apart stand 144 mm (5.67 in) from middle to middle."),
        (
            3,
            "positions: {places: [[0, 0], [2, 0], [4, 0]], in: in, seen-from: below}",
            "The two that are furthest apart stand 102 mm (4.02 in) from middle to middle.",
        ),
    ],
)
def test_the_size_on_the_machine_is_told(count: int, more: str, words: str) -> None:
    """A pattern on paper is as large as its numbers need; the size says which it is on the machine."""
    [drawing] = tightened(group("lid-bolts", count, more))
    assert said(drawing.notes[1]).replace("\u00a0", " ") == words


def test_two_circles_of_another_size_are_two_drawings() -> None:
    """They look alike on paper, and are not the same on the machine."""
    one, other = group("left-bolts", 4, CIRCLE), group("right-bolts", 4, CIRCLE.replace("90", "120"))
    assert len(tightened(one, other, what="[left-bolts, right-bolts]")) == 2
