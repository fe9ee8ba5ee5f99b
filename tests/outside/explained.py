"""What the docstring of a computation says: its question, and its parts under their labels."""

from __future__ import annotations

import ast
import re
from collections.abc import Iterator
from pathlib import Path

from msgspec import Struct

from tests.outside.kept import HERE

WORKSHOP = HERE.parents[1] / "authoring" / "workshop"
LABELS = ("Formula", "Table", "Symbols", "Source", "Assumptions", "Limits")
NO_COMPUTATIONS = frozenset({"__init__", "confirmed", "impossible", "interval"})
"""Files of the workshop that hold what computations are made of, and answer no question of the bench."""

_LABEL = re.compile(rf"^({'|'.join(LABELS)}):(?: (.*))?$")


class Explained(Struct, frozen=True):
    """A computation as its docstring explains it: the name, the question, and the lines of each part by its label."""

    name: str
    question: str
    parts: dict[str, list[str]]

    def text(self, label: str) -> str:
        """Return a part as running text; empty where it is missing."""
        return " ".join(self.parts.get(label, []))


def explained(name: str, docstring: str) -> Explained:
    """Return what a docstring explains; what stands before the first label is the question."""
    parts: dict[str, list[str]] = {}
    question: list[str] = []
    held = question
    for line in docstring.strip().splitlines():
        label = _LABEL.match(line)
        if label is not None:
            held = parts.setdefault(label[1], [])
        text = (label[2] or "") if label is not None else line.strip()
        if text:
            held.append(text)
    return Explained(name, " ".join(question), parts)


def computations() -> Iterator[Explained]:
    """Yield each computation of the workshop, in the order of the names."""
    for path in sorted(WORKSHOP.glob("*.py")):
        if path.stem not in NO_COMPUTATIONS:
            yield explained(path.stem, _docstring(path))


def _docstring(path: Path) -> str:
    return ast.get_docstring(ast.parse(path.read_text(encoding="utf-8"))) or ""
