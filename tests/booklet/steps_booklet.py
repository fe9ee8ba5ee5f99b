"""The small library that says at steps all there is to say, composed after changes, and its steps as text."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.blocks import Booklet
from authoring.booklet.markup import said
from authoring.booklet.step_parts import Aside, Step, StepPart
from authoring.booklet.words import Paragraph
from authoring.cli.disk import read_library
from authoring.pipeline import check, compose
from tests.booklet.goldens import TREE, checked

FOLDER = "tests/booklet/steps"
GEAR = {"drive": "gear"}


def booklet(selection: Mapping[str, str], *changes: tuple[str, str]) -> Booklet:
    """Return the booklet for a selection, of the library with some words of its procedure replaced."""
    if not changes:
        return compose(checked(FOLDER), "FL-320", selection)
    files, unread = read_library(str(TREE / FOLDER))
    text = files["FL-320.yaml"].decode()
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return compose(check(files | {"FL-320.yaml": text.encode()}, unread), "FL-320", selection)


def step(words: str, book: Booklet) -> Step:
    """Return the step whose instruction begins with these words."""
    return next(one for one in steps(book) if said(one.text).startswith(words))


def steps(book: Booklet) -> Iterator[Step]:
    """Yield the steps of a booklet."""
    return (block for chapter in book.chapters for block in chapter.blocks if isinstance(block, Step))


def told(label: str, parts: tuple[StepPart, ...]) -> list[str]:
    """Return what stands under a label, as plain characters."""
    found = []
    for part in parts:
        if isinstance(part, Aside) and part.label == label:
            texts = [[one.text] if isinstance(one, Paragraph) else one.entries for one in part.passage]
            found.append(" ".join(said(text).strip() for some in texts for text in some).replace("\u00a0", " "))
    return found
