"""Wrench settings, what wrenches promise and orders of tightening held against published examples."""

from __future__ import annotations

import math
from fractions import Fraction
from typing import Any

import pytest

from authoring.workshop.bolt_pattern import pattern_of
from authoring.workshop.interval import Interval, exactly
from authoring.workshop.tightening_order import order_in_row, order_on_circle, tightening_order
from authoring.workshop.wrench_fit import FIFTH, WrenchFault, permissible_deviation, wrench_fit
from authoring.workshop.wrench_setting import at_the_fastener, at_the_wrench, lever_ratio
from tests.outside.agreement import Agreement
from tests.outside.kept import base, kept

SETTINGS = kept("wrench_settings.yaml")
WRENCHES = kept("torque_wrenches.yaml")
ORDERS = kept("tightening_orders.yaml")

Row = dict[str, Any]
Points = list[tuple[float, float]]


def _ratio(row: Row, angle: str = "0") -> Fraction:
    ratio = lever_ratio(Fraction(row["wrench"]), Fraction(row["adapter"]), Fraction(angle))
    assert isinstance(ratio, Fraction), ratio
    return ratio


def _on_circle(count: int) -> Points:
    turns = [2 * math.pi * one / count for one in range(count)]
    return [(50 * math.sin(turn), 50 * math.cos(turn)) for turn in turns]


def _in_row(count: int) -> Points:
    return [(25.0 * place, 0.0) for place in range(count)]


def _on_cover(columns: int, deep: int) -> Points:
    return [(40.0 * x, 30.0 * y) for y in range(deep) for x in range(columns)]


@pytest.mark.parametrize("row", SETTINGS["worked"], ids=lambda row: f"{row['wanted']}/{row['adapter']}")
def test_setting_rounds_to_the_worked_example(row: Row, agree: Agreement) -> None:
    """The setting is the printed one to its last digit, and the wanted torque comes back from the exact setting."""
    ratio = _ratio(row)
    setting = at_the_wrench(exactly(Fraction(row["wanted"])), ratio)
    agree(row, setting.low)
    assert at_the_fastener(setting, ratio) == exactly(Fraction(row["wanted"]))


@pytest.mark.parametrize("row", SETTINGS["right_angle"], ids=lambda row: row["wrench"])
def test_right_angle_leaves_the_setting_alone(row: Row, agree: Agreement) -> None:
    """An adapter at 90° changes nothing, whatever its length and that of the wrench."""
    agree(row, _ratio(row, row["angle"]))


@pytest.mark.parametrize("row", SETTINGS["angles"], ids=lambda row: row["angle"])
def test_an_angle_counts_by_its_cosine(row: Row, agree: Agreement) -> None:
    """Between the straight and the right angle the lever follows the cosine, beyond it the adapter shortens."""
    agree(row, _ratio(row, row["angle"]))


@pytest.mark.parametrize("row", SETTINGS["product"], ids=lambda row: row["wanted"])
def test_lever_is_a_sum_and_no_product(row: Row, agree: Agreement) -> None:
    """The setting is not what the product in a scanned figure would give."""
    agree.not_wrong(row, Fraction(row["wanted"]) * _ratio(row))


@pytest.mark.parametrize("row", WRENCHES["usable"])
def test_a_fifth_of_full_scale_is_where_the_promise_begins(row: Row, agree: Agreement) -> None:
    """At a fifth of full scale nothing is said; a hair below it is."""
    agree(row, FIFTH)
    share, scale = Fraction(row["published"]), Interval(Fraction(5), Fraction(100))
    assert wrench_fit(exactly(share * 100), scale).fits
    below = wrench_fit(Interval(share * 100 - Fraction(1, 10), Fraction(30)), scale)
    assert below.faults == (WrenchFault.BELOW_A_FIFTH,)


@pytest.mark.parametrize("row", WRENCHES["median"], ids=lambda row: row["published"])
def test_a_range_is_set_to_its_middle(row: Row, agree: Agreement) -> None:
    """One median value serves all bolts of a flange whose torque is a range."""
    torque = Interval(Fraction(row["low"]), Fraction(row["high"]))
    agree(row, wrench_fit(torque, Interval(Fraction(10), Fraction(100))).setting)


@pytest.mark.parametrize("row", WRENCHES["neighbours"], ids=lambda row: f"{row['step']} {row['unit']}")
def test_neighbouring_torques_are_two_settings(row: Row, agree: Agreement) -> None:
    """Two groups of bolts never get the same mark, whatever the unit and the step of the scale."""
    scale, step = Interval(Fraction(2), Fraction(20)), base(row["step"], row["unit"])
    one, other = (wrench_fit(exactly(Fraction(row[name])), scale, step).setting for name in ("one", "other"))
    # On a coarse scale one of them has no mark; then the wrench is not the one for it, and says so.
    assert (one is None or other is None) is row.get("coarse", False)
    agree(row, one is None or other is None or one < other)


@pytest.mark.parametrize("row", [*WRENCHES["deviations"], *WRENCHES["promised"]], ids=lambda row: row["full_scale"])
def test_permissible_deviation_is_the_published_one(row: Row, agree: Agreement) -> None:
    """A wrench of more than 10 N·m may be off by 4 %, a smaller one by 6 %."""
    agree(row, permissible_deviation(Fraction(row["full_scale"])))


@pytest.mark.parametrize("row", WRENCHES["not_below"], ids=lambda row: row["full_scale"])
def test_no_wrench_is_trusted_more_than_anybody_promises(row: Row, agree: Agreement) -> None:
    """Ours reckons with at least the error that others publish."""
    agree.at_least(row, permissible_deviation(Fraction(row["full_scale"])))


@pytest.mark.parametrize("row", ORDERS["circle"], ids=lambda row: str(row["count"]))
def test_circle_goes_in_the_published_order(row: Row, agree: Agreement) -> None:
    """The cross pattern is the published one, from numbers and from places clockwise from 12 o'clock alike."""
    agree(row, order_on_circle(row["count"]))
    agree(row, tightening_order(_on_circle(row["count"])))


@pytest.mark.parametrize("row", ORDERS["opposite"], ids=lambda row: str(row["pair"]))
def test_the_published_pairs_stand_opposite(row: Row, agree: Agreement) -> None:
    """In the circular pattern of twelve, the stated successive ones are half a turn apart."""
    order = order_on_circle(row["count"])
    one, other = row["pair"]
    agree(row, abs(order[one - 1] - order[other - 1]))


@pytest.mark.parametrize("row", ORDERS["row"], ids=lambda row: str(len(row["published"])))
def test_row_goes_in_the_published_order(row: Row, agree: Agreement) -> None:
    """Each place of a straight row carries the published number."""
    count = len(row["published"])
    order = order_in_row(count)
    agree(row, [order.index(place + 1) + 1 for place in range(count)])
    assert tightening_order(_in_row(count)) == order


@pytest.mark.parametrize("row", ORDERS["outline"], ids=lambda row: f"{row['columns']} by {row['deep']}")
def test_a_cover_is_tightened_from_its_middle(row: Row, agree: Agreement) -> None:
    """None of a cover's bolts is tightened before one that is nearer the middle."""
    points = _on_cover(row["columns"], row["deep"])
    middle = (20.0 * (row["columns"] - 1), 15.0 * (row["deep"] - 1))
    order = tightening_order(points)
    assert sorted(order) == list(range(1, len(points) + 1))
    away = [round(math.dist(points[one - 1], middle), 9) for one in order]
    agree(row, away == sorted(away))


@pytest.mark.parametrize("row", ORDERS["shapes"], ids=lambda row: row["drawn"])
def test_a_drawn_pattern_is_known_for_what_it_is(row: Row, agree: Agreement) -> None:
    """A bolt circle, a straight row, and a cover that is neither."""
    drawn = {"circle": _on_circle(row["count"]), "row": _in_row(row["count"]), "cover": _on_cover(4, 2)}[row["drawn"]]
    assert len(drawn) == row["count"]
    agree(row, pattern_of(drawn).value)
