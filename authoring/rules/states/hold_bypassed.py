"""A way through the job leads past a hold point.

Nobody may go on until a hold point is met, and an outcome of an earlier checkpoint leads on behind it.
On every machine and way that has the step of a hold point, the job ends only after it was passed; a job that is
stopped does not end.
So it is with a step that carries out a procedure in which there are hold points.
A step or section that may be skipped is another matter (`optional-hold`).

Wrong:

```yaml procedure
sections:
  - title: Look
    steps:
      - step: Look at the [drop-box].
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is wet., then: go-on}
                - {found: It is dry., then: go-to, to: wipe}
      - step: Look at the [level-plug].
        do:
          - inspect:   #! hold-bypassed
              what: level-plug
              hold: true
              outcomes:
                - {found: It is tight., then: go-on}
                - {found: It is loose., then: stop, say: Ask the workshop lead.}
        why: A loose plug loses the oil.
      - id: wipe
        step: Clean the [drop-box].
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Look
    steps:
      - step: Look at the [drop-box].
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is wet., then: go-on}
                - {found: It is dry., then: go-to, to: plug}
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
      - id: plug
        step: Look at the [level-plug].
        do:
          - inspect:
              what: level-plug
              hold: true
              outcomes:
                - {found: It is tight., then: go-on}
                - {found: It is loose., then: stop, say: Ask the workshop lead.}
        why: A loose plug loses the oil.
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.proof.job import Job, job_of
from authoring.proof.settings import PASSED
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N8", "H1")
ABOUT = ("hold-point",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each hold point that some way through the job leads past."""
    job = job_of(procedure, library)
    if job is not None:
        holding = _carrying(job)
        for point in job.track.points:
            if point.own and point.action is not None and (point.action.hold or point.number in holding):
                yield from _bypassed(point, job)


def _carrying(job: Job) -> frozenset[int]:
    """Return the numbers of the job's own points that carry out a procedure with a hold point, at any depth."""
    holding = set()
    last = -1
    for point in job.track.points:
        if point.own:
            last = point.number if point.does == "carry-out" else -1
        elif last >= 0 and point.action is not None and point.action.hold:
            holding.add(last)
    return frozenset(holding)


def _bypassed(point: Point, job: Job) -> Iterator[Fault]:
    story = job.story((), passing=[point])
    if story is None or point.action is None:
        return
    bad: Gathered[None] = Gathered()
    for held in story.at_the_end():
        if not held.settings[PASSED].state:
            bad.note(None, held, story.due(point, held))
    what = "this hold point" if point.action.hold else "the hold points of what is carried out here"
    for _, held, cells in bad.each():
        yield fault(
            f"The job can end without {what}",
            point.action.where.span,
            "Let what leads past it lead to it instead, or stop there; or put the hold point before the ways part.",
            (job, story, cells, held.path),
        )
