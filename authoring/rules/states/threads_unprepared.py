"""Fasteners go in again with their threads otherwise than the torque asks for.

A torque that was found with oil pulls a dry bolt too little, and one that was found dry stretches an oiled bolt; a
thread lock that was broken once holds nothing the second time.
Where the equipment says of `threads` that they are oiled, greased or have thread lock, a consumable is applied `to`
the fasteners after they were removed and before they are tightened, on every machine and way through the job: a
warning, since new ones may come coated.
Where it says that they are dry, no consumable that was applied to them is left there when they are tightened; it is
an error.
It is gone once they are cleaned, as for an oil that helped to get them loose, or discarded.
Nothing is asked where they are only started, or only loosened and tightened again.

Wrong:

```yaml stock
consumables:
  rag: {name: lint-free rag, disposal: oily-waste bin, take: one}
  lock: {name: thread lock, disposal: solvent-waste can, take: one}
```
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
    threads: dry
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M8 x 1.25
    on: lid
    threads: thread-lock
    torque: {value: 22 ± 2 N·m, source: plate, at: line 5}
```
```yaml procedure
sections:
  - title: Lid and plug
    steps:
      - step: Remove the [lid-bolts] and the [level-plug].
        with: [spanner]
        do:
          - remove: [lid-bolts, level-plug]
      - step: Apply [lock] to the [level-plug] and start it by hand.
        with: [lock]
        do:
          - apply: {what: lock, to: level-plug}
          - start: level-plug
      - step: Start the [lid-bolts] by hand.
        do:
          - start: lid-bolts
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug   #! threads-unprepared
      - step: Tighten the [lid-bolts].
        with: [wrench]
        do:
          - tighten: lid-bolts   #! threads-unprepared
```

Right:

```yaml stock
consumables:
  rag: {name: lint-free rag, disposal: oily-waste bin, take: one}
  lock: {name: thread lock, disposal: solvent-waste can, take: one}
```
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
    threads: dry
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M8 x 1.25
    on: lid
    threads: thread-lock
    torque: {value: 22 ± 2 N·m, source: plate, at: line 5}
```
```yaml procedure
sections:
  - title: Lid and plug
    steps:
      - step: Remove the [lid-bolts] and the [level-plug].
        with: [spanner]
        do:
          - remove: [lid-bolts, level-plug]
      - step: Clean the [level-plug] and start it by hand.
        do:
          - clean: level-plug
          - start: level-plug
      - step: Apply [lock] to the [lid-bolts] and start them by hand.
        with: [lock]
        do:
          - apply: {what: lock, to: lid-bolts}
          - start: lid-bolts
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug
      - step: Tighten the [lid-bolts].
        with: [wrench]
        do:
          - tighten: lid-bolts
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.diagnostics.diagnostic import Severity
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.on_and_off import TAKES_OFF
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup
from authoring.proof.job import Job, job_of
from authoring.proof.linked import Linked
from authoring.proof.settings import Setting
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

# It is an error where something is on threads that are to be dry.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N3", "N4")
ABOUT = ("threads",)

_DRY = "dry"
_APPLIES = frozenset({"apply"})
_WIPES_OFF = frozenset({"clean", "discard"})
_IN = frozenset({"tight", "loose"})
_WANTED: Mapping[str, str] = {"oiled": "oil", "greased": "grease", "thread-lock": "thread lock"}
"""What must be on the threads, by the word of the equipment."""


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each tightening of fasteners whose threads some machine has otherwise than stated."""
    equipment = library.scope(procedure).equipment
    groups = [one for one in equipment.fasteners.values() if one.threads] if equipment is not None else []
    job = job_of(procedure, library) if groups else None
    for group in groups if job is not None else ():
        if job is not None:
            tightens = [point for point in job.track.naming.get(group.id, ()) if _tightens(point, group)]
            if tightens:
                yield from _of_group(group, tightens, job)


def _tightens(point: Point, group: FastenerGroup) -> bool:
    return point.action is not None and point.action.kind.torque and group.id in point.action.what


def _linked(group: FastenerGroup, threads: Side) -> list[Linked]:
    """Return what changes the threads: what is put on them, and what takes it off or asks for it anew."""
    applied = Linked(_APPLIES, group.id, threads, "coated", "to")
    if group.threads == _DRY:
        return [applied, Linked(_WIPES_OFF, group.id, threads, "clean")]
    return [applied, Linked(TAKES_OFF, group.id, threads, "removed")]


def _of_group(group: FastenerGroup, tightens: list[Point], job: Job) -> Iterator[Fault]:
    where: Side = (group.id, "where")
    threads: Side = (group.id, "threads")
    story = job.story([where, threads], tightens, [group.when], _linked(group, threads))
    if story is None:
        return
    there = story.space.where(group.when)
    for point in tightens:
        bad: Gathered[None] = Gathered()
        for held in story.before(point):
            now, last = held.settings[where], held.settings[threads]
            if _is_wrong(group, now, last) and not told_by_itself(point, [last]):
                bad.note(None, held, held.cells & there)
        for _, held, cells in bad.each():
            dry = group.threads == _DRY
            yield fault(
                f'"{group.id}" is tightened on threads that are to be dry, and what was applied to it is still there'
                if dry
                else f'"{group.id}" is tightened, and after it came off nothing was applied to its threads',
                span_of(point, group.id),
                f'Clean "{group.id}" in an action before, or put nothing on it.'
                if dry
                else f'Apply {_WANTED[str(group.threads)]} to "{group.id}" in an action before.',
                (job, story, cells, held.path),
                Severity.ERROR if dry else None,
            )


def _is_wrong(group: FastenerGroup, now: Setting, last: Setting) -> bool:
    """Tell whether fasteners must not be tightened as their threads are; once they are in, it is told already."""
    if group.threads == _DRY:
        return now.state != "tight" and last.state == "coated"
    return now.state not in _IN and last.state == "removed" and isinstance(last.by, Point)
