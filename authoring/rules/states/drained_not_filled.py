"""A fluid is drained, and nothing fills it again.

A box that comes back dry looks like one that is full, and seizes on the first road.
What is drained or drawn out is filled again on every machine and way through the job: by the fluid itself, or by
another one that the equipment holds `in` the same item.
Nothing is asked where the procedure says under `leaves` that the fluid stays drained, or under `needs` that it comes
so, where a modification leaves it out or replaces it, and where the job is stopped.

Wrong:

```yaml equipment
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, disposal: used-oil tank}
```
```yaml procedure
values:
  refill: {name: refill amount, value: 1.1 L, source: bench-book, at: page 9}
sections:
  - title: Change the oil
    steps:
      - step: Drain the [box-oil].
        do:
          - drain: box-oil   #! drained-not-filled
      - step: Pour in [refill] of [box-oil].
        when: {brake: drum}
        do:
          - fill: {what: box-oil, amount: refill}
```

Right:

```yaml equipment
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, disposal: used-oil tank}
```
```yaml procedure
values:
  refill: {name: refill amount, value: 1.1 L, source: bench-book, at: page 9}
sections:
  - title: Change the oil
    steps:
      - step: Drain the [box-oil].
        do:
          - drain: box-oil
      - step: Pour in [refill] of [box-oil].
        do:
          - fill: {what: box-oil, amount: refill}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.fluid import Fluid
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import Equipment
from authoring.proof.housing import filled_with
from authoring.proof.job import Job, job_of
from authoring.proof.settled import left_out, left_so, passed_on
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N6",)
ABOUT = ("fluid-moved", "carried-out")

_DRAINED = frozenset({"drained"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each fluid that some machine is left without, on some way through the job."""
    equipment = library.scope(procedure).equipment
    job = job_of(procedure, library) if equipment is not None and equipment.fluids else None
    if equipment is not None and job is not None:
        for fluid in equipment.fluids.values():
            if fluid.id in job.track.naming and not left_so(fluid.id, _DRAINED, job):
                yield from _of_fluid(fluid, equipment, job)


def _of_fluid(fluid: Fluid, equipment: Equipment, job: Job) -> Iterator[Fault]:
    gone = left_out(fluid.id, job)
    story = job.story([(fluid.id, "fluid")], (), [fluid.when, *gone], filled_with(fluid, equipment))
    if story is None:
        return
    there = story.space.where(fluid.when) & ~story.space.either(gone)
    bad: Gathered[Point] = Gathered()
    for held in story.at_the_end():
        setting = held.settings[fluid.id, "fluid"]
        if setting.state == "drained" and isinstance(setting.by, Point) and passed_on(fluid.id, _DRAINED, setting.by):
            bad.note(setting.by, held, held.cells & there)
    for point, held, cells in bad.each():
        yield fault(
            f'"{fluid.id}" is drained here and is never filled again',
            span_of(point, fluid.id),
            f'Fill "{fluid.id}", or what comes in its place in the same item, in a later step, or say under "leaves" '
            "of the procedure that it stays drained.",
            (job, story, cells, held.path),
        )
