"""Fasteners go in while the item that they hold is off the machine.

Six bolts stand tight in the box, and the cover lies on the bench.
Fasteners `on` an item are started and tightened while the item is on the machine or in its place, on every machine and
way through the job, or a new part has taken its place: one that `replaces` it, or any that went in after it came off.
Work at the bench on the item, or on what it is part of, is done off the machine; and a plug goes into an item wherever
that lies.
It is an error where they are tightened, and a warning where they are only started, which may be meant to keep them.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  cover: {name: cover}
fasteners:
  level-plug: {name: level plug, count: 1, thread: M18 x 1.5, on: drop-box, tightened: By hand.}
  bolts: {name: cover bolts, count: 6, thread: M8 x 1.25, on: cover, tightened: By hand.}
```
```yaml procedure
sections:
  - title: Cover
    steps:
      - step: Remove the [bolts] and the [cover].
        do:
          - remove: bolts
          - remove: cover
      - step: Fit the [cover].
        when: {brake: drum}
        do:
          - fit: cover
      - step: Start the [bolts] and tighten them.
        do:
          - start: bolts   #! fastened-to-nothing
          - tighten: bolts
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  cover: {name: cover}
fasteners:
  level-plug: {name: level plug, count: 1, thread: M18 x 1.5, on: drop-box, tightened: By hand.}
  bolts: {name: cover bolts, count: 6, thread: M8 x 1.25, on: cover, tightened: By hand.}
```
```yaml procedure
sections:
  - title: Cover
    steps:
      - step: Remove the [bolts] and the [cover].
        do:
          - remove: bolts
          - remove: cover
      - step: Fit the [cover].
        do:
          - fit: cover
      - step: Start the [bolts] and tighten them.
        do:
          - start: bolts
          - tighten: bolts
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.model.ends import Side
from authoring.model.fitments import together
from authoring.model.library import Library
from authoring.model.on_and_off import PUTS_ON, wholes
from authoring.model.procedure import Choice, Procedure
from authoring.model.space import Cells
from authoring.model.things import FastenerGroup, Item, Part
from authoring.proof.benches import benches
from authoring.proof.brought import brought
from authoring.proof.holders import holders
from authoring.proof.job import Job, job_of
from authoring.proof.settings import Setting, there
from authoring.proof.settled import left_out
from authoring.proof.story import Held
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("N4", "N11")
ABOUT = ("fastened",)

_FASTENS = frozenset({"start", "tighten"})
_WORDS = {"removed": "off the machine", "discarded": "thrown away", "empty": "left out"}
"""How an item is that the fasteners cannot hold, and how that is said."""


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each group that on some machine and way goes in without what it holds."""
    job = job_of(procedure, library)
    if job is None:
        return
    asked: dict[str, list[Point]] = {}
    for point in job.track.points:
        if point.action is not None and point.does in _FASTENS:
            for name in dict.fromkeys(point.action.what):
                asked.setdefault(name, []).append(point)
    for name, points in asked.items():
        named = job.scope.things.get(name)
        group = named.thing if named is not None else None
        if isinstance(group, FastenerGroup) and group.on is not None and _holds(group, group.on, job):
            yield from _of_group(group, group.on, points, job)


def _holds(group: FastenerGroup, item: str, job: Job) -> bool:
    """Tell whether fasteners hold the item that they are on; a plug goes into it wherever it lies."""
    equipment = job.scope.equipment
    return equipment is not None and item in equipment.items and group in holders(item, equipment)


def _of_group(group: FastenerGroup, item: str, points: Sequence[Point], job: Job) -> Iterator[Fault]:
    both = together(group.when, there(item, job.scope))
    gone = left_out(item, job)
    names = wholes(item, job.scope.things)
    story = job.story(((one, "where") for one in names), points, [both, *gone])
    if story is None:
        return
    there_both = story.space.where(both) & ~story.space.either(gone)
    found: list[tuple[Point, Held, Cells]] = []
    for point in points:
        if not set(names).isdisjoint(benches(point)):
            continue
        for held in story.before(point):
            now = held.settings[item, "where"]
            replaced = _something_new(now, point, job)
            if _is_gone(names, held.settings) and not replaced and not told_by_itself(point, [now]):
                found.append((point, held, held.cells & there_both))
    for point, now, held, cells in _first(found, item):
        tight = any(one.does == "tighten" and other.settings[item, "where"].by is now.by for one, other, _ in found)
        yield fault(
            f'"{group.id}" {"go" if group.count > 1 else "goes"} in here while "{item}" is {_WORDS[now.state]}',
            span_of(point, group.id),
            f'Let a step before bring "{item}" to its place, or say with "replaces" what takes its place.',
            (job, story, cells, held.path),
            Severity.ERROR if tight else None,
        )


def _first(found: Sequence[tuple[Point, Held, Cells]], item: str) -> Iterator[tuple[Point, Setting, Held, Cells]]:
    """Yield for each removal of the item the first fastening after it, on the machines and ways not told of yet."""
    told: dict[Setting, Cells] = {}
    for point in dict.fromkeys(point for point, _, _ in found):
        bad: Gathered[Setting] = Gathered()
        for _, held, cells in (one for one in found if one[0] is point):
            now = held.settings[item, "where"]
            bad.note(now, held, cells & ~told.get(now, 0))
        for now, held, cells in bad.each():
            told[now] = told.get(now, 0) | cells
            yield point, now, held, cells


def _is_gone(names: Sequence[str], now: Mapping[Side, Setting]) -> bool:
    """Tell whether an item is off, and nothing stands in its place, nor in that of what it is part of."""
    return now[names[0], "where"].state in _WORDS and all(now[one, "where"].state != "replaced" for one in names)


def _something_new(off: Setting, point: Point, job: Job) -> bool:
    """Tell whether something that was not on the machine went in, as written, after an item came off."""
    return any(
        one.does in PUTS_ON and one.action is not None and any(_is_new(name, job) for name in one.action.what)
        for one in job.track.points[off.number + 1 : point.number]
    )


def _is_new(name: str, job: Job) -> bool:
    named = job.scope.things.get(name)
    thing = named.thing if named is not None else None
    return isinstance(thing, Part | Choice) or (isinstance(thing, Item) and bool(brought(thing, job)))
