"""A step and its parts as plain text."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.markup import said
from authoring.booklet.step_parts import (
    Aside,
    Caution,
    Checkpoint,
    Choice,
    Drawing,
    Figure,
    Noticed,
    Outcome,
    Step,
    StepPart,
    TorqueCallout,
)
from authoring.booklet.words import Bullets, Paragraph, Passage


def caution_text(caution: Caution) -> Iterator[str]:
    """Yield the lines of a safety message."""
    yield f"  [{caution.word}, {caution.harm}, {caution.sign}] {_only(caution.applies)}{said(caution.hazard)}"
    yield f"    {said(caution.consequence)} {said(caution.avoidance)}"


def step_text(step: Step) -> Iterator[str]:
    """Yield the lines of a step."""
    yield ""
    for aside in step.before:
        yield from part_text(aside)
    for caution in step.cautions:
        yield from caution_text(caution)
    yield f"{step.number:>4}  {_only(step.applies)}{said(step.text)}"
    for part in step.parts:
        yield from part_text(part)


def part_text(part: StepPart) -> Iterator[str]:
    """Yield the lines of a part of a step."""
    match part:
        case TorqueCallout():
            yield from _torque(part)
        case Checkpoint():
            yield from _checkpoint(part)
        case Noticed():
            yield "      if you notice:"
            yield from _outcomes(part.outcomes)
        case Choice():
            yield from _choice(part)
        case Figure():
            shows = f", {part.shows}" if part.shows else ""
            yield f"      figure {part.number}: {part.title}{shows} <{part.alt}>"
            legend = "" if part.legend else " (no legend)"
            yield from (
                f"        {one.number} {one.label}{legend} at {one.across:g}, {one.down:g}" for one in part.callouts
            )
        case Drawing():
            yield f"      drawing: {part.title} <{part.alt}>"
            yield from (f"        {said(note)}" for note in part.notes)
        case Aside():
            rounds = " [ ]" * part.rounds
            yield f"      {part.label}: {' '.join(line.strip() for line in passage_text(part.passage))}{rounds}"
        case Bullets():
            yield from passage_text((part,))


def _torque(callout: TorqueCallout) -> Iterator[str]:
    group = f"{callout.count} x {callout.fasteners}, {callout.thread}"
    yield f"      torque: {_only(callout.applies)}{group} <{callout.source}>"
    for row in callout.rows:
        yield f"        {row.low} / {row.nominal} / {row.high} {row.unit}"
    yield from [f"        {callout.note}"] if callout.note else []
    yield from (f"        {label}: {said(text)}" for label, text in (*callout.lines, *callout.derived))


def _checkpoint(check: Checkpoint) -> Iterator[str]:
    hold = "HOLD POINT " if check.hold else ""
    blank = "".join(f" [{said(entry)}]" for entry in check.entries)
    yield f"      {hold}{check.way}: {said(check.what)} {said(check.window)}{blank}"
    yield from (f"        {said(note)}" for note in check.notes)
    yield from _outcomes(check.outcomes)
    yield from [f"        {said(check.signed)}"] if check.signed else []


def _outcomes(outcomes: tuple[Outcome, ...]) -> Iterator[str]:
    for one in outcomes:
        follows = f"{said(one.follows)} {said(one.more)}".rstrip()
        yield f"        {'+' if one.good else '-'} {_only(one.applies)}{said(one.found)} -> {follows}"


def _choice(choice: Choice) -> Iterator[str]:
    yield f"      which {choice.name}: {said(choice.question)}"
    for row in choice.rows:
        box = "[ ] " if row.tick else ""
        yield f"        {box}{row.part} {row.number}: {said(row.decides)}: {said(row.tell)}"
    yield from (f"        {said(note)}" for note in choice.notes)


def passage_text(passage: Passage) -> Iterator[str]:
    """Yield the lines of paragraphs and lists."""
    for block in passage:
        if isinstance(block, Paragraph):
            yield f"  {said(block.text)}"
        else:
            yield from (f"  * {said(entry)}" for entry in block.entries)


def _only(applies: str) -> str:
    return f"({applies}) " if applies else ""
