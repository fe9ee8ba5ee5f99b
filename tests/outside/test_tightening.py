"""Wrench settings, what wrenches promise and orders of tightening held against published examples."""

from __future__ import annotations

import math
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import yaml

from authoring.workshop.interval import Interval, exactly
from authoring.workshop.tightening_order import order_in_row, order_on_circle, tightening_order
from authoring.workshop.wrench_fit import FIFTH, WrenchFault, permissible_deviation, wrench_fit
from authoring.workshop.wrench_setting import at_the_fastener, at_the_wrench, lever_ratio

HERE = Path(__file__).parent


def _data(name: str) -> dict[str, Any]:
    data: dict[str, Any] = yaml.safe_load((HERE / name).read_text(encoding="utf-8"))
    return data


SETTINGS = _data("wrench_settings.yaml")
WRENCHES = _data("torque_wrenches.yaml")
ORDERS = _data("tightening_orders.yaml")


def _ratio(wrench: str, adapter: str, angle: str = "0") -> Fraction:
    ratio = lever_ratio(Fraction(wrench), Fraction(adapter), Fraction(angle))
    assert isinstance(ratio, Fraction), ratio
    return ratio


@pytest.mark.parametrize("row", SETTINGS["worked"], ids=lambda row: row["wanted"] + "/" + row["adapter"])
def test_setting_rounds_to_the_worked_example(row: dict[str, str]) -> None:
    """The setting is the printed one to its last digit, and the wanted torque comes back from the exact setting."""
    ratio = _ratio(row["wrench"], row["adapter"])
    setting = at_the_wrench(exactly(Fraction(row["wanted"])), ratio)
    assert setting.low is not None
    exponent = Decimal(row["setting"]).as_tuple().exponent
    assert isinstance(exponent, int)
    assert abs(setting.low - Fraction(row["setting"])) <= Fraction(10) ** exponent / 2
    assert at_the_fastener(setting, ratio) == exactly(Fraction(row["wanted"]))


@pytest.mark.parametrize("row", SETTINGS["worked"], ids=lambda row: row["wanted"] + "/" + row["adapter"])
def test_right_angle_leaves_the_setting_alone(row: dict[str, str]) -> None:
    """An adapter at 90° changes nothing, whatever its length and that of the wrench."""
    assert _ratio(row["wrench"], row["adapter"], SETTINGS["right_angle"]["angle"]) == 1


@pytest.mark.parametrize("row", SETTINGS["trap"], ids=lambda row: row["wanted"])
def test_lever_is_a_sum_and_no_product(row: dict[str, str]) -> None:
    """The setting is not what the product in a scanned figure would give."""
    assert Fraction(row["wanted"]) * _ratio(row["wrench"], row["adapter"]) > Fraction(row["wrong"]) + 10


def test_a_fifth_of_full_scale_is_where_the_promise_begins() -> None:
    """At a fifth of full scale nothing is said; a hair below it is."""
    share = Fraction(WRENCHES["usable"]["share"])
    scale = Interval(Fraction(5), Fraction(100))
    assert share == FIFTH
    assert wrench_fit(exactly(share * 100), scale).fits
    below = wrench_fit(Interval(share * 100 - Fraction(1, 10), Fraction(30)), scale)
    assert below.faults == (WrenchFault.BELOW_A_FIFTH,)


@pytest.mark.parametrize("row", WRENCHES["deviations"], ids=lambda row: row["full_scale"])
def test_permissible_deviation_is_the_published_one(row: dict[str, str]) -> None:
    """A wrench of more than 10 N·m may be off by 4 %, a smaller one by 6 %."""
    assert permissible_deviation(Fraction(row["full_scale"])) == Fraction(row["deviation"])


@pytest.mark.parametrize("row", ORDERS["circle"], ids=lambda row: str(row["count"]))
def test_circle_goes_in_the_published_order(row: dict[str, Any]) -> None:
    """The cross pattern is the published one, from numbers and from places clockwise from 12 o'clock alike."""
    count = row["count"]
    turns = [2 * math.pi * one / count for one in range(count)]
    assert order_on_circle(count) == tuple(row["order"])
    assert tightening_order([(50 * math.sin(turn), 50 * math.cos(turn)) for turn in turns]) == tuple(row["order"])


@pytest.mark.parametrize("row", ORDERS["row"], ids=lambda row: str(len(row["carried"])))
def test_row_goes_in_the_published_order(row: dict[str, Any]) -> None:
    """Each place of a straight row carries the published number."""
    order = order_in_row(len(row["carried"]))
    assert [order.index(place + 1) + 1 for place in range(len(order))] == row["carried"]
    assert tightening_order([(25.0 * place, 0.0) for place in range(len(order))]) == order


def test_the_published_pairs_stand_opposite() -> None:
    """In the circular pattern of twelve, the stated successive ones are half a turn apart."""
    published = ORDERS["opposite"]
    order = order_on_circle(published["count"])
    for one, other in published["pairs"]:
        assert abs(order[one - 1] - order[other - 1]) == published["count"] / 2


def _rows(part: object) -> list[dict[str, Any]]:
    """Return every group of a file that states how it is known, wherever it stands."""
    if isinstance(part, list):
        return [row for one in part for row in _rows(one)]
    if not isinstance(part, dict):
        return []
    return [part] if "status" in part else [row for one in part.values() for row in _rows(one)]


def test_every_row_says_how_it_is_known() -> None:
    """Each section of each file names its source, and each row carries one of the four statuses."""
    for data in (SETTINGS, WRENCHES, ORDERS):
        sections = {name: _rows(part) for name, part in data.items() if name != "sources"}
        assert {name for name, rows in sections.items() if rows} == set(data["sources"])
        statuses = {row["status"] for rows in sections.values() for row in rows}
        assert statuses <= {"read", "restated", "memory", "common practice"}
