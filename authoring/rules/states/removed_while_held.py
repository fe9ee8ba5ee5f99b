"""An item comes off while fasteners that hold it are still tight.

The apprentice pulls, then levers, and something gives that should not.
Fasteners hold the item they are `on`, as long as they are tight; plugs, which `drains` or `fills` tell, and fasteners
that are `untouched` hold nothing.
They are loosened or removed before, or together with it in one action, on the same machines and on every way through
the job.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  cover: {name: cover of the drop box}
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  cover-bolts: {name: cover bolts, count: 6, thread: M8 x 1.25, on: cover, tightened: By hand.}
```
```yaml procedure
sections:
  - title: Cover
    steps:
      - step: Loosen the [cover-bolts].
        when: {brake: drum}
        with: [spanner]
        do:
          - loosen: cover-bolts
      - step: Remove the [cover].
        do:
          - remove: cover   #! removed-while-held
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  cover: {name: cover of the drop box}
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  cover-bolts: {name: cover bolts, count: 6, thread: M8 x 1.25, on: cover, tightened: By hand.}
```
```yaml procedure
sections:
  - title: Cover
    steps:
      - step: Loosen the [cover-bolts].
        with: [spanner]
        do:
          - loosen: cover-bolts
      - step: Remove the [cover].
        do:
          - remove: cover
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.on_and_off import TAKES_OFF
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup, Item
from authoring.proof.brought import brought
from authoring.proof.holders import holders
from authoring.proof.job import Job, job_of
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N5",)
ABOUT = ("fastened",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each item that comes off some machine, on some way, while fasteners hold it."""
    job = job_of(procedure, library)
    equipment = library.scope(procedure).equipment
    if job is None or equipment is None:
        return
    asked: dict[str, list[Point]] = {}
    for point in job.track.points:
        if point.action is not None and point.action.kind.name in TAKES_OFF:
            for name in point.action.what:
                asked.setdefault(name, []).append(point)
    for name, points in asked.items():
        if name in equipment.items:
            for group in holders(name, equipment):
                mine = [point for point in points if not _takes(point, group)]
                yield from _held(equipment.items[name], group, mine, job)


def _takes(point: Point, group: FastenerGroup) -> bool:
    """Tell whether the same action takes the fasteners off as well."""
    return point.action is not None and group.id in point.action.what


def _held(item: Item, group: FastenerGroup, points: Sequence[Point], job: Job) -> Iterator[Fault]:
    tells: Side = (group.id, "where")
    new = brought(group, job)
    story = job.story([tells], points, [item.when, group.when, *new])
    if story is None:
        return
    there = story.space.where(item.when) & story.space.where(group.when)
    for point in points:
        bad: Gathered[None] = Gathered()
        for held in story.before(point):
            now = held.settings[tells]
            if now.state == "tight" and not told_by_itself(point, [now]):
                cells = held.cells & there
                bad.note(None, held, cells if now.by is not None else cells & ~story.space.either(new))
        for _, held, cells in bad.each():
            yield fault(
                f'"{item.id}" comes off while its fasteners "{group.id}" are tight',
                span_of(point, item.id),
                f'Loosen or remove "{group.id}" before; if it is a plug, say which fluid it "drains" or "fills".',
                (job, story, cells, held.path),
            )
