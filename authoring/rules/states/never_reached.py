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
from authoring.model.space import Cells
from authoring.proof.job import Job, job_of
from authoring.proof.story import Story
from authoring.proof.track import Point
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N11",)
ABOUT = ("outcome",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each step that some machine is the first to find out of reach."""
    job = job_of(procedure, library)
    if job is not None and not all(fork.whoever for fork in job.track.forks):
        yield from _unreached(job)


def _unreached(job: Job) -> Iterator[Fault]:
    begins: dict[Step, Point] = {}
    for point in job.track.points:
        if point.own and point.step is not None:
            begins.setdefault(point.step, point)
    story = job.story((), begins.values())
    if story is None:
        return
    told = 0
    for step, point in begins.items():
        reached = told
        for held in story.before(point):
            reached |= held.cells
        never = story.done(point) & ~job.ways.on_any_way(reached, story.space)
        told |= never
        by, cells = _leading_elsewhere(point, never, story, job)
        if by is not None and cells:
            shown = job.ways.shown(cells, story.space)
            yield Fault(
                f"No way through the job leads to this step{shown.whom}.",
                step.where.of("step") if step.written else step.where.span,
                "Let an outcome of the checkpoint before it go on, or take the step out.",
                (Related(by.where.span, "no outcome of this leads on"),),
                shown.fitments,
            )


def _leading_elsewhere(point: Point, never: Cells, story: Story, job: Job) -> tuple[Action | None, Cells]:
    """Return the last checkpoint before a point that leads machines of `never` elsewhere, and which of them."""
    for fork in reversed(job.track.forks):
        action = job.track.points[fork.source].action
        if fork.source < point.number and not fork.whoever and action is not None:
            stay = story.space.either(fork.found) & ~story.space.either(fork.onward) & never
            if stay:
                leads = story.space.either(one.when for one in action.outcomes if one.then == "go-to")
                return action, stay & leads
    return None, 0
