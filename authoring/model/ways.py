"""The ways a job may go on one machine: which method is taken, and which optional steps are done.

What is decided on the way counts as a feature beside those of the vehicle, so that "for which machines" and
"on which way" are one question.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator, Sequence
from functools import lru_cache

from msgspec import Struct
from msgspec.structs import replace

from authoring.model.concern import concern_of
from authoring.model.course import Act, called_by
from authoring.model.fitments import may_hold, together
from authoring.model.lacking import tried
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Section, Step
from authoring.model.smallest import Fitment, smallest, told
from authoring.model.specification import When
from authoring.model.things import Equipment, Feature

_DONE, _SKIPPED = "done", "skipped"


class _Known(Struct, frozen=True, eq=False):
    """What decides about one step: its place, condition and procedure, the methods it is one of, what may skip it."""

    place: int
    when: When
    procedure: Procedure
    methods: tuple[Step, ...]
    skips: tuple[str, ...]


class Shown(Struct, frozen=True):
    """The fewest features and decisions that show a fault, in words that follow a sentence, and all vehicles concerned.

    Both are empty where it concerns every machine on every way.
    """

    whom: str
    fitments: str


class Ways:
    """The steps of a job and of the procedures it carries out, and whether each is done on a machine and a way."""

    def __init__(self, procedure: Procedure, library: Library, vehicle: Equipment) -> None:
        self._covers = procedure.covers
        self._steps: dict[Step, _Known] = {}
        self._ids: dict[tuple[str, str], Step] = {}
        self._decisions: dict[str, Feature] = {}
        self._words: dict[tuple[str, str], str] = {}
        followed = {procedure.number: procedure, **{one.number: one for one in carried_out(procedure, library)}}
        for one in followed.values():
            self._learn(one)
        self.procedures = tuple(followed.values())
        self.unseen = _touched_deeper(self.procedures, procedure, library)
        self._plain = vehicle
        self.vehicle = replace(vehicle, features={**vehicle.features, **self._decisions})

    def _learn(self, procedure: Procedure) -> None:
        asked = {name for _, step in procedure.steps() for name in (*step.if_done, *step.unless_done)}
        groups: dict[tuple[str | int, ...], list[Step]] = {}
        for _, step in procedure.steps():
            if step.method is not None:
                groups.setdefault(step.where.path[:-1], []).append(step)
        for place, (section, step) in enumerate(procedure.steps()):
            methods = tuple(groups[step.where.path[:-1]]) if step.method is not None else ()
            when = together(section.when, step.when)
            skips = tuple(self._skips(procedure, section, step, asked))
            self._steps[step] = _Known(place, when, procedure, methods, skips)
            self._ids.setdefault((procedure.number, step.id), step)
            if methods and methods[0] is step:
                self._decide_method(procedure, methods)

    def _decide_method(self, procedure: Procedure, methods: Sequence[Step]) -> None:
        name = _feature(procedure, methods[0].where.path[:-1])
        letters = {
            str(at): f"method {step.method.letter}" for at, step in enumerate(methods) if step.method is not None
        }
        self._decisions[name] = Feature(name, "method", "", letters, methods[0].where)
        for at, step in enumerate(methods):
            line = step.where.span.line
            named = f'"{step.id}"' if "." not in step.id else f"the method of line {line}"
            self._words[name, str(at)] = f"{named} is done"

    def _skips(self, procedure: Procedure, section: Section, step: Step, asked: Collection[str]) -> Iterator[str]:
        """Yield the decisions that may skip a step, as far as another step asks whether it was done."""
        if step.optional is not None and step.id in asked:
            yield self._decide_skip(procedure, step.where.path, f'"{step.id}"', step)
        if section.optional is not None and any(one.id in asked for one in section.steps):
            words = f'the section "{section.title}"'
            yield self._decide_skip(procedure, section.where.path, words, step)

    def _decide_skip(self, procedure: Procedure, path: tuple[str | int, ...], words: str, step: Step) -> str:
        name = _feature(procedure, path)
        self._decisions[name] = Feature(name, words, "", {_DONE: _DONE, _SKIPPED: _SKIPPED}, step.where)
        for value in (_DONE, _SKIPPED):
            self._words[name, value] = f"{words} is {value}"
        return name

    def procedure_of(self, act: Act) -> Procedure:
        """Return the procedure in which an action is written."""
        return self._steps[act.doing].procedure

    def happens(self, act: Act, fitment: Fitment) -> bool:
        """Tell whether an action is done on this machine and way; all features that decide it have a value."""
        if not may_hold(act.when, fitment) or not self._done(act.doing, fitment, ()):
            return False
        return act.own or self._done(act.step, fitment, ())

    def reached(self, step: Step, fitment: Fitment) -> bool:
        """Tell whether a step of the job is done on this machine and way."""
        return self._done(step, fitment, ())

    def _done(self, step: Step, fitment: Fitment, asking: tuple[Step, ...]) -> bool:
        known = self._steps[step]
        if not may_hold(known.when, fitment) or any(fitment.get(name) == _SKIPPED for name in known.skips):
            return False
        if known.methods and self._taken(known, fitment) is not step:
            return False
        before = (*asking, step)
        if step.if_done and not any(self._was_done(name, known, fitment, before) for name in step.if_done):
            return False
        return not any(self._was_done(name, known, fitment, before) for name in step.unless_done)

    def _taken(self, known: _Known, fitment: Fitment) -> Step | None:
        """Return the method that is taken: the one decided for, or the first there is for this machine."""
        there = [one for one in known.methods if may_hold(self._steps[one].when, fitment)]
        at = int(fitment.get(_feature(known.procedure, known.methods[0].where.path[:-1]), "0"))
        return known.methods[at] if known.methods[at] in there else next(iter(there), None)

    def _was_done(self, name: str, known: _Known, fitment: Fitment, asking: tuple[Step, ...]) -> bool:
        step = self._ids.get((known.procedure.number, name))
        if step is None or step in asking or self._steps[step].place >= known.place:
            return False  # what comes later has not been done when the job is gone through once
        return self._done(step, fitment, asking)

    def machines(self, acts: Iterable[Act], steps: Iterable[Step] = (), more: Iterable[When] = ()) -> list[Fitment]:
        """Return every covered machine and way, over what decides about these actions, steps and conditions.

        It is empty where nothing can be said: a name is unknown or the combinations are too many, both told elsewhere.
        """
        whens: list[When] = list(more)
        asked: dict[Step, None] = dict.fromkeys(steps)
        for act in acts:
            whens.append(act.when)
            asked |= {act.doing: None, act.step: None}
        waiting = list(asked)
        while waiting:
            step = waiting.pop()
            known = self._steps[step]
            whens += [known.when, dict.fromkeys(known.skips, (_DONE, _SKIPPED))]
            if known.methods:
                name = _feature(known.procedure, known.methods[0].where.path[:-1])
                whens.append({name: tuple(self._decisions[name].values)})
            named = [self._ids.get((known.procedure.number, name)) for name in (*step.if_done, *step.unless_done)]
            new = {one: None for one in (*known.methods, *named) if one is not None and one not in asked}
            asked |= new
            waiting += new
        return tried(self.vehicle, self._covers, whens)

    def shown(self, bad: Sequence[Fitment], good: Collection[Fitment]) -> Shown:
        """Return in words what is the same for all of `bad`, of which there is at least one, and for none of `good`."""
        fewest = smallest(bad, good)
        plain = {name: value for name, value in fewest.items() if name not in self._decisions}
        ways = [self._words[name, value] for name, value in fewest.items() if name in self._decisions]
        whom = f" for {told(plain, self._plain)}" if plain else ""
        whom += f" where {' and '.join(ways)}" if ways else ""
        machines = [{name: one[name] for name in one if name not in self._decisions} for one in bad]
        once = list({tuple(one.items()): one for one in machines}.values())
        return Shown(whom, concern_of(once, self._plain.features, self._covers) if once[0] else "")


def _feature(procedure: Procedure, path: tuple[str | int, ...]) -> str:
    """Return a name that no author can write."""
    return ".".join(map(str, (procedure.number, *path)))


def carried_out(procedure: Procedure, library: Library) -> Iterator[Procedure]:
    """Yield the procedures of the same equipment that a step of this one carries out."""
    for _, step in procedure.steps():
        for action in step.actions:
            yield from called_by(action, procedure, library)


def _touched_deeper(followed: Iterable[Procedure], main: Procedure, library: Library) -> frozenset[str]:
    """Return what is touched by procedures that those carried out carry out in their turn, which nobody follows."""
    found: set[str] = set()
    waiting = [deeper for one in followed if one is not main for deeper in carried_out(one, library)]
    known: set[str] = set()
    while waiting:
        procedure = waiting.pop()
        if procedure.number not in known:
            known.add(procedure.number)
            found |= {name for _, step in procedure.steps() for action in step.actions for name in action.what}
            waiting += carried_out(procedure, library)
    return frozenset(found)


@lru_cache(maxsize=64)
def ways_of(procedure: Procedure, library: Library) -> Ways | None:
    """Return the ways of a job; None where its equipment is not known."""
    vehicle = library.scope(procedure).vehicle
    return Ways(procedure, library, vehicle) if vehicle is not None else None
