"""The one bracket form: `[level-plug]` in a text names a thing; its kind follows from the name."""

from __future__ import annotations

import re
from functools import lru_cache

from msgspec import Struct

# A bracket before a parenthesis is a link; a backslash before a bracket makes it a plain character.
BRACKET = re.compile(r"(?<!\\)\[([^\[\]\n]{1,80})\](?!\()")


class Bracket(Struct, frozen=True):
    """One reference in a text: the name, and how many times the same bracket stood before it."""

    name: str
    nth: int

    @property
    def typed(self) -> str:
        """The bracket as it was typed."""
        return f"[{self.name}]"


@lru_cache(maxsize=4096)
def brackets(text: str) -> tuple[Bracket, ...]:
    """Return the references of a text in reading order."""
    seen: dict[str, int] = {}
    found = []
    for match in BRACKET.finditer(text):
        name = match[1]
        found.append(Bracket(name, seen.get(name, 0)))
        seen[name] = seen.get(name, 0) + 1
    return tuple(found)


def words_only(text: str) -> str:
    """Return the text with its brackets and the marks of stress blanked out, each by as many spaces."""
    bare = BRACKET.sub(lambda match: " " * len(match[0]), text)
    return bare.replace("*", " ").replace("_", " ")
