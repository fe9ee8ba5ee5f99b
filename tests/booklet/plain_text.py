"""A booklet as plain text, block by block: what the golden files hold and people can read."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.blocks import Banner, Block, Booklet, Chapter, End, Facts, FirstSteps, Form, SignalWords, Table
from authoring.booklet.markup import said
from authoring.booklet.step_parts import Aside, Caution, Checkpoint, Choice, Figure, Step, StepPart, TorqueCallout
from authoring.booklet.words import Bullets, Paragraph, Passage, Text


def plain_text(booklet: Booklet) -> str:
    """Return the whole booklet as lines of text."""
    return "\n".join(line.rstrip() for line in _booklet(booklet)) + "\n"


def _booklet(booklet: Booklet) -> Iterator[str]:
    yield f"{booklet.shop} | {booklet.number} | revision {booklet.revision}, {booklet.date} | {booklet.trial}"
    yield f"{booklet.title} | {booklet.equipment} | {booklet.fitment}"
    cover = booklet.cover
    yield from _passage(cover.job)
    yield from _block(cover.facts)
    yield from _block(cover.fitments)
    for option in cover.options:
        yield from _block(option)
    if cover.banner is not None:
        yield from _block(cover.banner)
    yield from _passage(cover.deference)
    for chapter in booklet.chapters:
        yield from _chapter(chapter)


def _chapter(chapter: Chapter) -> Iterator[str]:
    applies = f" ({chapter.applies})" if chapter.applies else ""
    number = f"{chapter.number}: " if chapter.number else ""
    yield ""
    phase = f" <{chapter.phase}>" if chapter.phase else ""
    yield f"{'=' * chapter.level} {number}{chapter.title}{phase}{applies}"
    for block in chapter.blocks:
        yield from _block(block)


def _block(block: Block | StepPart) -> Iterator[str]:
    match block:
        case Step():
            yield from _step(block)
        case Table():
            yield from _table(block)
        case Caution():
            yield f"  [{block.word}, {block.harm}, {block.sign}] {_said(block.applies)}{said(block.hazard)}"
            yield f"    {said(block.consequence)} {said(block.avoidance)}"
        case Facts(rows=rows):
            yield from (f"  {label}: {said(text)}" for label, text in rows)
        case FirstSteps(rows=rows):
            yield from (f"  {label}: {' / '.join(said(move) for move in moves)}" for label, moves in rows)
        case Form():
            yield from _form(block)
        case Banner():
            yield f"  *** {block.title} ***"
            yield from _passage(block.passage)
        case SignalWords(rows=rows):
            yield from (f"  {word} ({harm}): {meaning}" for word, harm, meaning in rows)
        case End():
            yield f"  --- {block.text} ---"
        case Paragraph() | Bullets():
            yield from _passage((block,))
        case _:
            yield from _part(block)


def _step(step: Step) -> Iterator[str]:
    yield ""
    for caution in step.cautions:
        yield from _block(caution)
    yield f"{step.number:>4}  {_said(step.applies)}{said(step.text)}"
    for part in step.parts:
        yield from _part(part)


def _part(part: StepPart) -> Iterator[str]:
    match part:
        case TorqueCallout():
            yield f"      torque: {_said(part.applies)}{part.count} x {part.fasteners}, {part.thread} <{part.source}>"
            for row in part.rows:
                yield f"        {row.low} / {row.nominal} / {row.high} {row.unit}"
            yield from [f"        {part.note}"] if part.note else []
        case Checkpoint():
            hold = "HOLD POINT " if part.hold else ""
            blank = f" [____ {part.entry.unit}]" if part.entry is not None else ""
            yield f"      {hold}{part.way}: {said(part.what)} {said(part.window)}{blank}"
            for one in part.outcomes:
                yield f"        {'+' if one.good else '-'} {said(one.found)} -> {said(one.follows)}"
        case Choice():
            yield f"      which {part.name}: {said(part.question)}"
            for one_row in part.rows:
                yield f"        {one_row.part} {one_row.number}: {said(one_row.decides)}: {said(one_row.tell)}"
        case Figure():
            yield f"      figure {part.number}: {part.title} <{part.alt}>"
            yield from (f"        {one.number} {one.label} at {one.across:g}, {one.down:g}" for one in part.callouts)
        case Aside():
            yield f"      {part.label}: {' '.join(line.strip() for line in _passage(part.passage))}"
        case Bullets():
            yield from _passage((part,))


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


def _passage(passage: Passage) -> Iterator[str]:
    for block in passage:
        if isinstance(block, Paragraph):
            yield f"  {said(block.text)}"
        else:
            yield from (f"  * {said(entry)}" for entry in block.entries)


def _said(applies: str | Text) -> str:
    return f"({applies}) " if isinstance(applies, str) and applies else ""
