"""The faults that have a name of their own: how each looks in a text, why it is one, and what stands there instead."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable
from fractions import Fraction

from authoring.quantities.fault_words import SIGNS, WORDS
from authoring.quantities.grammar import UNIT
from authoring.quantities.numerals import LONGEST_NUMBER, NUMBER, write_numeral
from authoring.quantities.told import Told, always, rewritten

_THOUSANDS = re.compile(r"[0-9]{1,3}(?:[.,][0-9]{3})+")
_FULL = "Write the number out in full, digits and one point only."


def _comma(found: re.Match[str]) -> Told:
    typed = found[0]
    whole, *groups = typed.split(",")
    together = typed.replace(",", "")
    if "." in typed:
        return _both_marks(typed)
    if len(groups) > 1:
        return Told("A number is not split by commas here.", instead=(together,))
    if len(groups[0]) == len("000"):
        return Told(
            "A comma in a number is read differently from country to country.",
            instead=(together, f"{whole}.{groups[0]}"),
        )
    return Told("A decimal comma is not read here; the decimal sign is a point.", instead=(f"{whole}.{groups[0]}",))


def _both_marks(typed: str) -> Told:
    """Say of a number with commas and points that the last mark is its decimal sign, when the others part thousands."""
    reason = "There are a comma and a point in one number."
    last = max(typed.rfind(","), typed.rfind("."))
    if typed.count(typed[last]) > 1 or not _THOUSANDS.fullmatch(typed[:last]):
        return Told(reason, _FULL)
    return Told(reason, instead=(f"{re.sub('[.,]', '', typed[:last])}.{typed[last + 1 :]}",))


def _points(found: re.Match[str]) -> Told:
    reason = "There is more than one point in the number."
    whole = _THOUSANDS.fullmatch(found[0])
    return Told(reason, instead=(found[0].replace(".", ""),)) if whole else Told(reason, _FULL)


def _clock(found: re.Match[str]) -> Told:
    reason = "A colon is not read in a number."
    if found["unit"] is None:
        return Told(reason, 'Write a time in "min" or "s"; a position on the clock face is said in words.')
    minor = int(found["major"]) * 60 + int(found["minor"])
    return Told(reason, instead=(f"{minor} {'min' if found['unit'] == 'h' else 's'}",))


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


def _digits(found: re.Match[str]) -> Told:
    plain = "".join(str(unicodedata.digit(one)) for one in found[0])
    return Told("Only the digits 0 to 9 are read here.", instead=(plain,))


_PLUS_MINUS = "(?:±|\\+/[-\u2212])"
_UNSEEN = (
    r"[\x00-\x08\x0b-\x1f\x7f-\x9f\xad\u200b-\u200f\u2028-\u202e\u2060-\u206f"
    r"\ud800-\udfff\ufeff\ufff0-\uffff]"
)
_FRACTION = (
    r"(?<![0-9./])(?:(?P<whole>[0-9]{1,6})[\s-]{1,3})?(?P<above>[0-9]{1,6})\s?[/⁄]\s?(?P<below>[0-9]{1,6})(?![0-9])"
    r"|(?<![0-9./])(?P<whole_glyph>[0-9]{1,6})?[\s-]?(?P<glyph>[½¼¾⅛⅜⅝⅞])"
)
_SUM = r"[0-9]++\s*+(?:\*\*|\^|[×*x]\s*+[0-9])\s*+[0-9]*+|(?<!⁻)[⁰¹⁴⁵⁶⁷⁸⁹]"
_HYPHEN = "[-‐‑\u2212]"
FAULTS: tuple[tuple[re.Pattern[str], Callable[[re.Match[str]], Told]], ...] = tuple(
    (re.compile(pattern), tell)
    for pattern, tell in (
        (_UNSEEN, always("There is a character here that cannot be seen.", "Delete it and type the text again.")),
        (r"(?>(?:(?![0-9])\d)+)", _digits),
        (
            rf"[0-9]{{{LONGEST_NUMBER + 1},}}+",
            always("The number has more digits than any gauge.", "Write the digits that can be measured."),
        ),
        (r"[0-9]++(?>(?:\.[0-9]++)*)(?>(?:,[0-9]++)+)(?>(?:\.[0-9]++)?)", _comma),
        (r"[0-9]++(?>(?:\.[0-9]++){2,})", _points),
        (r"(?<![0-9:])(?P<major>[0-9]{1,2}):(?P<minor>[0-5][0-9])(?![0-9:])(?>(?:\s*(?P<unit>h|min)\b)?)", _clock),
        (_FRACTION, _fraction),
        (r"[0-9]++\s?[eE][-+\u2212]?[0-9]++", always("A power of ten is not read here.", _FULL)),
        (_SUM, always("A sum is not worked out here.", _FULL)),
        (r"(?i)\b(?:inf|infinity|nan)\b|∞", always("This is not a number that can be measured.", _FULL)),
        (
            rf"(?P<sign>{_PLUS_MINUS})\s*+[-\u2212]\s*+",
            rewritten("A tolerance below zero leaves no window.", r"\g<sign> "),
        ),
        (rf"(?P<sign>{_PLUS_MINUS})\s*+\+\s*+", rewritten("The tolerance has a second sign.", r"\g<sign> ")),
        (r"(?i)\bplus or minus\b|\+\s*+-(?!\s*+/)", rewritten("The tolerance sign is not read here.", "±")),
        (r"(?<![0-9.])\.([0-9]++)", rewritten("The number starts with its point.", r"0.\1")),
        (r"(?<![0-9.])([0-9]++)\.(?=\s|$)", rewritten("The number ends with its point.", r"\1")),
        *SIGNS,
        (
            rf"(?P<low>{NUMBER}(?:|\s*+(?:{UNIT})))(?:(?<=\S){_HYPHEN}(?=\S)|\s+{_HYPHEN}\s+)(?P<high>{NUMBER})(?!\s*+/)",
            rewritten("A hyphen between two numbers is a range to some and a minus to others.", r"\g<low> to \g<high>"),
        ),
        (
            r"(?<![0-9.])[0-9]{1,3}(?>(?:[ \xa0\u2007'’_][0-9]{3})+)(?![0-9])",
            lambda found: Told("The number is split.", instead=(re.sub(r"\D", "", found[0]),)),
        ),
        *WORDS,
    )
)
"""In the order in which they are looked for, in a text of at most two hundred characters."""
