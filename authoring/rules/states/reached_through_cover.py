"""A hand must reach what still lies under a cover.

The apprentice stands before a bolt that cannot be got at, and takes off whatever seems to be in the way.
What an item `covers`, and all that is part of that, is reached only once the item is off or open, on every machine
and way through the job.
What lies on the bench is under no cover; what goes back to its place needs that place to be free.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  guard: {name: guard, covers: [level-plug]}
```
```yaml procedure
sections:
  - title: Plug
    steps:
      - step: Remove the [guard].
        when: {brake: drum}
        do:
          - remove: guard
      - step: Loosen the [level-plug].
        with: [spanner]
        do:
          - loosen: level-plug   #! reached-through-cover
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug   #! reached-through-cover
      - step: Fit the [guard].
        when: {brake: drum}
        do:
          - fit: guard
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  guard: {name: guard, covers: [level-plug]}
```
```yaml procedure
sections:
  - title: Plug
    steps:
      - step: Remove the [guard].
        do:
          - remove: guard
      - step: Loosen the [level-plug].
        with: [spanner]
        do:
          - loosen: level-plug
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug
      - step: Fit the [guard].
        do:
          - fit: guard
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.fitments import together
from authoring.model.library import Library
from authoring.model.procedure import Action, Procedure
from authoring.model.specification import When
from authoring.model.things import FastenerGroup, Item
from authoring.proof.covers import Covered, covers_of, reached
from authoring.proof.job import Job, job_of
from authoring.proof.settings import there
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N5",)
ABOUT = ("covered",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that is reached through a cover on some machine and way."""
    equipment = library.scope(procedure).equipment
    if equipment is None or not any(item.covers for item in equipment.items.values()):
        return
    job = job_of(procedure, library)
    if job is None:
        return
    asked: dict[Covered, dict[Point, Action]] = {}
    for point in job.track.points:
        if point.action is not None:
            for thing in _things(point.action, job):
                for one in covers_of(thing, job.scope):
                    asked.setdefault(one, {})[point] = point.action
    for one, points in asked.items():
        whens = together(equipment.items[one.cover].when, there(one.thing, job.scope))
        yield from _reached(one, whens, points, job)


def _things(action: Action, job: Job) -> Iterator[str]:
    """Yield the items and fasteners of the machine that the hands reach for an action."""
    for name in dict.fromkeys(name for _, name in reached(action)):
        named = job.scope.things.get(name)
        if named is not None and isinstance(named.thing, Item | FastenerGroup):
            yield name


def _reached(one: Covered, both: When, points: dict[Point, Action], job: Job) -> Iterator[Fault]:
    story = job.story(one.sides(job.scope), points, [both])
    if story is None:
        return
    for point, action in points.items():
        bad: Gathered[None] = Gathered()
        for held in story.before(point):
            now = held.settings
            left = [now[one.cover, "where"], now[one.cover, "lid"], now[one.thing, "where"]]
            if one.in_the_way(action, job.scope, now) and not told_by_itself(point, left):
                bad.note(None, held, held.cells & story.space.where(both))
        for _, held, cells in bad.each():
            yield fault(
                f'"{one.thing}" is reached while "{one.cover}", which covers it, is on',
                span_of(point, one.thing),
                f'Take "{one.cover}" off or open it in a step before, or let this step come before it goes back on'
                + (', or say under "at" where it is seen through.' if "at" in action.kind.roles else "."),
                (job, story, cells, held.path),
            )
