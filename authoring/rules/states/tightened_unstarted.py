"""Fasteners are tightened before they, or the others of the same item, are started.

With one bolt tight the lid is drawn askew, the next hole is off by half a thread, and the last bolt goes in crossed.
Fasteners that were removed are started by hand or fitted before they are tightened, and so are the others `on` the same
item, plugs left out; others that a modification leaves out, or that the procedure `leaves` removed, may stay out.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  lid: {name: lid}
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  long-bolts: {name: long bolts, count: 2, thread: M8 x 1.25, on: lid, tightened: By hand.}
  short-bolts: {name: short bolts, count: 4, thread: M8 x 1.25, on: lid, tightened: By hand.}
```
```yaml procedure
sections:
  - title: Lid
    steps:
      - step: Remove the [long-bolts] and the [short-bolts].
        with: [spanner]
        do:
          - remove: [long-bolts, short-bolts]
      - step: Start the [long-bolts] by hand.
        do:
          - start: long-bolts
      - step: Tighten the [long-bolts].
        with: [spanner]
        do:
          - tighten: long-bolts   #! tightened-unstarted
      - step: Start the [short-bolts] by hand.
        when: {brake: drum}
        do:
          - start: short-bolts
      - step: Tighten the [short-bolts].
        with: [spanner]
        do:
          - tighten: short-bolts   #! tightened-unstarted
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  lid: {name: lid}
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  long-bolts: {name: long bolts, count: 2, thread: M8 x 1.25, on: lid, tightened: By hand.}
  short-bolts: {name: short bolts, count: 4, thread: M8 x 1.25, on: lid, tightened: By hand.}
```
```yaml procedure
sections:
  - title: Lid
    steps:
      - step: Remove the [long-bolts] and the [short-bolts].
        with: [spanner]
        do:
          - remove: [long-bolts, short-bolts]
      - step: Start the [long-bolts] and the [short-bolts] by hand.
        do:
          - start: [long-bolts, short-bolts]
      - step: Tighten the [long-bolts] and the [short-bolts].
        with: [spanner]
        do:
          - tighten: [long-bolts, short-bolts]
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import Equipment, FastenerGroup
from authoring.proof.holders import holders
from authoring.proof.job import Job, job_of
from authoring.proof.settled import left_out
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N4", "N5")
ABOUT = ("tightened",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each group that is tightened on some machine and way while it, or one beside it, is out."""
    job = job_of(procedure, library)
    equipment = library.scope(procedure).equipment
    if job is None or equipment is None:
        return
    asked: dict[str, list[Point]] = {}
    for point in job.track.points:
        if point.action is not None and point.action.kind.torque:
            for name in point.action.what:
                asked.setdefault(name, []).append(point)
    for name, points in asked.items():
        if name in equipment.fasteners:
            group = equipment.fasteners[name]
            yield from _unstarted(group, group, points, job)
            for other in _beside(group, equipment, job):
                yield from _unstarted(group, other, [point for point in points if not _tightens(point, other)], job)


def _beside(group: FastenerGroup, equipment: Equipment, job: Job) -> Iterator[FastenerGroup]:
    """Yield the other groups that hold the same item, but for one that the job says it leaves out."""
    mine = list(holders(group.on, equipment)) if group.on is not None else []
    stay = {need.thing for need in job.procedure.leaves if need.state == "removed"}
    if group in mine:
        yield from (one for one in mine if one is not group and one.id not in stay)


def _tightens(point: Point, other: FastenerGroup) -> bool:
    """Tell whether the same action tightens another group, so that the fault is told of that one."""
    return point.action is not None and other.id in point.action.what


def _unstarted(group: FastenerGroup, other: FastenerGroup, points: Sequence[Point], job: Job) -> Iterator[Fault]:
    """Yield a fault for each of the points, at which `group` is tightened, where `other` is out; it may be the same."""
    tells: Side = (other.id, "where")
    gone = left_out(other.id, job) if other is not group else []
    story = job.story([tells], points, [group.when, other.when, *gone])
    if story is None:
        return
    there = story.space.where(group.when) & story.space.where(other.when) & ~story.space.either(gone)
    for point in points:
        bad: Gathered[None] = Gathered()
        for held in story.before(point):
            if held.settings[tells].state == "removed" and not told_by_itself(point, [held.settings[tells]]):
                bad.note(None, held, held.cells & there)
        for _, held, cells in bad.each():
            yield fault(
                f'The fasteners "{group.id}" are tightened, but after they came out nothing has started them'
                if other is group
                else f'The fasteners "{group.id}" are tightened while "{other.id}" of the same item are still out',
                span_of(point, group.id),
                f'Start "{other.id}" by hand in a step before this one.',
                (job, story, cells, held.path),
            )
