"""A procedure as it was written: sections, steps, actions, and what belongs to them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from types import MappingProxyType

from msgspec import Struct

from authoring.model.action_kind import ActionKind
from authoring.model.changes import Condition, Glance, Modification, Option
from authoring.model.demands import Deadline, Holding, Method, Need, Repeat
from authoring.model.effects import Effect
from authoring.model.figure import Figure
from authoring.model.manner import PLAIN, Manner
from authoring.model.specification import ALWAYS, Specification, When
from authoring.model.things import Message, Value
from authoring.quantities.quantity import Quantity
from authoring.source.document import Where

_NOTHING: Mapping[str, str] = MappingProxyType({})


class Outcome(Struct, frozen=True, eq=False):
    """One thing a checkpoint may show, or somebody may notice unasked.

    `then` is go-on, put-right, do, do-after, go-to, stop, ask-customer or next-time.
    `at_most` bounds what leads back, and `otherwise` says what follows then; `like` is a number on the picture.
    """

    found: str
    then: str
    to: str | None
    say: str | None
    where: Where
    at_most: int | None = None
    otherwise: str | None = None
    like: int | None = None
    bears_on: tuple[str, ...] = ()
    when: When = ALWAYS


class Action(Struct, frozen=True, eq=False):
    """What a step does: its kind, the names of what it is done to, and the names in its other roles.

    `outcomes`, `hold`, `way` and `critical_when` speak of a checkpoint; `way` is "" for any other action.
    `details` are the kind's own further words, such as a position; `manner` is what any action may say.
    """

    kind: ActionKind
    what: tuple[str, ...]
    roles: Mapping[str, str]
    count: int
    way: str
    outcomes: tuple[Outcome, ...]
    hold: bool
    where: Where
    details: Mapping[str, str] = _NOTHING
    critical_when: When = ALWAYS
    manner: Manner = PLAIN

    def names(self) -> Iterator[tuple[str, str]]:
        """Yield (role, name) for everything the action names; the role of the first is "what"."""
        for name in self.what:
            yield "what", name
        yield from self.roles.items()

    def effects(self, role: str) -> Iterator[Effect]:
        """Yield what the action changes about a thing that it names in a role."""
        yield from (one for one in self.kind.effects if one.of == role and one.unless not in self.roles)


class Step(Struct, frozen=True, eq=False):
    """One instruction. `text` is the author's, or made from the actions where `written` is False.

    `optional` says when the step is worth doing; `near` are items the hands come near to, `leave` things
    that are not touched.
    `method` is set where the step is one of several methods, of which exactly one is done.
    """

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
    method: Method | None = None
    if_done: tuple[str, ...] = ()
    unless_done: tuple[str, ...] = ()
    optional: str | None = None
    needs: tuple[Need, ...] = ()
    leaves: tuple[Need, ...] = ()
    persons: int | None = None
    holding: Holding | None = None
    near: tuple[str, ...] = ()
    leave: tuple[str, ...] = ()
    repeat: Repeat | None = None
    deadline: Deadline | None = None
    noticed: tuple[Outcome, ...] = ()

    @property
    def around(self) -> Where:
        """The place of the step that holds this method; its own place where it is no method."""
        return self.where if self.method is None else Where(self.where.document, self.where.path[:-2])


class Section(Struct, frozen=True, eq=False):
    """A run of steps under a heading.

    `bench` is the sub-assembly worked on at the bench; `free` says that the steps may be done in any order.
    `safe_to_stop` says how the machine is left when the job stops after the section.
    """

    id: str
    title: str
    phase: str | None
    when: When
    intro: str | None
    safety: tuple[str, ...]
    steps: tuple[Step, ...]
    where: Where
    optional: str | None = None
    time: Quantity | None = None
    needs: tuple[Need, ...] = ()
    bench: str | None = None
    free: bool = False
    repeat: Repeat | None = None
    noticed: tuple[Outcome, ...] = ()
    safe_to_stop: str | None = None


class ChoicePart(Struct, frozen=True, eq=False):
    """One part that may be the right one: for which fitments, or at which measured size.

    `sizes` has the size in each dimension by its name; `equal` are parts that do as well.
    """

    part: str
    when: When
    stated: Specification | None
    tell: str
    where: Where
    sizes: Mapping[str, Specification] = {}
    equal: tuple[str, ...] = ()

    @property
    def size(self) -> Quantity | None:
        """The measured size that tells this part, without its source."""
        return self.stated.value if self.stated is not None else None


class Measured(Struct, frozen=True, eq=False):
    """A dimension of the parts of a choice; `decides` is False where it is measured by habit."""

    id: str
    name: str
    decides: bool
    where: Where


class Choice(Struct, frozen=True, eq=False):
    """Which of several parts is the right one; `if_wrong` says what a wrong one does that fits as well."""

    id: str
    name: str
    question: str
    parts: tuple[ChoicePart, ...]
    where: Where
    dimensions: Mapping[str, Measured] = {}
    if_wrong: str | None = None
    no_matter: str | None = None


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
    conditions: tuple[Condition, ...] | None
    hazards: tuple[str, ...] | None
    values: Mapping[str, Value]
    safety: Mapping[str, Message]
    choices: Mapping[str, Choice]
    figures: Mapping[str, Figure]
    sections: tuple[Section, ...]
    trial: Trial | None
    revisions: tuple[Revision, ...]
    where: Where
    needs: tuple[Need, ...] = ()
    leaves: tuple[Need, ...] = ()
    options: Mapping[str, Option] = {}
    modifications: Mapping[str, Modification] = {}
    while_there: tuple[Glance, ...] = ()

    def steps(self) -> Iterator[tuple[Section, Step]]:
        """Yield every step with its section, in order."""
        for section in self.sections:
            for step in section.steps:
                yield section, step

    @property
    def revision(self) -> Revision:
        """The newest revision."""
        return self.revisions[0]
