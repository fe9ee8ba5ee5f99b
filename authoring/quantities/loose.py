"""Finds numbers with a unit in prose, where they do not belong: a number with a unit stands in the data."""

from __future__ import annotations

import re

from authoring.quantities.numerals import NUMBER
from authoring.quantities.spellings import NATIONLESS
from authoring.quantities.units import LOOKALIKE_SIGNS, SPELLINGS, Dimension

_NUMERAL = rf"(?:[0-9]++/[0-9]++|{NUMBER}(?>(?:,[0-9]++)?))"
_BETWEEN = r"\s?(?:±|\+/-|to\b|[-–—]|\.\.|…)\s?"
_NUMBERS = re.compile(
    rf"(?>(?:(?<!\S)[-\u2212])?)(?<![\w.,/·])(?:(?P<lead>{_NUMERAL}){_BETWEEN})?"
    rf"(?P<number>{_NUMERAL}|[½¼¾⅛⅜⅝⅞])(?P<gap>[\s-]?+)",
)
_LABEL = re.compile(
    r"\b(?:steps?|pages?|sections?|figures?|fig\.|notes?|items?|positions?|tables?|numbers?|nos?\.|bolts?|part|line)\s$",
    re.IGNORECASE,
)
_NEARBY = 12
_WORDY = frozenset({"in", "turn", "second", "foot"})
# Behind a label ("step 3 turns", "bolt 2 L") these are words or letters, never units.
_LABELLED = _WORDY | {"turns", "revs", "rev"}
_SIDEWAYS = re.compile(r"\s(?:long|deep|wide|thick|high|tall|across|apart|gap|of|from|below|above|or|max|min)\b")
_BEFORE = re.compile(r"(?:\bby|\bto|\bof|\bleast|\bmost|\babout|\bover|\bunder|\bwithin|\bthan|[×x±–])\s$")
_CLAUSE_END = re.compile(r"\s?(?:$|[,;:)]|\.(?:\s|$))")
# A count and a share ("50 % worn") are said in prose.
_SAID = (Dimension.COUNT, Dimension.RATIO)
_MEASURED = {spelling for spelling, unit in SPELLINGS.items() if unit.dimension not in _SAID}
_WRITTEN = frozenset(_MEASURED | set(NATIONLESS) | {"C", "F", "℃", "℉"})
# A closing quotation mark is an inch sign to the reader of quantities; in prose it closes a quotation.
_SIGNS = {sign: right for sign, right in LOOKALIKE_SIGNS.items() if sign != ord("”")}
_LONGEST = max(map(len, _WRITTEN))


def find_loose(text: str) -> list[tuple[int, int]]:
    """Return the stretches of `text`, as start and end, that are a number followed by a unit."""
    plain = re.sub(r"\s", " ", text.translate(_SIGNS))
    found: list[tuple[int, int]] = []
    for match in _NUMBERS.finditer(plain):
        end = _unit_end(plain, match)
        if end is None:
            continue
        start = match.start()
        if match["lead"] and _LABEL.search(plain, max(0, start - _NEARBY), start):
            start = match.start("number")
        found.append((start, end))
    return found


def _unit_end(plain: str, match: re.Match[str]) -> int | None:
    """Return where the unit behind a number ends, or None when there is none that is clearly a unit."""
    start = match.end()
    for end in range(min(len(plain), start + _LONGEST), start, -1):
        spelling = plain[start:end]
        if spelling not in _WRITTEN or _goes_on(plain, end):
            continue
        return end if _is_clear(plain, match, spelling, end) else None
    return None


def _goes_on(plain: str, end: int) -> bool:
    following = plain[end : end + 1]
    return (following.isalnum() or following in ("_", "'", "’")) and plain[end - 1] not in '"°'


def _is_clear(plain: str, match: re.Match[str], spelling: str, end: int) -> bool:
    number = match["number"]
    if spelling == '"':  # an even count of quotation marks before: this one does not close a quotation
        return plain.count('"', 0, end - 1) % 2 == 0
    if spelling in _LABELLED or (len(spelling) == 1 and spelling.isalpha()):
        start = match.start()
        if _LABEL.search(plain, max(0, start - _NEARBY), start):
            return False
    if spelling in ("C", "F"):
        return len(number) > 1
    return spelling not in _WORDY or not number.isdigit() or not match["gap"] or _is_noun(plain, match, spelling, end)


def _is_noun(plain: str, match: re.Match[str], spelling: str, end: int) -> bool:
    """Tell whether a unit that is an everyday word too is the unit here: "a gap of 2 in.", not "2 in the box"."""
    if spelling != "in":
        return match["number"] == "1"
    if _SIDEWAYS.match(plain, end):
        return True
    before = match["lead"] or _BEFORE.search(plain, max(0, match.start() - _NEARBY), match.start())
    return bool(before and _CLAUSE_END.match(plain, end))
