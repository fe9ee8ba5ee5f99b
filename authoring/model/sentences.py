"""Sentences of a text, and how many words a reader counts in each."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import lru_cache

from msgspec import Struct

from authoring.model.brackets import BRACKET

_SENTENCE = re.compile(r"[^.!?;:]+(?:[.](?=\d)[^.!?;:]*)*")
_DASHES = (" – ", " — ", " - ")


class Sentence(Struct, frozen=True):
    """One sentence: its text, where it begins in the whole, and its words.

    A name in brackets counts as one word, as a technical name does in simplified English, and so do words joined by a
    hyphen (ASD-STE100, section 8, from memory).
    """

    text: str
    start: int
    words: int


@lru_cache(maxsize=4096)
def sentences(text: str) -> tuple[Sentence, ...]:
    """Return the sentences of a text; a colon and a semicolon end one as a full stop does."""
    return tuple(_sentences(text))


def _sentences(text: str) -> Iterator[Sentence]:
    # Each bracket is blanked to one word of the same length, so that places stay what they are.
    plain = BRACKET.sub(lambda match: "x" * len(match[0]), text)
    for match in _SENTENCE.finditer(plain):
        lead = len(match[0]) - len(match[0].lstrip())
        start, end = match.start() + lead, match.end()
        if text[start:end].strip():
            yield Sentence(text[start:end].rstrip(), start, _words(match[0]))


def _words(plain: str) -> int:
    """Count what white space parts; a dash that stands by itself is no word."""
    return len(plain.split()) - sum(map(plain.count, _DASHES))
