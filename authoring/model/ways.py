"""The ways a job may go on each machine: which method is taken, and which optional steps are done.

What is decided on the way counts as a feature beside those of the vehicle, so that "for which machines" and
"on which way" are one question, which is answered for all of them at once.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from functools import lru_cache
from typing import Protocol
from weakref import WeakKeyDictionary

from msgspec import Struct
from msgspec.structs import replace

from authoring.model.concern import concern_of
from authoring.model.course import Act, called_by, seen
from authoring.model.fitments import together, told
from authoring.model.lacking import laid_out
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Section, Step
from authoring.model.space import Cells, Space
from authoring.model.specification import When
from authoring.model.things import Equipment, Feature

_DONE, _SKIPPED = "done", "skipped"


class Doing(Protocol):
    """Something that is done for some machines, once all of some steps are."""

    @property
    def when(self) -> When:
        """For which machines."""

    @property
    def steps(self) -> tuple[Step, ...]:
        """The steps that must be done for it to be done, outermost first."""


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
        self._reached: WeakKeyDictionary[Space, dict[Step, Cells]] = WeakKeyDictionary()
        self.procedures = tuple(led_to(procedure, library).values())
        for one in self.procedures:
            self._learn(one)
        self._plain = vehicle
        self.vehicle = replace(vehicle, features={**vehicle.features, **self._decisions})

    def _learn(self, procedure: Procedure) -> None:
        groups: dict[tuple[str | int, ...], list[Step]] = {}
        for _, step in procedure.steps():
            if step.method is not None:
                groups.setdefault(step.where.path[:-1], []).append(step)
        for place, (section, step) in enumerate(procedure.steps()):
            methods = tuple(groups[step.where.path[:-1]]) if step.method is not None else ()
            when = together(section.when, step.when)
            skips = tuple(self._skips(procedure, section, step))
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

    def _skips(self, procedure: Procedure, section: Section, step: Step) -> Iterator[str]:
        """Yield the decisions that may skip a step."""
        if step.optional is not None:
            words = f'"{step.id}"' if "." not in step.id else f"the step of line {step.where.span.line}"
            yield self._decide_skip(procedure, step.where.path, words, step)
        if section.optional is not None:
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

    def space(self, acts: Iterable[Doing], steps: Iterable[Step] = (), more: Iterable[When] = ()) -> Space | None:
        """Return every covered machine and way, over what decides about these actions, steps and conditions.

        It is None where nothing can be said: a name is unknown or the combinations are too many, both told elsewhere.
        """
        return laid_out(self.vehicle, self._covers, [*more, *self.conditions(acts, steps)])

    def conditions(self, acts: Iterable[Doing], steps: Iterable[Step] = ()) -> list[When]:
        """Return all that decides about these actions and steps, the decisions on the way among it."""
        whens: list[When] = []
        asked: dict[Step, None] = dict.fromkeys(steps)
        for act in acts:
            whens.append(act.when)
            asked |= dict.fromkeys(act.steps)
        for step in self.bearing(asked):
            known = self._steps[step]
            whens += [known.when, dict.fromkeys(known.skips, (_DONE, _SKIPPED))]
            if known.methods:
                name = _method_of(known)
                whens.append({name: tuple(self._decisions[name].values)})
        return whens

    def bearing(self, steps: Iterable[Step]) -> list[Step]:
        """Return the steps that bear on whether these are done, and these, in the order in which they are done."""
        found = dict.fromkeys(steps)
        waiting = list(found)
        while waiting:
            step = waiting.pop()
            known = self._steps[step]
            named = [self._ids.get((known.procedure.number, name)) for name in (*step.if_done, *step.unless_done)]
            new = {one: None for one in (*known.methods, *named) if one is not None and one not in found}
            found |= new
            waiting += new
        return sorted(found, key=lambda step: self._steps[step].place)

    def cells(self, act: Act, space: Space) -> Cells:
        """Return on which machines and ways an action is done; the space is one over what decides about it."""
        cells = space.where(act.when)
        for step in act.steps:
            cells &= self.reached(step, space)
        return cells

    def marked(self, acts: Iterable[Act], space: Space) -> list[tuple[Act, Cells]]:
        """Return each of these actions with the machines and ways on which it is done."""
        return [(act, self.cells(act, space)) for act in acts]

    def reached(self, step: Step, space: Space) -> Cells:
        """Return on which machines and ways a step is done, by what its own procedure says of it."""
        known = self._reached.setdefault(space, {})
        if step not in known:
            # Those before first: what a step asks for has been done when it is gone through once, or not at all.
            for one in self.bearing([step]):
                if one not in known:
                    known[one] = self._done(one, space, known)
        return known[step]

    def open(self, step: Step, space: Space) -> Cells:
        """Return on which machines and ways a step is done, whatever other steps it asks to be done or not."""
        mine = self._steps[step]
        cells = self._taken(step, mine, space) if mine.methods else space.where(mine.when)
        for name in mine.skips:
            cells &= ~space.where({name: (_SKIPPED,)})
        return cells

    def named(self, step: Step, names: Iterable[str]) -> list[Step]:
        """Return the steps before a step that stand under its `if-done` or `unless-done`."""
        mine = self._steps[step]
        found = [self._ids.get((mine.procedure.number, name)) for name in names]
        return [one for one in found if one is not None and self._steps[one].place < mine.place]

    def _done(self, step: Step, space: Space, before: Mapping[Step, Cells]) -> Cells:
        cells = self.open(step, space)
        if step.if_done:
            cells &= self._was_done(step, step.if_done, before)
        return cells & ~self._was_done(step, step.unless_done, before)

    def _taken(self, step: Step, known: _Known, space: Space) -> Cells:
        """Return where a method is taken: where it is decided for, or the first there is for this machine."""
        there = [space.where(self._steps[one].when) for one in known.methods]
        decided = [space.where({_method_of(known): (str(at),)}) for at in range(len(there))]
        at = known.methods.index(step)
        missing = space.every
        for cells in there[:at]:
            missing &= ~cells
        elsewhere = 0
        for cells, by in zip(there, decided, strict=True):
            elsewhere |= by & ~cells
        return there[at] & (decided[at] | (missing & elsewhere))

    def _was_done(self, step: Step, names: Iterable[str], before: Mapping[Step, Cells]) -> Cells:
        cells = 0
        for one in self.named(step, names):
            cells |= before[one]
        return cells

    def on_any_way(self, cells: Cells, space: Space) -> Cells:
        """Return the machines of these cells, on every way: what is decided on the way does not count."""
        return space.whatever(cells, self._decisions)

    def shown(self, bad: Cells, space: Space, among: Cells | None = None) -> Shown:
        """Return in words what some of `bad`, of which there is at least one, have and none else `among` those asked.

        All covered machines on all ways are asked about where nothing is said.
        """
        fewest = space.fewest(bad, among)
        plain = {name: value for name, value in fewest.items() if name not in self._decisions}
        ways = [self._words[name, value] for name, value in fewest.items() if name in self._decisions]
        whom = f" for {told(plain, self._plain)}" if plain else ""
        whom += f" where {' and '.join(ways)}" if ways else ""
        machines = space.groups(self.on_any_way(bad, space))
        return Shown(whom, concern_of(machines, self._plain.features, self._covers))


def _method_of(known: _Known) -> str:
    """Return the name of what is decided between a step's methods."""
    return _feature(known.procedure, known.methods[0].where.path[:-1])


def _feature(procedure: Procedure, path: tuple[str | int, ...]) -> str:
    """Return a name that no author can write."""
    return ".".join(map(str, (procedure.number, *path)))


def led_to(procedure: Procedure, library: Library) -> dict[str, Procedure]:
    """Return by number the procedures of the same equipment that a job leads to, at any depth, and the job first.

    A step carries one out, or an outcome leads to one and back.
    """
    found = {procedure.number: procedure}
    waiting = [procedure]
    while waiting:
        new = [one for one in _next(waiting.pop(), library) if one.number not in found]
        found |= {one.number: one for one in new}
        waiting += new
    return found


def _next(procedure: Procedure, library: Library) -> Iterator[Procedure]:
    for _, step in procedure.steps():
        for action in step.actions:
            yield from called_by(action, procedure, library)
    for one in seen(procedure):
        called = library.procedures.get(one.outcome.to or "") if one.outcome.then == "do" else None
        if called is not None and called.equipment == procedure.equipment:
            yield called


@lru_cache(maxsize=64)
def ways_of(procedure: Procedure, library: Library) -> Ways | None:
    """Return the ways of a job; None where its equipment is not known."""
    vehicle = library.scope(procedure).vehicle
    return Ways(procedure, library, vehicle) if vehicle is not None else None
