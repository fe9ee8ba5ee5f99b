"""Says why a text is not a quantity: the smallest stretch at fault, the reason, and what to write instead."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TypeAlias

from authoring.quantities.faults import FAULTS
from authoring.quantities.grammar import LONGEST, UNIT
from authoring.quantities.hints import EXAMPLES, offer
from authoring.quantities.misleading import MISLEADING, unit_advice
from authoring.quantities.numerals import NUMBER, SIGNED
from authoring.quantities.quantity import Quantity, Refusal
from authoring.quantities.told import Told
from authoring.quantities.twofold import twofold
from authoring.quantities.units import Dimension, plain_spelling, unit_named

Reads: TypeAlias = Callable[[str, Dimension | None], Quantity | Refusal | None]

_BARE = "A number without a unit says nothing."


def explain(text: str, dimension: Dimension | None, reads: Reads) -> Refusal:
    """Return why a text cannot be read as a quantity; the first fault that has a name of its own is told.

    `reads` is the reader, by which a mended text is tried before a cure offers it.
    """
    if len(text) > LONGEST:
        reason = f"The text is {len(text)} characters long; a quantity has at most {LONGEST}."
        return Refusal(reason, offer(dimension), 0, len(text))
    for pattern, tell in FAULTS:
        fault = pattern.search(text)
        if fault:
            told = tell(fault)
            cure = _quoted(_mended(text, dimension, reads, _ROUNDS)) or told.cure or _next(text, dimension, reads)
            return Refusal(told.reason, " ".join(filter(None, (cure, told.also))) or offer(dimension), *fault.span())
    double = twofold(text, dimension)
    if double is not None:
        return Refusal(double.reason, double.cure, len(text) - len(text.lstrip()), len(text.rstrip()))
    return _unnamed(text, dimension)


def _unnamed(text: str, dimension: Dimension | None) -> Refusal:
    """Return what is wrong where no fault has a name: no number, no unit, or what stands round them."""
    numbers = list(_NUMBER.finditer(text))
    if not numbers:
        return Refusal("There is no number here.", offer(dimension), 0, len(text))
    straight = _STRAIGHT.match(text)
    if straight is None:
        reason = "The text does not start with its number."
        return Refusal(reason, offer(dimension), 0, numbers[0].start() or len(text))
    if straight.end("number") == len(text.rstrip()):
        return Refusal(_BARE, _with_unit(dimension), *straight.span("number"))
    return _behind_number(text, straight.end("number"), numbers, dimension)


def explain_other(value: object, dimension: Dimension | None) -> Refusal:
    """Return why something that is not text is no quantity; there is no text to point at, so the place is empty."""
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        if dimension is Dimension.COUNT:
            return Refusal("A count is a whole number of a sensible size.", 'Write whole pieces, such as "4".', 0, 0)
        return Refusal(_BARE, _with_unit(dimension), 0, 0)
    return Refusal("This is not a quantity.", offer(dimension), 0, 0)


_ROUNDS = 3
"""How many faults of one text are mended one behind the other, for a cure that can be pasted."""


def _mended(text: str, dimension: Dimension | None, reads: Reads, rounds: int) -> list[str]:
    """Return the texts that can be read once the named faults are mended, one for each thing that could be meant."""
    for pattern, tell in FAULTS:
        if pattern.search(text):
            readable: list[str] = []
            for mended in _once(text, pattern, tell):
                if isinstance(reads(mended, dimension), Quantity):
                    readable.append(mended)
                elif rounds > 1:
                    readable += _mended(mended, dimension, reads, rounds - 1)
            return readable
    return []


def _next(text: str, dimension: Dimension | None, reads: Reads) -> str:
    """Return the cure of what is still wrong once the named faults are mended: no cure offers what is refused in turn.

    It is empty where mending the first fault leads nowhere.
    """
    for _ in range(_ROUNDS):
        fault = next(((pattern, tell) for pattern, tell in FAULTS if pattern.search(text)), None)
        if fault is None:
            read = reads(text, dimension)
            return read.cure if isinstance(read, Refusal) else explain(text, dimension, reads).cure
        text = next(iter(_once(text, *fault)), "")
    return ""


def _once(text: str, pattern: re.Pattern[str], tell: Callable[[re.Match[str]], Told]) -> list[str]:
    """Return the text with every fault of one kind mended, once for each thing that could be meant."""
    told = [(found.span(), tell(found)) for found in pattern.finditer(text)]
    texts = list(told[0][1].texts)
    places = [(place, one.instead) for place, one in told]
    for way in range(min(len(instead) for _, instead in places)):
        mended = text
        for (start, end), instead in reversed(places):
            mended = mended[:start] + instead[way] + mended[end:]
        texts.append(mended.strip())
    return texts


def _quoted(texts: list[str]) -> str:
    return "Write " + " or ".join(f'"{one}"' for one in texts) + "." if texts else ""


def _with_unit(dimension: Dimension | None) -> str:
    symbol = EXAMPLES[dimension][0] if dimension else "N·m"
    gap = "" if symbol == "°" else " "
    return f'Write the unit behind the number, such as "42{gap}{symbol}".'


_NUMBER = re.compile(NUMBER)
_UNIT = re.compile(rf"(?<![^\W\d_])(?:{UNIT})")
_STRAIGHT = re.compile(
    rf"\s*+(?>(?:(?i:about|approx|approximately|ca|at\s++least|at\s++most|min|max|minimum|maximum)\.?)?)\s*+[~≈]?+\s*+[(>=≤≥<]*+\s*+(?P<number>{SIGNED})"
)
_TWO_NUMBERS = re.compile(r"[±+%]|\bto\b|\.\.|[–—…]")
_ODD = re.compile(r"""[^\w\s°º˚℃℉%'’′⁻"″”²³^·⋅∙•*‐‑±+/().–—…\u2212-]""")


def _behind_number(text: str, start: int, numbers: list[re.Match[str]], dimension: Dimension | None) -> Refusal:
    """Return what is wrong behind the first number: its unit, a stray sign, or more than there should be."""
    for found in _UNIT.finditer(text, start):
        if unit_named(found[0]) is None:
            return _unknown(found, dimension)
    odd = _ODD.search(text, start)
    if odd:
        if odd[0] == "#":
            return Refusal(*unit_advice("#", dimension), *odd.span())
        return Refusal(f'"{odd[0]}" has no place in a quantity.', "Leave it out.", *odd.span())
    if not _UNIT.search(text, start):
        return Refusal(_BARE, _with_unit(dimension), *numbers[0].span())
    if len(numbers) > 1 and not _TWO_NUMBERS.search(text, start):
        return Refusal("There is more than one quantity here.", "Write one number and one unit.", 0, len(text))
    return Refusal("This cannot be read as a quantity.", offer(dimension), start, len(text))


def _unknown(found: re.Match[str], dimension: Dimension | None) -> Refusal:
    """Return what is wrong with a stretch that should be a unit: the unit itself, or words behind a good one."""
    if plain_spelling(found[0]) in MISLEADING:
        return Refusal(*unit_advice(found[0], dimension), *found.span())
    words = list(re.finditer(r"\S++", found[0]))
    for word in reversed(words[:-1]):
        if unit_named(found[0][: word.end()]):
            place = (found.start() + word.end() + 1, found.end())
            if _same(found[0][: word.end()], found[0][word.end() :]):
                return Refusal("The unit stands there twice.", f'Write "{found[0][: word.end()]}" once.', *place)
            return Refusal("There are words behind the unit.", "Write a number and its unit alone.", *place)
    return Refusal(*unit_advice(found[0], dimension), *found.span())


def _same(one: str, other: str) -> bool:
    first, second = unit_named(one), unit_named(other.strip())
    return first is not None and first is second
