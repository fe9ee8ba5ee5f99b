"""How many digits a converted number keeps, and which way it rounds.

Digits: NIST SP 811 (2008), App. B.7.2, keeps the digits whose relative rounding error matches that of the original.
The leading-digit rule is its short form: as many significant digits as were typed, one more when the number begins
lower than the original did.
Said as places: the last place shown is the largest power of ten no coarser than the last place typed, converted.
The two agree, but where both numbers begin with the same digit the later digits decide: 17 and 18 N·m stay two torques.
A converted number shows two significant digits at least, so that one typed digit is not blurred by up to a half;
a temperature does not, as its zero means nothing.

Direction: a limit never widens (ASME A112.18.1-2018/CSA B125.1-18, Annex A.2 e):
a low limit rounds up, a high one down.
A nominal rounds to nearest, half to even (same, Annex A.2 d).
A window may lose a twentieth of its width to inward rounding; if it would lose more, it shows more digits.
"""

from __future__ import annotations

import math
from fractions import Fraction
from functools import cache

LARGEST_LOSS = Fraction(1, 20)
"""The share of a window's width that inward rounding may take away."""

_LEAST_DIGITS = 2


def places_for_step(step: Fraction) -> int:
    """Return the decimals of the largest power of ten that is not larger than `step` (below zero: tens, hundreds)."""
    return -_exponent(step)


def places_for_value(value: Fraction) -> int:
    """Return the decimals at which `value` shows the least count of significant digits."""
    return _LEAST_DIGITS - 1 - _exponent(abs(value)) if value else 0


def _exponent(size: Fraction) -> int:
    """Return the largest n for which 10**n <= size, size above zero; exact."""
    guess = len(str(size.numerator)) - len(str(size.denominator))
    return guess if _ten(guess) <= size else guess - 1


@cache
def _ten(power: int) -> Fraction:
    return Fraction(10) ** power


def up(value: Fraction, places: int) -> Fraction:
    """Round towards plus infinity."""
    return math.ceil(value * _ten(places)) / _ten(places)


def down(value: Fraction, places: int) -> Fraction:
    """Round towards minus infinity."""
    return math.floor(value * _ten(places)) / _ten(places)


def nearest(value: Fraction, places: int) -> Fraction:
    """Round to nearest, half to even."""
    return round(value * _ten(places)) / _ten(places)


def window_places(low: Fraction, high: Fraction, places: int) -> int:
    """Return the fewest decimals, `places` or more, at which the window loses no more than a twentieth."""
    allowed = (high - low) * LARGEST_LOSS
    while (up(low, places) - low) + (high - down(high, places)) > allowed:
        places += 1
    return places
