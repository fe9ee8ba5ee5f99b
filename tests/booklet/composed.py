"""A chapter of a booklet whose library is the sound base with a few keys replaced, and its tables as plain text."""

from __future__ import annotations

from collections.abc import Mapping

from authoring.booklet.blocks import Booklet, Chapter, Table
from authoring.booklet.markup import said
from authoring.booklet.words import Text
from authoring.pipeline import check, compose
from tests.rules.overlay import overlay

READING = frozenset({"unknown-key", "missing-key", "wrong-type", "wrong-value", "bad-quantity", "unknown-name"})


def booklet(selection: Mapping[str, str], **files: str) -> Booklet:
    """Compose FL-110; what keeps a library from being printed is a fault of the test."""
    checked = check(overlay(list(files.items())).files, [])
    assert [one for one in checked.findings if one.rule in READING] == []
    return compose(checked, "FL-110", selection)


def chapter_of(anchor: str, selection: Mapping[str, str], **files: str) -> Chapter:
    """Return a chapter of that booklet by its anchor."""
    return next(one for one in booklet(selection, **files).chapters if one.id == anchor)


def table(chapter: Chapter, anchor: str) -> list[tuple[str, ...]]:
    """Return the rows of a table as plain text; none where the chapter lacks it."""
    return [
        tuple(plainly(cell.text) for cell in row)
        for block in chapter.blocks
        if isinstance(block, Table) and block.id == anchor
        for row in block.rows
    ]


def plainly(text: Text) -> str:
    """Return running text with plain spaces."""
    return said(text).replace("\u00a0", " ")
