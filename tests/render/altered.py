"""A booklet with every word that an author may write changed, its names and addresses left alone."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any, TypeVar

from msgspec import Struct, structs

Thing = TypeVar("Thing")

# What the composer derives or checks: a changed one would be another booklet, not other words.
KEPT = frozenset({"id", "target", "asset", "assets", "sign", "address", "date", "harm", "stress", "clock"})


def altered(thing: Thing, change: Callable[[str], str]) -> Thing:
    """Return `thing` with `change` done to each text inside that is not empty."""
    changed: Any = thing
    if isinstance(thing, str):
        changed = change(thing) if thing else thing
    elif isinstance(thing, tuple):
        changed = tuple(altered(one, change) for one in thing)
    elif isinstance(thing, Struct):
        parts: dict[str, Any] = {
            field.name: altered(getattr(thing, field.name), change)
            for field in structs.fields(thing)
            if field.name not in KEPT
        }
        changed = structs.replace(thing, **parts)
    return changed  # type: ignore[no-any-return]  # the kind of each thing is kept, which no type can say


def texts(thing: object) -> list[str]:
    """Return every text of a booklet that `altered` would change, in order."""
    found: list[str] = []

    def keep(text: str) -> str:
        found.append(text)
        return text

    altered(thing, keep)
    return found
