"""A step is there for some machine, and no way through the job leads to it.

What nobody comes to is left out in silence, be it a cover that goes back on or a check.
Each outcome of a checkpoint before it leads elsewhere, or stops the job.
Where all of them stop the job, `way-out-missing` tells it at the checkpoint.

Wrong:

```yaml procedure
sections:
  - title: Look
    steps:
      - step: Look at the [drop-box].
        when: {brake: drum}
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is wet., then: stop, say: Ask the workshop lead.}
                - {found: It is dry., then: go-to, to: mark}
      - step: Clean the [drop-box].   #! never-reached
        do:
          - clean: drop-box
      - id: mark
        step: Mark the [drop-box].
        do:
          - mark: drop-box
```

Right:

```yaml procedure
sections:
  - title: Look
    steps:
      - step: Look at the [drop-box].
        when: {brake: drum}
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is wet., then: stop, say: Ask the workshop lead.}
                - {found: It is dry., then: go-on}
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.procedure import Action, Procedure, Step
from authoring.proof.job import Job, job_of
from authoring.proof.track import Point
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N11",)
ABOUT = ("outcome",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for the first step that some machine never comes to."""
    job = job_of(procedure, library)
    if job is not None and not all(fork.whoever for fork in job.track.forks):
        yield from list(_unreached(job))[:1]


def _unreached(job: Job) -> Iterator[Fault]:
    begins: dict[Step, Point] = {}
    for point in job.track.points:
        if point.own and point.step is not None:
            begins.setdefault(point.step, point)
    story = job.story((), begins.values())
    if story is None:
        return
    for step, point in begins.items():
        reached = 0
        for held in story.before(point):
            reached |= held.cells
        never = story.done(point) & ~reached
        by = _leading_elsewhere(point, job)
        if never and by is not None:
            shown = job.ways.shown(never, story.space)
            yield Fault(
                f"No way through the job leads to this step{shown.whom}.",
                step.where.of("step") if step.written else step.where.span,
                "Let an outcome of the checkpoint before it go on, or take the step out.",
                (Related(by.where.span, "no outcome of this leads on"),),
                shown.fitments,
            )


def _leading_elsewhere(point: Point, job: Job) -> Action | None:
    """Return the last checkpoint before a point after which the job does not go on as written, but elsewhere."""
    for fork in reversed(job.track.forks):
        action = job.track.points[fork.source].action
        if fork.source < point.number and not fork.whoever and action is not None:
            return action if any(one.then == "go-to" for one in action.outcomes) else None
    return None
