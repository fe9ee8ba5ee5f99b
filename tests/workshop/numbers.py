"""Numbers and intervals as a workshop states them, for property tests."""

from __future__ import annotations

from fractions import Fraction
from typing import TypeVar

from hypothesis import strategies as st

from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval

T = TypeVar("T")


def numbers(low: int, high: int) -> st.SearchStrategy[Fraction]:
    """Return numbers with up to three decimals from `low` to `high`."""
    return st.integers(low * 1000, high * 1000).map(lambda thousandths: Fraction(thousandths, 1000))


@st.composite
def closed(draw: st.DrawFn, low: int = -50, high: int = 50) -> Interval:
    """Return an interval with both ends, which may be the same."""
    first, second = draw(numbers(low, high)), draw(numbers(low, high))
    return Interval(min(first, second), max(first, second))


@st.composite
def intervals(draw: st.DrawFn) -> Interval:
    """Return an interval that may be open to either side."""
    whole = draw(closed())
    return Interval(draw(st.sampled_from([whole.low, None])), draw(st.sampled_from([whole.high, None])))


@st.composite
def inside(draw: st.DrawFn, interval: Interval) -> Fraction:
    """Return a number of an interval; the ends are drawn more often than by chance."""
    low = interval.low if interval.low is not None else (interval.high or Fraction(0)) - 100
    high = interval.high if interval.high is not None else low + 200
    share = draw(st.sampled_from([Fraction(0), Fraction(1)]) | numbers(0, 1))
    return low + (high - low) * share


def answered(answer: T | Impossible) -> T:
    """Return an answer that must not be a refusal."""
    assert not isinstance(answer, Impossible), answer
    return answer
