"""The small library of rare sayings, composed after changes, and its tables as text."""

from __future__ import annotations

from authoring.booklet.blocks import Booklet, Chapter, Table
from authoring.booklet.markup import said
from authoring.booklet.words import Text
from authoring.cli.disk import read_library
from authoring.pipeline import check, compose
from tests.booklet.goldens import TREE

RARE = TREE / "tests" / "booklet" / "rare"


def booklet(selection: dict[str, str] | None = None, **changes: tuple[str, str]) -> Booklet:
    """Compose FL-310 after changes: for a file's stem (with _ for -), the text that is replaced and the new one."""
    files, unread = read_library(str(RARE))
    for stem, (old, new) in changes.items():
        name = f"{stem.replace('_', '-')}.yaml"
        text = files[name].decode()
        assert old in text, old
        files[name] = text.replace(old, new).encode()
    return compose(check(files, unread), "FL-310", selection or {})


def chapter(one: Booklet, anchor: str) -> Chapter:
    """Return a chapter by its anchor."""
    return next(chapter for chapter in one.chapters if chapter.id == anchor)


def rows(one: Booklet, anchor: str, table: str) -> dict[str, tuple[str, ...]]:
    """Return the rows of a table as text, by the text of the first cell."""
    block = next(block for block in chapter(one, anchor).blocks if getattr(block, "id", "") == table)
    assert isinstance(block, Table)
    found = [tuple(plainly(cell.text) for cell in row) for row in block.rows]
    return {row[0]: row[1:] for row in found}


def plainly(text: Text) -> str:
    """Return running text with plain spaces."""
    return said(text).replace("\u00a0", " ")


def anchors(one: Booklet) -> list[str]:
    """Return the anchors of a booklet's chapters."""
    return [chapter.id for chapter in one.chapters]
