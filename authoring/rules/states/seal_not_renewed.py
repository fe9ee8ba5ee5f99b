"""A thing goes on again over the ring that it came off with.

A ring that was crushed once takes the same print no second time: it looks whole, and weeps.
Where the equipment says what a thing `seals-with`, each of these parts is fitted after the thing was removed or
disconnected, and before it is fitted, seated, connected, held or closed again, or tightened where it is fasteners, on
every machine and way through the job; it is an error where the part is for one time.
A thing that is only started, and comes out again, needs none yet; one that was only loosened kept its ring.
The old one is discarded or kept before the job ends, in which the thing is back with a new one; a fitting that says
what it `replaces` has told what becomes of it.
One fitting counts for all things that it may be meant for.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    seals-with: [plug-ring]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
```
```yaml procedure
sections:
  - title: Top up the oil
    steps:
      - step: Remove the [level-plug].
        do:
          - remove: level-plug
      - step: Top up the [box-oil].
        do:
          - top-up: box-oil
      - step: Start the [level-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - start: level-plug
          - tighten: level-plug   #! seal-not-renewed
```

A new ring goes on, and the old one still hangs on the plug.

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    seals-with: [plug-ring]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
```
```yaml procedure
sections:
  - title: Top up the oil
    steps:
      - step: Remove the [level-plug].
        do:
          - remove: level-plug   #! seal-not-renewed
      - step: Top up the [box-oil].
        do:
          - top-up: box-oil
      - step: Fit a new [plug-ring], start the [level-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - fit: plug-ring
          - start: level-plug
          - tighten: level-plug
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    seals-with: [plug-ring]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
```
```yaml procedure
sections:
  - title: Top up the oil
    steps:
      - step: Remove the [level-plug] and discard the [plug-ring].
        do:
          - remove: level-plug
          - discard: plug-ring
      - step: Top up the [box-oil].
        do:
          - top-up: box-oil
      - step: Fit a new [plug-ring], start the [level-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - fit: plug-ring
          - start: level-plug
          - tighten: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import TypeAlias

from msgspec import Struct

from authoring.diagnostics.diagnostic import Severity
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.on_and_off import PUTS_ON, TAKES_OFF, meant
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup, Item, Part
from authoring.proof.job import Job, job_of
from authoring.proof.linked import Linked
from authoring.proof.settled import left_out
from authoring.proof.story import Story
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

# Where the part is for one time it is an error that it is not renewed.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("P2", "N6")
ABOUT = ("sealed", "carried-out")

_SEAL, _OLD, _CAME_OFF = "seal", "old seal", "came off"
"""The sides of a thing that tell whether its seal is new, what became of the old one, and where it came off last."""

_NOT_ON = frozenset({"removed", "tried", "discarded", "replaced", "empty"})
_TURNED_IN = frozenset({"tight", "loose"})
_BACK = frozenset({"fitted", "tight", "held"})
_DISPOSED = frozenset({"discard", "keep"})

Sealed: TypeAlias = Item | FastenerGroup


class _Seal(Struct, frozen=True, eq=False):
    """A thing, a part that seals it, and the names by which a job may fit that part."""

    thing: Sealed
    part: Part
    names: tuple[str, ...]

    @property
    def sides(self) -> tuple[Side, Side, Side, Side]:
        """Where the thing is, whether its seal is new, what became of the old one, and where it came off last."""
        return (
            (self.thing.id, "where"),
            (self.thing.id, _SEAL),
            (self.thing.id, _OLD),
            (self.thing.id, _CAME_OFF),
        )

    def linked(self) -> list[Linked]:
        """Return what changes the sides that no action declares."""
        _, seal, old, came_off = self.sides
        return [
            Linked(TAKES_OFF, self.thing.id, seal, "removed"),
            Linked(TAKES_OFF, self.thing.id, came_off, "removed"),
            Linked(frozenset({"discard"}), self.thing.id, old, "disposed of"),
            *(Linked(PUTS_ON, one, seal, "fitted") for one in self.names),
            *(Linked(_DISPOSED, one, old, "disposed of") for one in self.names),
        ]


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that some machine puts on without its new seal, or whose old one it keeps."""
    equipment = library.scope(procedure).equipment
    things: list[Sealed] = []
    if equipment is not None:
        things += [*equipment.items.values(), *equipment.fasteners.values()]
    sealed = [one for one in things if one.seals_with]
    job = job_of(procedure, library) if sealed else None
    for thing in sealed if job is not None else ():
        if job is not None and any(point.does in TAKES_OFF for point in job.track.naming.get(thing.id, ())):
            for name in thing.seals_with:
                part = job.scope.things[name].thing if name in job.scope.things else None
                if isinstance(part, Part):
                    yield from _of_seal(_Seal(thing, part, tuple(_names(part, job))), job)


def _names(part: Part, job: Job) -> Iterator[str]:
    """Yield the names by which a part may be fitted: its own, those of choices, and of what a modification brings."""
    yield part.id
    for one in job.ways.procedures:
        for choice in one.choices.values():
            named = job.scope.library.scope(one).things.get(choice.id)
            if any(name == part.id for name, _ in meant(choice.id, named)):
                yield choice.id
        for change in one.modifications.values():
            yield from (new for old, new in change.replaces.items() if old == part.id)


def _of_seal(seal: _Seal, job: Job) -> Iterator[Fault]:
    goes_on = [point for point in job.track.naming.get(seal.thing.id, ()) if _goes_on(point, seal.thing)]
    gone = left_out(seal.thing.id, job)
    story = job.story(seal.sides, goes_on, [seal.thing.when, *gone], seal.linked())
    if story is not None:
        yield from _not_renewed(seal, goes_on, (job, story))
        if not _told_of_kept(seal, job):
            yield from _old_kept(seal, job, story)


def _goes_on(point: Point, thing: Sealed) -> bool:
    """Tell whether a thing is put on for good; fasteners are once they are tightened."""
    if point.action is None or thing.id not in point.action.what:
        return False
    return point.action.kind.torque if isinstance(thing, FastenerGroup) else point.does in PUTS_ON | {"close"}


def _not_renewed(seal: _Seal, goes_on: list[Point], told: tuple[Job, Story]) -> Iterator[Fault]:
    job, story = told
    where, new, *_ = seal.sides
    fasteners = isinstance(seal.thing, FastenerGroup)
    there = story.space.where(seal.thing.when) & ~story.space.either(left_out(seal.thing.id, job))
    for point in goes_on:
        bad: Gathered[None] = Gathered()
        for held in story.before(point):
            now, since = held.settings[where].state, held.settings[new]
            # Once it is in, it is told of already.
            first = now not in _TURNED_IN if fasteners else now in _NOT_ON
            came_off = since.state == "removed" and isinstance(since.by, Point)
            if first and came_off and not told_by_itself(point, [since]):
                bad.note(None, held, held.cells & there)
        for _, held, cells in bad.each():
            yield fault(
                f'"{seal.thing.id}" {"is tightened" if fasteners else "goes on"} again, '
                f'and "{seal.part.id}", which seals it, was not renewed since it came off',
                span_of(point, seal.thing.id),
                f'Fit a new "{seal.part.id}" in an action before.',
                (job, story, cells, held.path),
                Severity.ERROR if seal.part.one_time else None,
            )


def _old_kept(seal: _Seal, job: Job, story: Story) -> Iterator[Fault]:
    where, new, old, came_off = seal.sides
    there = story.space.where(seal.thing.when) & ~story.space.either(left_out(seal.thing.id, job))
    bad: Gathered[Point] = Gathered()
    for held in story.at_the_end():
        now, fitted, off = held.settings[where], held.settings[new], held.settings[came_off]
        back = now.state in _BACK and fitted.state == "fitted" and held.settings[old].state != "disposed of"
        if back and isinstance(off.by, Point) and not (_replaces(fitted.by) or told_by_itself(off.by, [now, fitted])):
            bad.note(off.by, held, held.cells & there)
    for point, held, cells in bad.each():
        yield fault(
            f'"{seal.thing.id}" comes off here and gets a new "{seal.part.id}", but the old one is never discarded',
            span_of(point, seal.thing.id),
            f"Add discard: {seal.part.id} to the step that takes it off, and say so in its text.",
            (job, story, cells, held.path),
        )


def _replaces(by: object) -> bool:
    return isinstance(by, Point) and by.action is not None and "replaces" in by.action.roles


def _told_of_kept(seal: _Seal, job: Job) -> bool:
    """Tell whether another rule looks after the old one: the part is for one time, and the job removes it by name."""
    points = job.track.naming.get(seal.part.id, ()) if seal.part.one_time else ()
    return any(point.own and point.does == "remove" for point in points)
