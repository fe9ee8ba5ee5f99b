"""A procedure as it was written: sections, steps, actions, and what belongs to them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from authoring.model.action_kind import ActionKind
from authoring.model.things import Message, Specification, Value, When
from authoring.quantities.quantity import Quantity
from authoring.source.document import Where


class Outcome(Struct, frozen=True, eq=False):
    """One thing a checkpoint may show; `then` is go-on, put-right, do, go-to, stop or ask-customer."""

    found: str
    then: str
    to: str | None
    say: str | None
    where: Where


class Action(Struct, frozen=True, eq=False):
    """What a step does: its kind, the names of what it is done to, and the names in its other roles.

    `outcomes`, `hold` and `way` speak of a checkpoint; `way` is "" for any other action.
    """

    kind: ActionKind
    what: tuple[str, ...]
    roles: Mapping[str, str]
    count: int
    way: str
    outcomes: tuple[Outcome, ...]
    hold: bool
    where: Where

    def names(self) -> Iterator[tuple[str, str]]:
        """Yield (role, name) for everything the action names; the role of the first is "what"."""
        for name in self.what:
            yield "what", name
        yield from self.roles.items()


class Step(Struct, frozen=True, eq=False):
    """One instruction. `text` is the author's, or made from the actions where `written` is False."""

    id: str
    text: str
    written: bool
    when: When
    actions: tuple[Action, ...]
    uses: tuple[str, ...]
    safety: tuple[str, ...]
    figures: tuple[str, ...]
    why: str | None
    tip: str | None
    where: Where


class Section(Struct, frozen=True, eq=False):
    """A run of steps under a heading."""

    id: str
    title: str
    phase: str | None
    when: When
    intro: str | None
    safety: tuple[str, ...]
    steps: tuple[Step, ...]
    where: Where


class ChoicePart(Struct, frozen=True, eq=False):
    """One part that may be the right one: for which fitments, or at which measured size."""

    part: str
    when: When
    stated: Specification | None
    tell: str
    where: Where

    @property
    def size(self) -> Quantity | None:
        """The measured size that tells this part, without its source."""
        return self.stated.value if self.stated is not None else None


class Choice(Struct, frozen=True, eq=False):
    """Which of several parts is the right one."""

    id: str
    name: str
    question: str
    parts: tuple[ChoicePart, ...]
    where: Where


class Callout(Struct, frozen=True, eq=False):
    """A number on a picture: what it points at, and where in percent of width and height."""

    on: str
    across: float
    down: float
    where: Where


class Figure(Struct, frozen=True, eq=False):
    """A picture in a file of the library."""

    id: str
    file: str
    title: str
    alt: str | None
    callouts: tuple[Callout, ...]
    where: Where


class Trial(Struct, frozen=True, eq=False):
    """The record that somebody did the job from the booklet, on a machine."""

    date: str
    by: str
    machine: str
    result: str
    where: Where


class Revision(Struct, frozen=True, eq=False):
    """One revision: letter, date (ISO 8601), who wrote it, who approved it, and why it was made."""

    letter: str
    date: str
    author: str
    approver: str
    reason: str
    where: Where


class Procedure(Struct, frozen=True, eq=False):
    """One job.

    `conditions` and `hazards` are None when the author said nothing, and empty when the author said none.
    """

    number: str
    title: str
    equipment: str
    covers: When
    job: str | None
    audience: str | None
    persons: int | None
    time: Quantity | None
    conditions: tuple[str, ...] | None
    hazards: tuple[str, ...] | None
    values: Mapping[str, Value]
    safety: Mapping[str, Message]
    choices: Mapping[str, Choice]
    figures: Mapping[str, Figure]
    sections: tuple[Section, ...]
    trial: Trial | None
    revisions: tuple[Revision, ...]
    where: Where

    def steps(self) -> Iterator[tuple[Section, Step]]:
        """Yield every step with its section, in order."""
        for section in self.sections:
            for step in section.steps:
                yield section, step

    @property
    def revision(self) -> Revision:
        """The newest revision."""
        return self.revisions[0]
