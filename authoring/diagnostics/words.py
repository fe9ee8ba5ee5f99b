"""Small turns of phrase that messages and booklets share."""

from __future__ import annotations

from collections.abc import Sequence


def joined(words: Sequence[str], last: str = "and") -> str:
    """Return "a", "a and b" or "a, b and c"; nothing for no words."""
    return f" {last} ".join(filter(None, (", ".join(words[:-1]), *words[-1:])))


def quoted(word: str) -> str:
    """Return a word in the quotation marks that every message uses."""
    return f'"{word}"'
