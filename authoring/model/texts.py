"""All prose of a procedure, with its place and the part it plays."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from functools import lru_cache

from msgspec import Struct

from authoring.model.demands import Repeat
from authoring.model.manner import PLAIN, Manner
from authoring.model.procedure import Choice, Outcome, Procedure, Section, Step
from authoring.model.things import Message
from authoring.source.document import Where


class Prose(Struct, frozen=True):
    """One text: where it stands (an object and the key in it), and what it is for.

    `part` is job, condition, intro, step, why, tip, found, say, else, question, tell, hazard, consequence, avoidance,
    audience, trial, reason, alt, manner, until, optional, safe-to-stop, change or look.
    """

    text: str
    where: Where
    keys: tuple[str | int, ...]
    part: str

    @property
    def has_names(self) -> bool:
        """Whether names in brackets are read in it; what is told of a picture is printed as it stands."""
        return self.part != "alt"

    @property
    def is_advice(self) -> bool:
        """Whether a reader takes it for advice: a tip, a reason, or how a thing is done."""
        return self.part in {"tip", "why"} or self.keys[0] == "how"


@lru_cache(maxsize=64)
def prose_of(procedure: Procedure) -> tuple[Prose, ...]:
    """Return every text an author wrote in a procedure, in order; several rules ask for it one after another."""
    return tuple(_prose_of(procedure))


def _prose_of(procedure: Procedure) -> Iterator[Prose]:
    at = procedure.where
    yield from _some(at, ("job",), "job", procedure.job)
    yield from _some(at, ("audience",), "audience", procedure.audience)
    for condition in procedure.conditions or ():
        yield Prose(condition.so, condition.where, condition.keys, "condition")
        yield from _some(condition.where, ("afterwards",), "condition", condition.afterwards)
    for message in procedure.safety.values():
        yield from prose_of_message(message)
    yield from _of_changes(procedure)
    for choice in procedure.choices.values():
        yield from _of_choice(choice)
    for figure in procedure.figures.values():
        yield from _some(figure.where, ("alt",), "alt", figure.alt)
    for section in procedure.sections:
        yield from _of_section(section)
    for glance in procedure.while_there:
        yield Prose(glance.look, glance.where, ("look",), "look")
        yield from _some(glance.where, ("only-if",), "look", glance.only_if)
    if procedure.trial is not None:
        yield Prose(procedure.trial.result, procedure.trial.where, ("result",), "trial")
    for revision in procedure.revisions:
        yield Prose(revision.reason, revision.where, ("reason",), "reason")


def _of_changes(procedure: Procedure) -> Iterator[Prose]:
    for option in procedure.options.values():
        yield Prose(option.question, option.where, ("question",), "question")
        yield from _some(option.where, ("why",), "why", option.why)
    for change in procedure.modifications.values():
        yield Prose(change.as_found, change.where, ("as-found",), "change")
        yield Prose(change.as_left, change.where, ("as-left",), "change")
        yield from _some(change.where, ("why",), "why", change.why)


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
    yield from _some(choice.where, ("if-wrong",), "tell", choice.if_wrong)
    yield from _some(choice.where, ("no-matter",), "tell", choice.no_matter)
    for part in choice.parts:
        yield Prose(part.tell, part.where, ("tell",), "tell")


def _of_section(section: Section) -> Iterator[Prose]:
    yield from _some(section.where, ("optional",), "optional", section.optional)
    yield from _some(section.where, ("intro",), "intro", section.intro)
    yield from _of_repeat(section.repeat)
    for step in section.steps:
        yield from prose_of_step(step)
    yield from _of_outcomes(section.noticed)
    yield from _some(section.where, ("safe-to-stop",), "safe-to-stop", section.safe_to_stop)


def prose_of_step(step: Step) -> Iterator[Prose]:
    """Yield the texts of one step; an instruction made from its actions is not the author's and left out."""
    if step.written:
        yield Prose(step.text, step.where, ("step",), "step")
    yield from _some(step.where, ("optional",), "optional", step.optional)
    if step.holding is not None:
        yield from _some(step.holding.where, ("how",), "manner", step.holding.how)
    for action in step.actions:
        if action.manner is not PLAIN:
            yield from _of_manner(action.manner, action.where)
        yield from _of_outcomes(action.outcomes)
    yield from _of_repeat(step.repeat)
    if step.deadline is not None:
        yield Prose(step.deadline.otherwise, step.deadline.where, ("else",), "else")
    yield from _of_outcomes(step.noticed)
    if step.method is None or step.method.is_first:
        yield from _some(step.around, ("why",), "why", step.method.why if step.method is not None else None)
    yield from _some(step.where, ("why",), "why", step.why)
    yield from _some(step.where, ("tip",), "tip", step.tip)


def _of_outcomes(outcomes: Iterable[Outcome]) -> Iterator[Prose]:
    for outcome in outcomes:
        yield Prose(outcome.found, outcome.where, ("found",), "found")
        yield from _some(outcome.where, ("say",), "say", outcome.say)
        yield from _some(outcome.where, ("else",), "else", outcome.otherwise)


def _of_repeat(repeat: Repeat | None) -> Iterator[Prose]:
    if repeat is not None:
        yield from _some(repeat.where, ("until",), "until", repeat.until)
        yield from _some(repeat.where, ("else",), "else", repeat.otherwise)


def _of_manner(manner: Manner, at: Where) -> Iterator[Prose]:
    for place, how in enumerate(manner.how):
        yield Prose(how, at, ("how", place), "manner")
    yield from _some(at, ("because",), "why", manner.because)
    for way, told in manner.confirmed.items():
        yield Prose(told, at, ("confirmed", way), "manner")
    turned = manner.orientation
    if turned is not None:
        yield from _some(turned.where, ("first",), "manner", turned.first)
        yield from _some(turned.where, ("mark",), "manner", turned.mark)
        yield from _some(turned.where, ("seen-from",), "manner", turned.seen_from)
    for one in manner.engages:
        yield Prose(one.part, one.where, ("part",), "manner")
        yield from _some(one.where, ("at",), "manner", one.at)


def _some(where: Where, keys: tuple[str | int, ...], part: str, text: str | None) -> Iterator[Prose]:
    if text is not None:
        yield Prose(text, where, keys, part)
