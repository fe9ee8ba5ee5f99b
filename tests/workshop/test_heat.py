from __future__ import annotations

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from authoring.quantities.numerals import GROUP
from authoring.quantities.show import NO_BREAK
from authoring.quantities.units import UNITS
from authoring.workshop.burns import (
    EIGHT_HOURS,
    Surface,
    Touch,
    burn_band,
    burn_threshold,
    harm_of_touch,
)
from authoring.workshop.cooling import Estimate, spell_wait, time_constant, time_to_cool
from authoring.workshop.impossible import Impossible
from tests.workshop.numbers import answered, numbers

AIR = numbers(263, 313)
ABOVE = numbers(5, 400)
WAITS = numbers(1, 20_000)
SURFACES = st.sampled_from(Surface)
# Around the edges of the table, in K; the bands are narrow, and chance would hardly meet them.
WARMTHS = st.builds(
    Fraction.__add__, st.sampled_from([316, 324, 333, 338, 343, 353, 366, 383]).map(Fraction), numbers(-4, 4)
)
CONTACTS = numbers(1, 40_000)


@given(AIR, ABOVE, numbers(1, 4), WAITS)
def test_readings_tell_the_constant_that_made_them(
    air: Fraction, above: Fraction, share: Fraction, constant: Fraction
) -> None:
    """From a constant to a second reading and back to the constant, and to the time between."""
    stated = Estimate(float(constant))
    elapsed = constant * share / 2
    second = air + Fraction(float(above) * math.exp(-float(elapsed / constant)))
    found = answered(time_constant(air + above, second, elapsed, air))
    assert found.value == pytest.approx(stated.value, rel=1e-9)
    wait = answered(time_to_cool(air + above, second, air, stated))
    assert wait.value == pytest.approx(float(elapsed), rel=1e-9)


@given(AIR, ABOVE, WAITS)
def test_after_one_time_constant_37_per_cent_is_left(air: Fraction, above: Fraction, constant: Fraction) -> None:
    """That is what the constant means: so long it takes until 0.367879 of the difference is left."""
    left = air + above * Fraction(367_879, 10**6)
    wait = answered(time_to_cool(air + above, left, air, Estimate(float(constant))))
    assert wait.value == pytest.approx(float(constant), rel=1e-5)


@given(AIR, ABOVE, ABOVE, WAITS)
def test_cooling_goes_one_way_and_never_below_the_air(
    air: Fraction, above: Fraction, more: Fraction, constant: Fraction
) -> None:
    """A colder target takes longer, the air itself is never met, and a hotter start never cools sooner."""
    stated, start = Estimate(float(constant)), air + above
    target = air + above / 2
    wait = answered(time_to_cool(start, target, air, stated)).value
    assert wait < answered(time_to_cool(start, air + above / 4, air, stated)).value
    assert isinstance(time_to_cool(start, air, air, stated), Impossible)
    assert 0 < wait < answered(time_to_cool(start + more, target, air, stated)).value
    assert wait < answered(time_to_cool(start, target, air, Estimate(float(2 * constant)))).value


@given(AIR, ABOVE, ABOVE)
def test_who_is_cool_already_does_not_wait(air: Fraction, one: Fraction, other: Fraction) -> None:
    """A part no hotter than the target waits no time; every other waits some."""
    wait = answered(time_to_cool(air + one, air + other, air, Estimate(60.0)))
    assert (wait.value == 0) == (one <= other)


@pytest.mark.parametrize(
    ("first", "second", "between", "ambient"),
    [(350, 340, 0, 300), (350, 340, -5, 300), (350, 350, 60, 300), (340, 350, 60, 300), (350, 300, 60, 300)],
)
def test_readings_that_tell_nothing_are_refused(first: int, second: int, between: int, ambient: int) -> None:
    """No time between, no cooling, or a part as cold as the air: no constant."""
    answer = time_constant(Fraction(first), Fraction(second), Fraction(between), Fraction(ambient))
    assert isinstance(answer, Impossible)


def test_readings_a_hair_apart_are_no_division_by_nothing() -> None:
    """Two readings closer than a float can tell from one give a long constant, not an error."""
    hair = Fraction(1, 10**16)
    assert answered(time_constant(Fraction(400), 400 - hair, Fraction(60), Fraction(300))).value > 1e18


@pytest.mark.parametrize("constant", [0.0, -60.0, float("inf"), float("nan")])
def test_a_time_constant_that_is_no_time_is_refused(constant: float) -> None:
    """No wait follows from it."""
    hot, warm, air = Fraction(400), Fraction(320), Fraction(300)
    assert isinstance(time_to_cool(hot, warm, air, Estimate(constant)), Impossible)


@pytest.mark.parametrize(
    ("seconds", "unit", "text"),
    [
        (2641.0, "min", "about 45 min"),
        (6847.2, "min", "about 120 min"),
        (6847.2, "h", "about 2.0 h"),
        (0.0, "s", "about 0 s"),
    ],
)
def test_a_wait_is_shown_as_about(seconds: float, unit: str, text: str) -> None:
    """Two digits are enough for an estimate."""
    assert spell_wait(Estimate(seconds), UNITS[unit]).replace(NO_BREAK, " ") == text


@given(st.floats(1, 1e6), st.sampled_from(["s", "min", "h"]))
def test_nobody_is_told_too_soon(seconds: float, unit: str) -> None:
    """The shown time is no shorter than the estimate, and longer by a tenth at most."""
    text, _, _ = spell_wait(Estimate(seconds), UNITS[unit]).removeprefix("about ").partition(NO_BREAK)
    number = float(text.replace(GROUP, ""))
    shown = number * float(UNITS[unit].factor)
    assert seconds * (1 - 1e-12) <= shown <= seconds * 1.1 * (1 + 1e-12)


def test_a_wait_is_shown_as_a_time() -> None:
    """A unit of something else is a mistake of the caller."""
    with pytest.raises(ValueError, match="cannot be shown"):
        spell_wait(Estimate(60.0), UNITS["mm"])


@given(SURFACES, CONTACTS, CONTACTS)
def test_a_longer_touch_never_bears_more(surface: Surface, one: Fraction, other: Fraction) -> None:
    """Both edges of the band fall, or stay, with the time of contact."""
    short, long = answered(burn_band(surface, min(one, other))), answered(burn_band(surface, max(one, other)))
    assert short.low >= long.low
    assert short.high >= long.high
    assert short.low <= short.high


@given(CONTACTS)
def test_what_draws_heat_from_the_skin_worst_burns_last(contact: Fraction) -> None:
    """Bare metal burns at the lowest temperature, wood at the highest, at every time of contact."""
    edges = [answered(burn_threshold(surface, contact)) for surface in Surface]
    assert edges == sorted(edges)


@given(SURFACES, WARMTHS, numbers(1, 90) | CONTACTS)
def test_harm_begins_at_the_threshold_and_never_less_when_hotter(
    surface: Surface, warmth: Fraction, contact: Fraction
) -> None:
    """Below the threshold there is nothing to say; a hotter surface or a longer touch is never said to be milder."""
    ranks = {None: 0, Touch("moderate", "could"): 1, Touch("moderate", "will"): 2}
    harm = answered(harm_of_touch(surface, warmth, contact))
    assert (harm is None) == (warmth < answered(burn_threshold(surface, contact)))
    assert ranks[harm] <= ranks[answered(harm_of_touch(surface, warmth + 5, contact))]
    assert ranks[harm] <= ranks[answered(harm_of_touch(surface, warmth, 2 * contact))]


@pytest.mark.parametrize("contact", [0, -1])
def test_a_touch_that_does_not_last_is_refused(contact: int) -> None:
    """No threshold is named for it, and no harm denied."""
    assert isinstance(burn_threshold(Surface.WOOD, Fraction(contact)), Impossible)
    assert isinstance(harm_of_touch(Surface.WOOD, Fraction(300), Fraction(contact)), Impossible)


def test_the_shortest_and_the_longest_touch_take_the_ends_of_the_table() -> None:
    """Shorter than a second counts as a second; a day counts as eight hours."""
    assert burn_band(Surface.BARE_METAL, Fraction(1, 10)) == burn_band(Surface.BARE_METAL, Fraction(1))
    assert burn_band(Surface.BARE_METAL, Fraction(86_400)) == burn_band(Surface.BARE_METAL, EIGHT_HOURS)
