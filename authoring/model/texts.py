"""All prose of a procedure, with its place and the part it plays."""

from __future__ import annotations

from collections.abc import Iterator
from functools import lru_cache

from msgspec import Struct

from authoring.model.procedure import Choice, Procedure, Section, Step
from authoring.model.things import Message
from authoring.source.document import Where


class Prose(Struct, frozen=True):
    """One text: where it stands (an object and the key in it), and what it is for.

    `part` is job, condition, intro, step, why, tip, found, say, question, tell, hazard, consequence, avoidance,
    audience, trial, reason or alt.
    """

    text: str
    where: Where
    keys: tuple[str | int, ...]
    part: str


@lru_cache(maxsize=64)
def prose_of(procedure: Procedure) -> tuple[Prose, ...]:
    """Return every text an author wrote in a procedure, in order; several rules ask for it one after another."""
    return tuple(_prose_of(procedure))


def _prose_of(procedure: Procedure) -> Iterator[Prose]:
    at = procedure.where
    yield from _some(at, ("job",), "job", procedure.job)
    yield from _some(at, ("audience",), "audience", procedure.audience)
    for place, condition in enumerate(procedure.conditions or ()):
        yield Prose(condition, at, ("conditions", place), "condition")
    for message in procedure.safety.values():
        yield from prose_of_message(message)
    for choice in procedure.choices.values():
        yield from _of_choice(choice)
    for figure in procedure.figures.values():
        yield from _some(figure.where, ("alt",), "alt", figure.alt)
    for section in procedure.sections:
        yield from _of_section(section)
    if procedure.trial is not None:
        yield Prose(procedure.trial.result, procedure.trial.where, ("result",), "trial")
    for revision in procedure.revisions:
        yield Prose(revision.reason, revision.where, ("reason",), "reason")


def headings_of(procedure: Procedure) -> Iterator[Prose]:
    """Yield the titles of a procedure, its sections and its figures; their part is title."""
    yield Prose(procedure.title, procedure.where, ("title",), "title")
    for figure in procedure.figures.values():
        yield Prose(figure.title, figure.where, ("title",), "title")
    for section in procedure.sections:
        yield Prose(section.title, section.where, ("title",), "title")


def prose_of_message(message: Message) -> Iterator[Prose]:
    """Yield the texts of one safety message."""
    yield from _some(message.where, ("hazard",), "hazard", message.hazard)
    yield from _some(message.where, ("consequence",), "consequence", message.consequence)
    yield from _some(message.where, ("avoidance",), "avoidance", message.avoidance)


def _of_choice(choice: Choice) -> Iterator[Prose]:
    yield Prose(choice.question, choice.where, ("question",), "question")
    for part in choice.parts:
        yield Prose(part.tell, part.where, ("tell",), "tell")


def _of_section(section: Section) -> Iterator[Prose]:
    yield from _some(section.where, ("intro",), "intro", section.intro)
    for step in section.steps:
        yield from prose_of_step(step)


def prose_of_step(step: Step) -> Iterator[Prose]:
    """Yield the texts of one step; an instruction made from its actions is not the author's and left out."""
    if step.written:
        yield Prose(step.text, step.where, ("step",), "step")
    for action in step.actions:
        for outcome in action.outcomes:
            yield Prose(outcome.found, outcome.where, ("found",), "found")
            yield from _some(outcome.where, ("say",), "say", outcome.say)
    yield from _some(step.where, ("why",), "why", step.why)
    yield from _some(step.where, ("tip",), "tip", step.tip)


def _some(where: Where, keys: tuple[str | int, ...], part: str, text: str | None) -> Iterator[Prose]:
    if text is not None:
        yield Prose(text, where, keys, part)
