"""A thing is thrown away or laid aside while it is still on the machine.

Whoever reads "discard the plate" looks for the plate in the tray, and it is still under its bolts.
What is discarded, and what is kept for later, has come off in an action before, on every machine and way through the
job: it was removed or disconnected, something took its place, or what it is part of or holds came off.
It is an error where fasteners are thrown away that are in, and else a warning: an item may come away with another one
that the steps name, and what is laid aside may still hang by something.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  plate: {name: lock plate}
```
```yaml procedure
sections:
  - title: Plate
    steps:
      - step: Remove the [plate].
        when: {brake: drum}
        do:
          - remove: plate
      - step: Discard the [plate].
        do:
          - discard: plate   #! discarded-while-on
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  plate: {name: lock plate}
```
```yaml procedure
sections:
  - title: Plate
    steps:
      - step: Remove the [plate] and discard it.
        do:
          - remove: plate
          - discard: plate
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.on_and_off import wholes
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup, Item
from authoring.proof.brought import brought
from authoring.proof.covers import is_off
from authoring.proof.job import Job, job_of
from authoring.proof.settings import Setting
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

# A seal may come away with its cover, and what is laid aside may hang by its hose.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("P2", "N11")
ABOUT = ("laid-aside", "carried-out")

_ON: Mapping[str, str] = {"fitted": "on", "tight": "tight", "loose": "only loosened", "started": "screwed in"}
"""How a thing is on the machine, and how that is said."""


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that on some machine and way is thrown away or laid aside while it is on."""
    job = job_of(procedure, library)
    if job is None:
        return
    asked: dict[str, list[Point]] = {}
    for point in job.track.points:
        if point.action is not None and (point.action.kind.discards or point.action.kind.keeps):
            for name in dict.fromkeys(point.action.what):
                asked.setdefault(name, []).append(point)
    for name, points in asked.items():
        named = job.scope.things.get(name)
        if named is not None and isinstance(named.thing, Item | FastenerGroup):
            yield from _of_thing(named.thing, points, job)


def _of_thing(thing: Item | FastenerGroup, points: Sequence[Point], job: Job) -> Iterator[Fault]:
    new = brought(thing, job)
    around = _around(thing, job)
    story = job.story(((one, "where") for one in (thing.id, *around)), points, [thing.when, *new])
    if story is None:
        return
    there = story.space.where(thing.when)
    for point in points:
        bad: Gathered[str] = Gathered()
        for held in story.before(point):
            now = held.settings[thing.id, "where"]
            if _is_on(now, around, held.settings) and not told_by_itself(point, [now]):
                cells = held.cells & there
                bad.note(now.state, held, cells if now.by is not None else cells & ~story.space.either(new))
        for state, held, cells in bad.each():
            thrown = point.action is not None and point.action.kind.discards
            yield fault(
                f'"{thing.id}" is {"thrown away" if thrown else "laid aside"} here while it is still {_ON[state]}',
                span_of(point, thing.id),
                f'Let an action before take "{thing.id}" off.',
                (job, story, cells, held.path),
                Severity.ERROR if thrown and isinstance(thing, FastenerGroup) else None,
            )


def _around(thing: Item | FastenerGroup, job: Job) -> list[str]:
    """Return what a thing comes off with: what it is part of, and for fasteners the item that they hold."""
    if isinstance(thing, Item):
        return wholes(thing.id, job.scope.things)[1:]
    return wholes(thing.on, job.scope.things) if thing.on is not None else []


def _is_on(now: Setting, around: Sequence[str], settings: Mapping[Side, Setting]) -> bool:
    return now.state in _ON and not any(is_off(one, settings) for one in around)
