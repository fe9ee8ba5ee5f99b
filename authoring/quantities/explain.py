"""Says why a text is not a quantity: the smallest stretch at fault, the reason, and what to write instead."""

from __future__ import annotations

import re
from collections.abc import Callable
from fractions import Fraction

from authoring.quantities.grammar import UNIT
from authoring.quantities.hints import EXAMPLES, offer, unit_advice
from authoring.quantities.numerals import NUMBER, SIGNED, write_numeral
from authoring.quantities.quantity import Refusal
from authoring.quantities.units import Dimension, unit_named

LONGEST = 200
"""The longest text that is read at all; a quantity needs some thirty characters."""

_MANY_DIGITS = 15
_Say = Callable[[re.Match[str]], tuple[str, str]]


def explain(text: str, dimension: Dimension | None = None) -> Refusal:
    """Return why a text cannot be read as a quantity; the first fault that has a name of its own is told."""
    if len(text) > LONGEST:
        reason = f"The text is {len(text)} characters long; a quantity has at most {LONGEST}."
        return Refusal(reason, offer(dimension), 0, len(text))
    if not text.strip():
        return Refusal("There is no number here.", offer(dimension), 0, len(text))
    for pattern, say in _FAULTS:
        fault = pattern.search(text)
        if fault:
            return Refusal(*say(fault), *fault.span())
    return _unit_or_number(text, dimension)


def explain_other(value: object, dimension: Dimension | None) -> Refusal:
    """Return why something that is not text is no quantity."""
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        if dimension is Dimension.COUNT:
            return Refusal("A count is a whole number of a sensible size.", 'Write whole pieces, such as "4".', 0, 0)
        return Refusal("A number without a unit says nothing.", _with_unit(dimension), 0, 0)
    return Refusal("This is not a quantity.", offer(dimension), 0, 0)


def _with_unit(dimension: Dimension | None) -> str:
    if dimension is None:
        return 'Write the unit behind the number, such as "42 N·m".'
    return f'Write the unit behind the number, such as "{EXAMPLES[dimension][0]}".'


def _comma(found: re.Match[str]) -> tuple[str, str]:
    typed = found[0]
    whole, *rest = typed.split(",")
    if all(len(group) == len("000") for group in rest):
        together = typed.replace(",", "")
        also = f' (or "{whole}.{rest[0]}" if a decimal is meant)' if len(rest) == 1 else ""
        return "A comma in a number is read differently from country to country.", f'Write "{together}"{also}.'
    return "A decimal comma is not read here; the decimal sign is a point.", f'Write "{typed.replace(",", ".", 1)}".'


_GLYPHS = {"½": "1/2", "¼": "1/4", "¾": "3/4", "⅛": "1/8", "⅜": "3/8", "⅝": "5/8", "⅞": "7/8", "⅓": "1/3", "⅔": "2/3"}


def _fraction(found: re.Match[str]) -> tuple[str, str]:
    reason = "A fraction is not read here."
    glyph = found["glyph"]
    above, _, below = (_GLYPHS[glyph] if glyph else f"{found['above']}/{found['below']}").partition("/")
    if int(below) == 0:
        return reason, "Write it as a decimal number."
    value = int(found["whole"] or found["whole_glyph"] or 0) + Fraction(int(above), int(below))
    for places in range(8):
        if (value * 10**places).denominator == 1:
            return reason, f'Write the decimal number "{write_numeral(value, places)}".'
    return reason, f'Write a decimal number, such as "{write_numeral(Fraction(round(value * 1000), 1000), 3)}".'


def _hyphen(found: re.Match[str]) -> tuple[str, str]:
    cure = f'For a range write "{found["low"]} to {found["high"]}".'
    return "A hyphen between two numbers can be a range or a minus.", cure


def _bound_behind(found: re.Match[str]) -> tuple[str, str]:
    word = "at least" if found["word"].casefold().startswith("min") else "at most"
    return f'"{found["word"]}" stands behind the number.', f'Write "{word}" before the number.'


def _strict(found: re.Match[str]) -> tuple[str, str]:
    word = "at least" if found[0] == ">" else "at most"
    return f'"{found[0]}" leaves its own number out, which no gauge can tell.', f'Write "{word}" and the number.'


def _always(reason: str, cure: str) -> _Say:
    def say(_: re.Match[str]) -> tuple[str, str]:
        return reason, cure

    return say


_FULL = "Write the number out in full, digits and one point only."
_UNSEEN = r"[\x00-\x08\x0b-\x1f\x7f-\x9f\xad\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufffd-\uffff\ud800-\udfff]"

_FAULTS: tuple[tuple[re.Pattern[str], _Say], ...] = tuple(
    (re.compile(pattern), say)
    for pattern, say in (
        (_UNSEEN, _always("There is a character here that cannot be seen.", "Delete it and type the text again.")),
        (rf"[0-9]{{{_MANY_DIGITS + 1},}}+", _always("The number has more digits than any gauge.", _FULL)),
        (r"[0-9]++(?:,[0-9]++)++", _comma),
        (
            r"(?:(?P<whole>[0-9]{1,6})(?:\s|-){1,3})?(?<![0-9./+-])(?P<above>[0-9]{1,6})\s?[/⁄]\s?(?P<below>[0-9]{1,6})"
            r"|(?P<whole_glyph>[0-9]{1,6})?\s?(?P<glyph>[½¼¾⅛⅜⅝⅞⅓⅔])",
            _fraction,
        ),
        (r"[0-9]\s?[eE][-+\u2212]?[0-9]++", _always("A power of ten is not read here.", _FULL)),
        (
            r"[0-9]\s*+(?:\*\*|\^|[×*x]\s*+[0-9])\s*+[0-9]*+|[⁰¹⁴⁵⁶⁷⁸⁹]",
            _always("A sum is not worked out here.", _FULL),
        ),
        (r"(?i)\b(?:inf|infinity|nan)\b|∞", _always("This is not a number that can be measured.", _FULL)),
        (
            r"(?:±|\+/[-\u2212])\s*+[-\u2212]",
            _always("A tolerance below zero leaves no window.", "Write the tolerance without a minus."),
        ),
        (r"(?:±|\+/[-\u2212])\s*+\+", _always("The tolerance has a sign of its own.", 'Write "± 4".')),
        (r"(?<![0-9])\.[0-9]++", _always("The number starts with its point.", 'Write the zero too: "0.5".')),
        (r"[0-9]\.(?=\s|$)", _always("The number ends with its point.", 'Leave the point out, or write "5.0".')),
        (rf"(?P<low>{NUMBER})\s*+-\s*+(?P<high>{NUMBER})(?!\s*+/)", _hyphen),
        (r"[0-9]{1,3}(?: [0-9]{3})+(?![0-9])", _always("The number is split by blanks.", "Write its digits together.")),
        (r"[<>](?!=)", _strict),
        (r"(?i)[^\W\d_]\W+(?P<word>min(?:imum)?|max(?:imum)?)\.?\s*$", _bound_behind),
        (
            r"(?i)^\s*(?:[~≈]|about\b|approx\b|approximately\b|ca\b|circa\b|around\b)",
            _always("An approximate number cannot be checked.", 'Write a tolerance, such as "42 N·m ± 10 %".'),
        ),
        (r"(?i)^\s*(?:from|between)\b", _always("A range starts with its first number.", 'Write "40 to 44 N·m".')),
        (r"(?i)\bplus or minus\b|\+\s*-", _always("The tolerance sign is not read.", 'Write "±" or "+/-".')),
        (r"[\uff10-\uff19\u0660-\u0669]", _always("These digits are not read.", "Type the digits 0 to 9.")),
    )
)

_STRAIGHT = re.compile(
    rf"\s*+(?:[^\W\d_]++\.?\s++){{0,2}}[(<>=≤≥]*+\s*+(?P<number>{SIGNED})\s*+(?P<rest>.*)", re.DOTALL
)
_UNIT_START = re.compile(UNIT)
_ANY_NUMBER = re.compile(NUMBER)


def _unit_or_number(text: str, dimension: Dimension | None) -> Refusal:
    """Return what is wrong when no fault has a name: the number, the unit, or more than one of them."""
    numbers = list(_ANY_NUMBER.finditer(text))
    if not numbers:
        return Refusal("There is no number here.", offer(dimension), 0, len(text))
    straight = _STRAIGHT.match(text)
    if straight is None:
        return Refusal("The text does not start with its number.", offer(dimension), 0, numbers[0].start() or len(text))
    rest = straight["rest"].rstrip()
    start = straight.start("rest")
    if not rest:
        return Refusal("A number without a unit says nothing.", _with_unit(dimension), *straight.span("number"))
    unknown = _first_unknown(text, start)
    if unknown:
        begin, end = unknown
        return Refusal(*unit_advice(text[begin:end], dimension), begin, end)
    if len(numbers) > 1 and not re.search(r"±|\+|\bto\b|\.\.|[–—…]", rest):
        return Refusal("There is more than one quantity here.", "Write one number and one unit.", 0, len(text))
    if not _UNIT_START.search(rest):
        first = numbers[0]
        return Refusal("A number without a unit says nothing.", _with_unit(dimension), *first.span())
    return Refusal("This cannot be read as a quantity.", offer(dimension), start, start + len(rest))


def _first_unknown(text: str, start: int) -> tuple[int, int] | None:
    """Return the first stretch behind the first number that should be a unit and is none."""
    for found in _UNIT_START.finditer(text, start):
        if unit_named(found[0]) is None:
            return found.span()
    odd = re.compile(r"[^\w\s±+/().–—…\u2212-]\S{0,20}").search(text, start)
    if odd and unit_named(odd[0]) is None:
        return odd.span()
    return None
