"""What must grow does grow, and what is no more than a way of writing changes nothing."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from authoring.workshop.bolt_load import BoltLoad, bolt_load
from authoring.workshop.bolt_pattern import Point, pattern_of
from authoring.workshop.cooling import Estimate, time_to_cool
from authoring.workshop.interval import Interval
from authoring.workshop.metric_thread import MetricThread
from authoring.workshop.tightening_angle import force_span_from_turn_newton
from authoring.workshop.tightening_order import tightening_order
from authoring.workshop.wrench_setting import lever_ratio
from tests.workshop.bolts import classes, threads
from tests.workshop.numbers import answered, numbers

INCH_MM = Fraction(254, 10)
torques = st.integers(10, 3000).map(lambda tenths: Fraction(tenths, 10))
steps = st.integers(1, 500).map(lambda tenths: Fraction(tenths, 10))
frictions = st.tuples(st.integers(8, 14), st.integers(0, 10)).map(
    lambda pair: Interval(Fraction(pair[0], 100), Fraction(sum(pair), 100))
)


def _load(torque: Interval, bolt: MetricThread, property_class: str, friction: Interval) -> BoltLoad:
    load = bolt_load(torque, bolt, property_class, friction, 0.04)
    assert load is not None
    return load


@given(torques, steps, threads, classes, frictions)
def test_more_torque_is_more_force(
    torque: Fraction, more: Fraction, bolt: MetricThread, property_class: str, friction: Interval
) -> None:
    """Both ends of the force rise with the torque, and a wider torque makes neither end safer."""
    plain = _load(Interval(torque, torque), bolt, property_class, friction)
    raised = _load(Interval(torque + more, torque + more), bolt, property_class, friction)
    wider = _load(Interval(torque, torque + more), bolt, property_class, friction)
    assert plain.least_newton < raised.least_newton
    assert plain.greatest_newton < raised.greatest_newton
    assert (wider.least_newton, wider.greatest_newton) == (plain.least_newton, raised.greatest_newton)


@given(st.integers(1, 180), st.integers(1, 180), threads, st.floats(10, 150))
def test_more_turn_is_more_force_and_a_longer_bolt_takes_less(
    angle: int, more: int, bolt: MetricThread, grip: float
) -> None:
    """Both ends of the span rise with the angle and fall with the grip."""
    plain = force_span_from_turn_newton(Fraction(angle), bolt, grip)
    turned = force_span_from_turn_newton(Fraction(angle + more), bolt, grip)
    longer = force_span_from_turn_newton(Fraction(angle), bolt, grip * 1.5)
    assert plain[0] <= plain[1]
    assert all(one < other for one, other in zip(plain, turned, strict=True))
    assert all(one > other for one, other in zip(plain, longer, strict=True))


@given(numbers(250, 300), numbers(1, 100), numbers(1, 200), numbers(1, 100), st.floats(60, 7200))
def test_a_hotter_start_waits_longer(
    air: Fraction, above: Fraction, start: Fraction, more: Fraction, tau: float
) -> None:
    """So do a warmer air, a colder target and a part that holds its heat longer."""
    target, hot = air + above + 1, air + above + 1 + start

    def wait(begin: Fraction, end: Fraction, around: Fraction, constant: float) -> float:
        return answered(time_to_cool(begin, end, around, Estimate(constant))).value

    plain = wait(hot, target, air, tau)
    assert plain < wait(hot + more, target, air, tau)
    assert plain < wait(hot, target, air + 1, tau)
    assert plain < wait(hot, target - above / 2, air, tau)
    assert plain < wait(hot, target, air, tau * 2)


@given(numbers(1, 1000), numbers(0, 500), st.integers(0, 359))
def test_a_setting_is_the_same_in_inches(wrench: Fraction, adapter: Fraction, angle: int) -> None:
    """Both lengths in millimetres or both in inches: the same share of the torque, to the last digit."""
    in_inches = lever_ratio(wrench / INCH_MM, adapter / INCH_MM, Fraction(angle))
    assert in_inches == lever_ratio(wrench, adapter, Fraction(angle))


layouts = st.lists(st.tuples(st.integers(0, 400), st.integers(0, 400)), min_size=1, max_size=14, unique=True)


@given(layouts)
def test_an_order_is_the_same_in_inches(layout: list[tuple[int, int]]) -> None:
    """Positions in millimetres or in inches stand in one pattern and are tightened in one order."""
    metric: list[Point] = [(float(x), float(y)) for x, y in layout]
    inches: list[Point] = [(x / 25.4, y / 25.4) for x, y in layout]
    assert pattern_of(inches) is pattern_of(metric)
    assert tightening_order(inches) == tightening_order(metric)


@given(st.data(), layouts)
def test_an_order_does_not_know_the_numbers(data: st.DataObject, layout: list[tuple[int, int]]) -> None:
    """Whatever the fasteners are called, the same places follow one another."""
    renamed = data.draw(st.permutations(layout))
    assert [renamed[one - 1] for one in tightening_order([(float(x), float(y)) for x, y in renamed])] == [
        layout[one - 1] for one in tightening_order([(float(x), float(y)) for x, y in layout])
    ]
