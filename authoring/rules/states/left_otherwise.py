"""A lever or switch is left in another position than the job found it in.

Who drives off after the job takes the lever to be where it was.
A position that the procedure `needs` at its beginning is the position at its end, on every machine and way through
the job, or the procedure says under `leaves` in which position the thing is left.
It is a warning, since a lever may well stand elsewhere in the yard.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  lever: {name: range lever, positions: {low: low range, neutral: neutral}}
```
```yaml procedure
needs: {lever: low}
sections:
  - title: Clean
    steps:
      - step: Set the [lever] to neutral.
        do:
          - set: {what: lever, position: neutral}   #! left-otherwise
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
      - step: Set the [lever] to low range.
        when: {brake: drum}
        do:
          - set: {what: lever, position: low}
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  lever: {name: range lever, positions: {low: low range, neutral: neutral}}
```
```yaml procedure
needs: {lever: low}
sections:
  - title: Clean
    steps:
      - step: Set the [lever] to neutral.
        do:
          - set: {what: lever, position: neutral}
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
      - step: Set the [lever] to low range.
        do:
          - set: {what: lever, position: low}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.demands import Need
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.proof.against import is_position
from authoring.proof.job import Job, job_of
from authoring.proof.settings import there
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of
from authoring.rules.rule import Fault

# In the yard it may be all the same where the lever stands.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N1", "V3")
ABOUT = ("need",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each position that some machine is found in, and is not left in."""
    scope = library.scope(procedure)
    needed = [need for need in procedure.needs if is_position(need, scope)]
    job = job_of(procedure, library) if needed else None
    if job is not None:
        for need in needed:
            if not _positions_told(need, procedure, job):
                yield from _of_position(need, job)


def _positions_told(need: Need, procedure: Procedure, job: Job) -> bool:
    """Tell whether a procedure says in which position it leaves a thing; if it says a wrong one, another rule tells."""
    return any(one.thing == need.thing and is_position(one, job.scope) for one in procedure.leaves)


def _of_position(need: Need, job: Job) -> Iterator[Fault]:
    side = (need.thing, "position")
    when = there(need.thing, job.scope)
    story = job.story([side], (), [when])
    if story is None:
        return
    bad: Gathered[tuple[Point, str]] = Gathered()
    for held in story.at_the_end():
        now = held.settings[side]
        if isinstance(now.by, Point) and now.state != need.state and not _told_there(need, now.by, job):
            bad.note((now.by, now.state), held, held.cells & story.space.where(when))
    for (point, state), held, cells in bad.each():
        yield fault(
            f'The job begins with "{need.thing}" {need.state}, and it is left {state} here',
            span_of(point, need.thing),
            f'Set "{need.thing}" to {need.state} again in a later step, or state its position under "leaves" of the '
            "procedure.",
            (job, story, cells, held.path),
            beside=(Related(need.where.key(need.thing), "so at the beginning"),),
        )


def _told_there(need: Need, by: Point, job: Job) -> bool:
    """Tell whether a procedure that is carried out begins with it so as well, and so tells it alone."""
    needs = [[one.state for one in inner.needs if one.thing == need.thing] for inner in by.chain[1:]]
    told = [_positions_told(need, inner, job) for inner in by.chain[1:]]
    return any(need.state in states and not said for states, said in zip(needs, told, strict=True))
