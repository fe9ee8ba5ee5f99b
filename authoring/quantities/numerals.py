"""Numbers as text: reading them exactly, and writing them the way NIST SP 811 (2008), section 10.5 sets them."""

from __future__ import annotations

from fractions import Fraction

MINUS = "\u2212"
GROUP = "\u202f"
LONGEST_NUMBER = 16
"""The most characters of one number: far more than a gauge shows, few enough to stay readable."""

_SIGNS = "-+" + MINUS
_THREE = 3
_UNGROUPED = 4  # SP 811, 10.5.3: four digits on one side of the point are customarily left together

NUMBER = r"[0-9]++(?>(?:[\u202f\u2009][0-9]{3})*)(?>(?:\.[0-9]++(?>(?:[\u202f\u2009][0-9]{1,3})*))?)"
"""A number without sign, as a regular expression that never backs up."""

SIGN = f"(?!,)[+-\\-{MINUS}]"
"""A sign, as a class of two stretches: one of three costs a tenth of the grammar to compile, and a comma is none."""

SIGNED = rf"(?>(?:{SIGN})?){NUMBER}"


def read_numeral(text: str) -> tuple[Fraction, str]:
    """Return the exact value of a text that matches SIGNED, and its digits with a plain minus, ungrouped."""
    digits = text.replace(MINUS, "-").replace(GROUP, "").replace("\u2009", "").lstrip("+")
    whole, _, decimals = digits.partition(".")
    if not decimals:
        return Fraction(int(whole)), digits
    return Fraction(int(whole + decimals), 10 ** len(decimals)), digits


def places_of(digits: str) -> int:
    """Return how many decimals a numeral shows."""
    return len(digits.partition(".")[2])


def write_numeral(value: Fraction, places: int) -> str:
    """Return a value that is whole at `places` decimals (may be below zero) as a plain numeral.

    Raises ValueError when digits would be lost.
    """
    scaled = value * 10 ** max(places, 0)
    if scaled.denominator != 1:
        message = f"{value} does not end after {places} decimals"
        raise ValueError(message)
    sign = "-" if scaled < 0 else ""
    digits = str(abs(scaled.numerator))
    if places <= 0:
        return sign + digits
    digits = digits.rjust(places + 1, "0")
    return f"{sign}{digits[:-places]}.{digits[-places:]}"


def typeset(numeral: str) -> str:
    """Return a plain numeral with a true minus and its digits in groups of three, thin spaces between."""
    sign = MINUS if numeral.startswith("-") else ""
    whole, point, decimals = numeral.lstrip(_SIGNS).partition(".")
    if len(whole) > _UNGROUPED:
        first = len(whole) % _THREE or _THREE
        whole = GROUP.join([whole[:first], *_threes(whole[first:])])
    if len(decimals) > _UNGROUPED:
        decimals = GROUP.join(_threes(decimals))
    return sign + whole + point + decimals


def _threes(digits: str) -> list[str]:
    return [digits[at : at + _THREE] for at in range(0, len(digits), _THREE)]
