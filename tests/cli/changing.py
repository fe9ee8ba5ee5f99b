"""One change to a library on the disk."""

from __future__ import annotations

from pathlib import Path


def change(library: Path, old: str, new: str, file: str = "procedure.yaml") -> None:
    """Replace a text in a file of the library; the text must be there."""
    text = (library / file).read_text(encoding="utf-8")
    assert old in text
    (library / file).write_text(text.replace(old, new), encoding="utf-8")
