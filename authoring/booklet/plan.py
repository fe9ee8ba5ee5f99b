"""Which procedures, sections and steps one booklet holds, and the number of each."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from functools import cached_property

from msgspec import Struct

from authoring.model.fitments import may_hold, together
from authoring.model.in_force import placed_by_policy
from authoring.model.library import Library, Named, Scope
from authoring.model.numbering import numbers
from authoring.model.procedure import Action, Outcome, Procedure, Section, Step
from authoring.model.specification import When
from authoring.model.things import Message


class Placed(Struct, frozen=True):
    """A step in its place: the number it is printed under and the anchor that leads there."""

    step: Step
    section: Section
    number: str
    anchor: str

    @property
    def shared(self) -> str:
        """The number that all methods of one step have in common."""
        return self.number[:-1] if self.step.method is not None else self.number

    @property
    def when(self) -> When:
        """For which vehicles the step is done: those of its section among its own."""
        return together(self.section.when, self.step.when)


class Volume:
    """One procedure inside a booklet: the main one (letter "") or one that it carries out (A, B ...)."""

    def __init__(self, scope: Scope, letter: str, selection: Mapping[str, str]) -> None:
        self.scope = scope
        self.procedure = scope.procedure
        self.letter = letter
        self.selection = selection

    @property
    def anchor(self) -> str:
        """The anchor of the whole procedure."""
        return f"annex-{self.letter.lower()}" if self.letter else "work"

    @cached_property
    def sections(self) -> tuple[tuple[Section, str, tuple[Placed, ...]], ...]:
        """Each section that has steps for the selection: the section, its anchor, its steps in their places.

        Steps are numbered as in the booklet for all fitments, so that a number means the same step in each of them.
        """
        found = []
        known = numbers(self.procedure)
        for place, section in enumerate(self.procedure.sections, 1):
            steps = []
            for step in section.steps:
                if self.holds(section.when) and self.holds(step.when):
                    number = f"{self.letter}{known[step.id]}"
                    steps.append(Placed(step, section, number, f"step-{number.lower()}"))
            if steps:
                found.append((section, f"section-{self.letter.lower()}{place}", tuple(steps)))
        return tuple(found)

    @cached_property
    def untouched(self) -> Mapping[str, tuple[str, ...]]:
        """The fastener groups that are never loosened, by the item they sit on and the item they sit among."""
        found: dict[str, tuple[str, ...]] = {}
        equipment = self.scope.equipment
        for group in equipment.fasteners.values() if equipment is not None else ():
            if group.untouched is not None and self.holds(group.when):
                for item in dict.fromkeys(filter(None, (group.on, group.among))):
                    found[item] = (*found.get(item, ()), group.id)
        return found

    @cached_property
    def awaited(self) -> Mapping[str, tuple[tuple[Placed, str], ...]]:
        """By the id of a step from which time runs: the steps that must be done in time, and the name of the time."""
        found: dict[str, tuple[tuple[Placed, str], ...]] = {}
        for placed in self.steps():
            deadline = placed.step.deadline
            if deadline is not None:
                found[deadline.start] = (*found.get(deadline.start, ()), (placed, deadline.within))
        return found

    def holds(self, when: When) -> bool:
        """Tell whether something belongs to a booklet for this selection."""
        return may_hold(when, self.selection)

    @property
    def gaps(self) -> bool:
        """Whether some steps of the procedure are left out, so that their numbers are missing."""
        return len(list(self.steps())) < len(list(self.procedure.steps()))

    def steps(self) -> Iterator[Placed]:
        """Yield the steps in order."""
        for _, _, steps in self.sections:
            yield from steps

    def actions(self) -> Iterator[tuple[Placed, Action]]:
        """Yield every action with its step, in order."""
        for placed in self.steps():
            for action in placed.step.actions:
                yield placed, action

    def outcomes(self) -> Iterator[tuple[str, str, Outcome]]:
        """Yield what may be found or noticed, with words for the step or section where that is, and its anchor."""
        for section, anchor, steps in self.sections:
            for placed in steps:
                for action in placed.step.actions:
                    yield from self._held(f"step {placed.number}", placed.anchor, action.outcomes)
                yield from self._held(f"step {placed.number}", placed.anchor, placed.step.noticed)
            yield from self._held(f"“{section.title}”", anchor, section.noticed)

    def _held(self, place: str, anchor: str, outcomes: tuple[Outcome, ...]) -> Iterator[tuple[str, str, Outcome]]:
        for outcome in outcomes:
            if self.holds(outcome.when):
                yield place, anchor, outcome

    def called(self, names: Iterable[str]) -> tuple[Message, ...]:
        """Return the safety messages of these names, each once."""
        return tuple(self.scope.safety[name] for name in dict.fromkeys(names))

    def said_at(self, step: Step) -> tuple[Message, ...]:
        """Return the safety messages that a step calls itself, and those that the shop's policy places there."""
        return (*self.called(step.safety), *placed_by_policy(self.procedure, self.scope.library).get(step.id, ()))

    def messages(self) -> Iterator[Message]:
        """Yield the safety messages of the procedure, its sections and its steps, each once."""
        found = list(self.called(self.procedure.hazards or ()))
        for section, _, steps in self.sections:
            found += self.called(section.safety)
            for one in steps:
                found += self.said_at(one.step)
        told: set[str] = set()
        for message in found:
            if self.holds(message.when) and message.id not in told:
                told.add(message.id)
                yield message


class Plan:
    """A booklet's procedures: the main one first, then each one carried out on the way, once."""

    def __init__(self, library: Library, procedure: Procedure, selection: Mapping[str, str]) -> None:
        self.library = library
        self.selection = selection
        self.volumes = self._volumes(procedure)
        self.main = self.volumes[0]

    def _volumes(self, procedure: Procedure) -> tuple[Volume, ...]:
        found = [Volume(self.library.scope(procedure), "", self.selection)]
        for volume in found:  # the list grows while it is walked: a procedure carried out may carry out others
            for number in carried_out(volume):
                if number not in {one.procedure.number for one in found}:
                    letter = _letters(len(found))
                    found.append(Volume(self.library.scope(self.library.procedures[number]), letter, self.selection))
        return tuple(found)

    @cached_property
    def used(self) -> tuple[tuple[Named, Volume], ...]:
        """Everything that the steps use, once, in the order in which it is met."""
        found: dict[str, tuple[Named, Volume]] = {}
        for volume in self.volumes:
            things = volume.scope.things
            for placed in volume.steps():
                for name in placed.step.uses:
                    found.setdefault(name, (things[name], volume))
                for action in placed.step.actions:
                    for _, name in action.names():
                        found.setdefault(name, (things[name], volume))
        return tuple(found.values())

    def step_of(self, anchor: str) -> Step | None:
        """Return the step that an element of the booklet belongs to, told by the beginning of its anchor."""
        for volume in self.volumes:
            for placed in volume.steps():
                rest = anchor.removeprefix(placed.anchor)
                if rest != anchor and not rest[:1].isalnum():
                    return placed.step
        return None

    def volume_of(self, number: str) -> Volume | None:
        """Return the volume of a procedure, if this booklet holds it."""
        return next((volume for volume in self.volumes if volume.procedure.number == number), None)


def pictures(step: Step) -> tuple[str, ...]:
    """Return the names of the figures that belong to a step, and of those that a checkpoint compares with."""
    compared = [action.roles["against"] for action in step.actions if "against" in action.roles]
    return tuple(dict.fromkeys([*step.figures, *compared])) if compared else step.figures


def carried_out(volume: Volume) -> Iterator[str]:
    """Yield the numbers of the procedures that a volume's steps or outcomes lead into and back from."""
    for _, action in volume.actions():
        if action.kind.name == "carry-out":
            yield from action.what
    for _, _, outcome in volume.outcomes():
        if outcome.then == "do" and outcome.to is not None:
            yield outcome.to


def _letters(place: int) -> str:
    letters = ""
    while place:
        place, rest = divmod(place - 1, 26)
        letters = chr(ord("A") + rest) + letters
    return letters
