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


def one_slip(word: str, known: Iterable[str]) -> str:
    """Return `Did you mean "x"?` for the name that a slip of the hand turns into `word`, or an empty text.

    A slip is a letter too many, missing, wrong or swapped with the next one, a hyphen left out, or words that have
    changed places; a name that merely begins alike is another thing.
    """
    name = next((one for one in known if _slipped(word, one)), None)
    return f'Did you mean "{name}"?' if name is not None else ""


def _slipped(word: str, name: str) -> bool:
    if abs(len(word) - len(name)) > 1:
        return False
    return _apart_by_one(word, name) or sorted(word.split("-")) == sorted(name.split("-"))


def _apart_by_one(word: str, name: str) -> bool:
    shorter = min(len(word), len(name))
    start = next((at for at in range(shorter) if word[at] != name[at]), shorter)
    mine, other = word[start:], name[start:]
    swapped = mine[:2] == other[1::-1] and mine[2:] == other[2:]
    return swapped or mine[1:] == other[1:] or mine[1:] == other or mine == other[1:]
