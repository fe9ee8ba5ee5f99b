"""A booklet as plain text, block by block: what the golden files hold and people can read."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.blocks import (
    Banner,
    Block,
    Booklet,
    Chapter,
    End,
    Facts,
    FirstSteps,
    Form,
    Methods,
    Rest,
    SignalWords,
    Table,
)
from authoring.booklet.markup import said
from authoring.booklet.step_parts import Caution, Step, StepPart
from authoring.booklet.words import Bullets, Paragraph
from tests.booklet.step_text import caution_text, part_text, passage_text, step_text


def plain_text(booklet: Booklet) -> str:
    """Return the whole booklet as lines of text."""
    return "\n".join(line.rstrip() for line in _booklet(booklet)) + "\n"


def _booklet(booklet: Booklet) -> Iterator[str]:
    yield f"{booklet.shop} | {booklet.number} | revision {booklet.revision}, {booklet.date} | {booklet.trial}"
    yield f"{booklet.title} | {booklet.equipment} | {booklet.fitment}"
    cover = booklet.cover
    yield from passage_text(cover.job)
    yield from _block(cover.facts)
    yield from _block(cover.fitments)
    if cover.options is not None:
        yield from _block(cover.options)
    if cover.banner is not None:
        yield from _block(cover.banner)
    yield from passage_text(cover.deference)
    for chapter in booklet.chapters:
        yield from _chapter(chapter)


def _chapter(chapter: Chapter) -> Iterator[str]:
    applies = f" ({chapter.applies})" if chapter.applies else ""
    number = f"{chapter.number}: " if chapter.number else ""
    yield ""
    phase = f" <{chapter.phase}>" if chapter.phase else ""
    time = f" <{said(chapter.time)}>" if chapter.time else ""
    yield f"{'=' * chapter.level} {number}{chapter.title}{phase}{time}{applies}"
    for block in chapter.blocks:
        yield from _block(block)


def _block(block: Block | StepPart) -> Iterator[str]:
    match block:
        case Step():
            yield from step_text(block)
        case Caution():
            yield from caution_text(block)
        case Table():
            yield from _table(block)
        case Form():
            yield from _form(block)
        case Paragraph() | Bullets():
            yield from passage_text((block,))
        case Facts() | FirstSteps() | SignalWords():
            yield from _list(block)
        case Banner() | Methods() | Rest() | End():
            yield from _line(block)
        case _:
            yield from part_text(block)


def _list(block: Facts | FirstSteps | SignalWords) -> Iterator[str]:
    match block:
        case Facts(rows=rows):
            yield from (f"  {label}: {said(text)}" for label, text in rows)
        case FirstSteps(rows=cases):
            yield from (f"  {label}: {' / '.join(said(move) for move in moves)}" for label, moves in cases)
        case SignalWords(rows=words):
            yield from (f"  {word} ({harm}): {meaning}" for word, harm, meaning in words)


def _line(block: Banner | Methods | Rest | End) -> Iterator[str]:
    match block:
        case Banner():
            yield f"  *** {block.title} ***"
            yield from passage_text(block.passage)
        case Methods():
            yield ""
            yield f"  One of {', '.join(block.numbers)}:"
            yield from passage_text(block.why)
        case Rest():
            yield ""
            yield f"  Safe to stop here. {said(block.left)}"
        case End():
            yield f"  --- {block.text} ---"


def _table(table: Table) -> Iterator[str]:
    yield f"  {table.title}"
    if not table.rows:
        yield f"    {table.empty}"
        return
    yield f"    {' | '.join(table.heads)}"
    for row in table.rows:
        yield f"    {' | '.join('[ ]' if cell.tick else said(cell.text) for cell in row)}"
    yield from [f"    {table.note}"] if table.note else []


def _form(form: Form) -> Iterator[str]:
    yield f"  {'- - - ' if form.cut else ''}{form.title}"
    yield from [f"    {form.note}"] if form.note else []
    for row in form.rows:
        yield f"    {row.label}: {said(row.printed)}{'____ ' * row.lines}"
