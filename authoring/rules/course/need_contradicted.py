"""A step needs a state, and the last thing done before it leaves another one.

Whoever reads "set to free" under a step finds the lever braked by the step above, and one of the two is wrong.
What a step or section `needs` is what the last change of the thing before it leaves, on every machine and way through
the job, ways back and what an outcome leads to among them: set to that position, running or stopped, isolated or live,
open or closed, raised or lowered, on or off, held up or free, drained or filled.
Where nothing was done to the thing before, what the procedure itself needs holds.
What a procedure that is carried out needs as a whole is so when the job comes to it; there, a machine that comes whole
does not do where it needs something off, open or drained.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  lever: {name: release lever, positions: {free: free, braked: braked}}
```
```yaml procedure
sections:
  - title: Fit
    steps:
      - step: Set the [lever] to braked.
        do:
          - set: {what: lever, position: braked}
      - step: Clean the [drop-box].
        needs: {lever: free}   #! need-contradicted
        do:
          - clean: drop-box
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  lever: {name: release lever, positions: {free: free, braked: braked}}
```
```yaml procedure
sections:
  - title: Fit
    steps:
      - step: Set the [lever] to free.
        do:
          - set: {what: lever, position: free}
      - step: Clean the [drop-box].
        needs: {lever: free}
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from msgspec.structs import replace

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.demands import Need
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.space import Cells
from authoring.proof.against import can_be_contradicted, changed_last, contradicts
from authoring.proof.job import Job, job_of
from authoring.proof.settings import Setting, sides_of
from authoring.proof.story import Held, Story
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R2", "N11")
ABOUT = ("need", "carried-out")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each need that some machine does not meet on some way to it."""
    job = job_of(procedure, library)
    if job is None:
        return
    asked: dict[tuple[Side, ...], list[tuple[Point, Need]]] = {}
    for point in job.track.points:
        for need in point.needs:
            if can_be_contradicted(need, job.scope):
                asked.setdefault(sides_of(need, job.scope), []).append((point, need))
    for sides, needs in asked.items():
        yield from _of_sides(sides, needs, job)


def _of_sides(sides: tuple[Side, ...], needs: list[tuple[Point, Need]], job: Job) -> Iterator[Fault]:
    story = job.story(sides, [point for point, _ in needs])
    if story is None:
        return
    for point, need in needs:
        bad: Gathered[Setting] = Gathered()
        for held in story.before(point):
            last = changed_last(held.settings, sides)
            if _is_wrong(last, need, point, job):
                bad.note(last, held, held.cells)
        for last, held, cells in bad.each():
            yield _fault(point, need, last, (job, story, cells, held))


def _is_wrong(last: Setting, need: Need, point: Point, job: Job) -> bool:
    """Tell whether how a thing was left cannot be what is needed, and no other rule or procedure tells it."""
    whole = point.section is None  # what a procedure that is carried out needs, as a whole
    if not whole and (last.by is None or told_by_itself(point, [last])):
        return False
    by = last.by
    if isinstance(by, Point) and point.section is not None and point.section.free and by.section is point.section:
        return False  # the order is free, and another rule tells that it must not be
    return contradicts(last, need, job.scope)


def _fault(point: Point, need: Need, last: Setting, told: tuple[Job, Story, Cells, Held]) -> Fault:
    job, story, cells, held = told
    span = need.where.key(need.thing) if point.own else span_of(point, need.thing)
    one = fault(
        f'{_who(point)} needs "{need.thing}" {_words(need.state)}, but {_leaves(last)} {_words(last.state)}',
        span,
        f'Add a step before that brings "{need.thing}" into this state, or correct one of the two.',
        (job, story, cells, held.path),
    )
    if isinstance(last.by, Need):
        return replace(one, related=(Related(last.by.where.key(last.by.thing), "so at the beginning"), *one.related))
    return one


def _who(point: Point) -> str:
    if not point.own:
        return f"What {point.procedure.number} describes"
    return "The step" if point.step is not None else "The section"


def _leaves(last: Setting) -> str:
    if last.by is None:
        return "the machine comes with it"
    if isinstance(last.by, Need):
        return "the procedure begins with it"
    return f'"{last.by.does}" leaves it' if last.by.does else "a step leaves it"


def _words(state: str) -> str:
    return state.replace("-", " ")
