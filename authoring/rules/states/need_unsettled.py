"""A step needs a state, and nothing says how the thing comes to be in it.

The booklet asks for it at the step, where the apprentice can only find that it is not so.
What a step or section needs was brought about by a step before, on every machine and way through the job, or the
procedure needs it from the beginning, and then its first page asks for it.
The machine comes whole: what must be off, open, drained or cut off has to be taken off, opened, drained or cut off.
Temperatures are asked about elsewhere (`temperature-unmeasured`).

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  engine: {name: engine}
  lid: {name: lid}
```
```yaml procedure
sections:
  - title: Wipe
    needs: {engine: stopped}   #! need-unsettled
    steps:
      - step: Clean the [drop-box].
        needs: {lid: open}   #! need-unsettled
        do:
          - clean: drop-box
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  engine: {name: engine}
  lid: {name: lid}
```
```yaml procedure
needs: {engine: stopped}
sections:
  - title: Wipe
    needs: {engine: stopped}
    steps:
      - step: Open the [lid].
        do:
          - open: lid
      - step: Clean the [drop-box].
        needs: {lid: open}
        do:
          - clean: drop-box
      - step: Close the [lid].
        do:
          - close: lid
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.demands import Need
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.proof.against import can_be_contradicted, changed_last
from authoring.proof.job import Job, job_of
from authoring.proof.settings import sides_of
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault
from authoring.rules.rule import Fault

# A condition in a sentence may say it, which no rule can read.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("V3", "N11")
ABOUT = ("need",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for the first place of each need that some machine may come to with nobody knowing."""
    job = job_of(procedure, library)
    if job is None:
        return
    told: set[tuple[str, str]] = set()
    for point in job.track.points:
        for need in point.needs if point.own else ():
            if (need.thing, need.state) not in told and can_be_contradicted(need, job.scope):
                faults = list(_unsettled(point, need, job))
                told |= {(need.thing, need.state) for _ in faults}
                yield from faults


def _unsettled(point: Point, need: Need, job: Job) -> Iterator[Fault]:
    sides: tuple[Side, ...] = sides_of(need, job.scope)
    story = job.story(sides, [point])
    if story is None:
        return
    bad: Gathered[str] = Gathered()
    for held in story.before(point):
        last = changed_last(held.settings, sides)
        if last.by is None and last.state != need.state:
            bad.note(last.state, held, held.cells)
    for state, held, cells in bad.each():
        comes = f"the machine comes with it {state}" if state else "nothing says how it is"
        yield fault(
            f'"{need.thing}" must be {need.state.replace("-", " ")} here, but {comes}',
            need.where.key(need.thing),
            f'Add a step before that brings "{need.thing}" into this state, or say it under "needs" of the procedure.',
            (job, story, cells, held.path),
        )
