"""The nearest known name to a mistyped one, for a cure that can be pasted."""

from __future__ import annotations

from collections.abc import Iterable


def nearest(word: str, known: Iterable[str]) -> str | None:
    """Return the known name closest to `word`, or None when nothing is close enough to help."""
    import difflib  # noqa: PLC0415  # 3 ms that a library without a misspelling need not pay

    found = difflib.get_close_matches(word[:80], list(known), n=1, cutoff=0.6)
    return found[0] if found else None


def did_you_mean(word: str, known: Iterable[str]) -> str:
    """Return `Did you mean "x"?`, or an empty text when no name is near."""
    name = nearest(word, known)
    return f'Did you mean "{name}"?' if name else ""
