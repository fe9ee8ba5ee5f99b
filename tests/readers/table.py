"""The table of the language's elements and their readers, measured on the demo library."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from tests.readers.deletions import Deletion, deletions
from tests.readers.judged import judged

FILE = Path(__file__).parent.parent.parent / "schema" / "READERS.md"

HEAD = """# Who reads what

<!-- Written by `./run readers` from the demo library; change the language, not this text. -->

Each row is one element of the language: a key, where it stands, and what changes when an author leaves it out.
A rule tells of it, or the booklet differs; an element that nothing reads would be a promise not kept.
`*` stands for a name of the author's own, and what stands in many places has a name of its own: `outcome`, `step`,
`action.*` for what any action may carry, `values`, `safety`, `when`.

| element | rules | booklet |
| --- | --- | --- |
"""

_TRIED = 2
"""Of the places of an element so many are tried for the table; that every single one is missed is a test of its own."""


def table() -> str:
    """Return the whole file."""
    return HEAD + "".join(f"{row}\n" for row in rows(0, 1))


def rows(part: int, parts: int) -> Iterator[str]:
    """Yield the rows of one of several parts of the table: every so-manieth row, beginning with row `part`."""
    library = judged("procedures")
    found: dict[str, list[Deletion]] = {}
    for deletion in deletions(library.documents):
        found.setdefault(deletion.element, []).append(deletion)
    for element in sorted(found)[part::parts]:
        places = found[element]
        effects = {effect for place in places[:_TRIED] for effect in library.effects(place)}
        # What only says again what is so anyway is missed when it says something else.
        effects = effects or set(library.effects_of_another(places[0]))
        rules = ", ".join(f"`{effect}`" for effect in sorted(effects - {"booklet"}))
        yield f"| `{element}` | {rules} | {'yes' if 'booklet' in effects else ''} |"


if __name__ == "__main__":
    FILE.write_text(table(), encoding="utf-8")
