"""An amount is poured into what nothing drained, or whose level was set already.

A box that gets its oil on top of the old froths, and pushes it past the seals.
A machine comes full, and it is full again once a `top-up` or a `fill-to-level` has set the level.
Before a `fill` the fluid is drained, or some of it drawn out, on every machine and way through the job; where several
fluids are `in` one item, to drain one of them drains all.
What says that it `mixes-with` another one in the same item, such as an additive, may come to what was never drained;
what may be poured on another kind is for `fluids-mixed` to tell.
On the machines and ways of which this is told, `fills-do-not-add-up` says nothing of the amount.

Wrong:

```yaml procedure
values:
  refill: {name: refill amount, value: 0.3 L, source: bench-book, at: page 9}
sections:
  - title: Fill
    steps:
      - step: Pour in [refill] of [box-oil].
        do:
          - fill: {what: box-oil, amount: refill}   #! filled-when-full
```

Right:

```yaml equipment
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, disposal: used-oil tank}
```
```yaml procedure
values:
  refill: {name: refill amount, value: 0.3 L, source: bench-book, at: page 9}
sections:
  - title: Fill
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
from authoring.proof.full import poured_when_full, pourings, story_of_level
from authoring.proof.job import Job, job_of
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N6",)
ABOUT = ("fluid-moved", "carried-out")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each amount that is poured into what is full on some machine and way."""
    equipment = library.scope(procedure).equipment
    job = job_of(procedure, library) if equipment is not None and equipment.fluids else None
    if equipment is not None and job is not None:
        for fluid in equipment.fluids.values():
            if pourings(fluid, job):
                yield from _poured(fluid, equipment, job)


def _poured(fluid: Fluid, equipment: Equipment, job: Job) -> Iterator[Fault]:
    story = story_of_level(fluid, equipment, job)
    if story is None:
        return
    bad: Gathered[tuple[Point, str]] = Gathered()
    for one in poured_when_full(fluid, equipment, job, story):
        if not told_by_itself(one.point, [one.since]):
            words = "after its level was set" if isinstance(one.since.by, Point) else "without having been drained"
            bad.note((one.point, words), one.held, one.cells)
    for (point, words), held, cells in bad.each():
        yield fault(
            f'An amount of "{fluid.id}" is poured in {words}',
            span_of(point, fluid.id),
            f'Drain "{fluid.id}" in a step before, or bring it to its level with "top-up" or "fill-to-level".',
            (job, story, cells, held.path),
        )
