"""Where the fasteners of a group stand, and the order that follows from it."""

from __future__ import annotations

import pytest

from authoring.model.build import build_library
from authoring.model.orders import Order, drawn_order, order_of, places_of
from authoring.model.things import FastenerGroup
from authoring.source.reader import read_document
from tests.rules.overlay import overlay


def group(count: int, more: str) -> FastenerGroup:
    """Return a group of so many bolts with further keys, as an equipment file would give it."""
    text = f"""\
fasteners:
  lid-bolts: {{name: lid bolts, count: {count}, thread: M8, on: drop-box, {more}}}
"""
    documents = [read_document(name, content)[0] for name, content in overlay([("equipment", text)]).files.items()]
    library, _ = build_library([one for one in documents if one is not None], {}, partial=False)
    return library.equipment["hob"].fasteners["lid-bolts"]


def test_a_circle_begins_at_its_first_place_and_runs_clockwise() -> None:
    """Quarter turns, reckoned by hand: from 3 o'clock on it is right, below, left, above, at half the diameter."""
    places = places_of(group(4, 'positions: {circle: 120 mm, first: "3", seen-from: behind}'))
    wanted = [(60, 0), (0, -60), (-60, 0), (0, 60)]
    assert [pytest.approx(one, abs=1e-9) for one in wanted] == list(places)


def test_a_circle_with_limits_is_drawn_at_its_middle() -> None:
    """The middle of 119 to 121 mm is 120 mm; an inch is 25.4 mm by definition (international yard and pound, 1959)."""
    for circle in ("119 to 121 mm", "120 ± 1 mm", "about 120 mm"):
        assert places_of(group(4, f"positions: {{circle: {circle}}}"))[0] == pytest.approx((0, 60), abs=1e-9)
    assert places_of(group(4, "positions: {circle: 2 in}"))[0] == pytest.approx((0, 25.4), abs=1e-9)


def test_places_are_turned_into_millimetres() -> None:
    """Places keep the order of the numbers; without a unit they are no places."""
    places = "positions: {places: [[0, 1], [2, 1], [1, 3]], seen-from: below"
    assert places_of(group(3, places + ", in: mm}")) == ((0, 1), (2, 1), (1, 3))
    inches = places_of(group(3, places + ", in: in}"))
    assert list(inches) == [pytest.approx(one) for one in ((0, 25.4), (50.8, 25.4), (25.4, 76.2))]
    assert places_of(group(3, places + "}")) == ()


@pytest.mark.parametrize(
    "more",
    [
        "side: left",
        "positions: {places: [[0, 0], [9, 9]], in: mm, seen-from: below}",
        "positions: {circle: at most 90 mm}",
        "positions: {circle: 0 mm}",
        "positions: {circle: 90 mm, places: [[0, 0], [9, 0], [18, 0]], in: mm, seen-from: below}",
    ],
)
def test_what_is_not_plain_gives_no_places_and_no_order(more: str) -> None:
    """Nothing said, a place too few, a circle of no size, and two answers: nothing is worked out of these."""
    assert places_of(group(3, more)) == ()
    assert order_of(group(3, more)) is None


def test_the_order_of_four_is_a_cross() -> None:
    """1 then 3, 2 then 4: opposite ones in turn, numbered round the circle (ASME PCC-1, from memory)."""
    assert order_of(group(4, "positions: {circle: 90 mm}")) == Order((1, 3, 2, 4), stated=False)


def test_a_stated_order_goes_before() -> None:
    """A stated order stands; it is drawn where the places are known and it names each fastener once."""
    stated = group(4, "positions: {circle: 90 mm}, order: [4, 3, 2, 1]")
    assert order_of(stated) == drawn_order(stated) == Order((4, 3, 2, 1), stated=True)
    assert order_of(group(4, "order: [1, 3, 2, 4]")) == Order((1, 3, 2, 4), stated=True)
    assert drawn_order(group(4, "order: [1, 3, 2, 4]")) is None
    assert drawn_order(group(4, "positions: {circle: 90 mm}, order: [1, 3, 2]")) is None


def test_of_two_nothing_is_worked_out() -> None:
    """Either of two may be first; the places are known all the same."""
    two = group(2, "positions: {circle: 90 mm}")
    assert len(places_of(two)) == 2
    assert order_of(two) is None
    assert drawn_order(group(2, "positions: {circle: 90 mm}, order: [2, 1]")) is None


def test_of_very_many_nothing_is_worked_out() -> None:
    """Nobody could read the order of a hundred and more, and working it out takes time that grows with the square."""
    assert len(places_of(group(120, "positions: {circle: 900 mm}"))) == 120
    assert places_of(group(121, "positions: {circle: 900 mm}")) == ()
