"""The faults that have a name of their own: how each looks in a text, why it is one, and what stands there instead."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from fractions import Fraction

from msgspec import Struct

from authoring.quantities.numerals import LONGEST_NUMBER, NUMBER, write_numeral


class Told(Struct, frozen=True):
    """What to say of a fault: `instead` holds what may replace it, `cure` is said when nothing can."""

    reason: str
    cure: str = ""
    instead: tuple[str, ...] = ()


_FULL = "Write the number out in full, digits and one point only."


def _comma(found: re.Match[str]) -> Told:
    typed = found[0]
    whole, *groups = typed.split(",")
    together, point = typed.replace(",", ""), f"{whole}.{groups[0]}"
    if len(groups) > 1:
        return Told("A number is not split by commas here.", instead=(together,))
    if len(groups[0]) == len("000"):
        return Told("A comma in a number is read differently from country to country.", instead=(together, point))
    return Told("A decimal comma is not read here; the decimal sign is a point.", instead=(point,))


_GLYPHS = {"½": (1, 2), "¼": (1, 4), "¾": (3, 4), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8)}
_MOST_PLACES = 7  # a 128th of an inch, the finest fraction on a rule, needs seven decimals


def _fraction(found: re.Match[str]) -> Told:
    reason = "A fraction is not read here."
    above, below = _GLYPHS.get(found["glyph"]) or (int(found["above"]), int(found["below"]))
    if below == 0:
        return Told(reason, "Write it as a decimal number.")
    value = int(found["whole"] or found["whole_glyph"] or 0) + Fraction(above, below)
    for places in range(_MOST_PLACES + 1):
        if (value * 10**places).denominator == 1:
            return Told(reason, instead=(write_numeral(value, places),))
    return Told(reason, "It has no end as a decimal number: write as many decimals as are meant.")


def _bound_behind(found: re.Match[str]) -> Told:
    typed = found["word"] or found["most"]
    word = "at least" if typed.casefold().startswith("min") else "at most"
    before = found.string[: found.start()].strip()
    return Told(f'"{typed}" stands behind the number.', f'Write "{word} {before}".')


def _strict(found: re.Match[str]) -> Told:
    word = "at least" if found[0].startswith(">") else "at most"
    return Told("A limit that leaves its own number out is beyond any gauge.", instead=(f"{word} ",))


def _digits(found: re.Match[str]) -> Told:
    plain = "".join(str(unicodedata.digit(one)) for one in found[0])
    return Told("Only the digits 0 to 9 are read here.", instead=(plain,))


def _always(reason: str, cure: str) -> Callable[[re.Match[str]], Told]:
    return lambda _: Told(reason, cure)


def _rewritten(reason: str, template: str) -> Callable[[re.Match[str]], Told]:
    return lambda found: Told(reason, instead=(found.expand(template),))


_PLUS_MINUS = "(?:±|\\+/[-\u2212])"
_UNSEEN = (
    r"[\x00-\x08\x0b-\x1f\x7f-\x9f\xad\u200b-\u200f\u2028-\u202e\u2060-\u206f"
    r"\ud800-\udfff\ufeff\ufff0-\uffff]"
)
_FRACTION = (
    r"(?<![0-9./])(?:(?P<whole>[0-9]{1,6})[\s-]{1,3})?(?P<above>[0-9]{1,6})\s?[/⁄]\s?(?P<below>[0-9]{1,6})(?![0-9])"
    r"|(?<![0-9./])(?P<whole_glyph>[0-9]{1,6})?[\s-]?(?P<glyph>[½¼¾⅛⅜⅝⅞])"
)
_SUM = r"[0-9]++\s*+(?:\*\*|\^|[×*x]\s*+[0-9])\s*+[0-9]*+|[⁰¹⁴⁵⁶⁷⁸⁹]"
_ROUGHLY = r"(?i)(?<=^)(?:circa|around|roughly)\b\.?"
_BEHIND = r"(?i)(?:(?<=[^\W\d_] )(?P<word>min(?:imum)?|max(?:imum)?)|(?<=[0-9] )(?P<most>max(?:imum)?))\.?\s*$"

FAULTS: tuple[tuple[re.Pattern[str], Callable[[re.Match[str]], Told]], ...] = tuple(
    (re.compile(pattern), tell)
    for pattern, tell in (
        (_UNSEEN, _always("There is a character here that cannot be seen.", "Delete it and type the text again.")),
        (r"(?>(?:(?![0-9])\d)+)", _digits),
        (
            rf"[0-9]{{{LONGEST_NUMBER + 1},}}+",
            _always("The number has more digits than any gauge.", "Write the digits that can be measured."),
        ),
        (r"[0-9]++(?>(?:,[0-9]++)+)", _comma),
        (_FRACTION, _fraction),
        (r"[0-9]++\s?[eE][-+\u2212]?[0-9]++", _always("A power of ten is not read here.", _FULL)),
        (_SUM, _always("A sum is not worked out here.", _FULL)),
        (r"(?i)\b(?:inf|infinity|nan)\b|∞", _always("This is not a number that can be measured.", _FULL)),
        (
            rf"(?P<sign>{_PLUS_MINUS})\s*+[-\u2212]\s*+",
            _rewritten("A tolerance below zero leaves no window.", r"\g<sign> "),
        ),
        (rf"(?P<sign>{_PLUS_MINUS})\s*+\+\s*+", _rewritten("The tolerance has a second sign.", r"\g<sign> ")),
        (r"(?i)\bplus or minus\b|\+\s*+-(?!\s*+/)", _rewritten("The tolerance sign is not read here.", "±")),
        (r"(?<![0-9.])\.([0-9]++)", _rewritten("The number starts with its point.", r"0.\1")),
        (r"(?<![0-9.])([0-9]++)\.(?=\s|$)", _rewritten("The number ends with its point.", r"\1")),
        (
            rf"(?P<low>{NUMBER})\s*+-\s*+(?P<high>{NUMBER})(?!\s*+/)",
            _rewritten(
                "A hyphen between two numbers is a range to some and a minus to others.", r"\g<low> to \g<high>"
            ),
        ),
        (
            r"(?<![0-9.])[0-9]{1,3}(?>(?:[ \xa0'’][0-9]{3})+)(?![0-9])",
            lambda found: Told("The number is split.", instead=(re.sub(r"\D", "", found[0]),)),
        ),
        (r"[<>](?!=)\s*+", _strict),
        (_BEHIND, _bound_behind),
        (_ROUGHLY, _rewritten("This word for a rough value is not read here.", "about")),
        (r"(?i)^\s*+(?:from|between)\b", _always("A range starts with its first number.", 'Write "40 to 44 N·m".')),
    )
)
"""In the order in which they are looked for; every pattern takes time in proportion to the text."""
