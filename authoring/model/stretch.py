"""The place of some characters of a text."""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Span
from authoring.model.texts import Prose


def stretch(prose: Prose, start: int, end: int) -> Span:
    """Return the place of the characters from `start` to `end` of a text, which may be folded in the source."""
    words = prose.text[start:end]
    return prose.where.find(words, *prose.keys, nth=prose.text[:start].count(words))
