"""The customer decides an option, and no step asks about it before it counts.

Halfway through the job somebody reads "only with the raised hose", and the customer has gone home.
An option that the customer decides is asked about by an `ask` step before the first step that depends on it, on every
machine and way that leads there; a step that tells the customer of the option, or a condition of the procedure that
names it in brackets, does as well.

Wrong:

```yaml procedure
options:
  wax:   #! option-not-asked
    name: wax on the drop box
    question: Does the machine work near the sea?
    decided-by: customer
    values: {bare: left bare, waxed: waxed}
sections:
  - title: Wipe
    steps:
      - step: Clean the [drop-box].
        when: {wax: waxed}
        do:
          - clean: drop-box
```

Right:

```yaml procedure
options:
  wax:
    name: wax on the drop box
    question: Does the machine work near the sea?
    decided-by: customer
    values: {bare: left bare, waxed: waxed}
sections:
  - title: Wipe
    steps:
      - step: Ask the customer about the [wax].
        do:
          - ask: {what: wax, who: customer}
      - step: Clean the [drop-box].
        when: {wax: waxed}
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.applicability import of_procedure
from authoring.model.brackets import brackets
from authoring.model.changes import Option
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.space import Cells
from authoring.model.ways import Shown
from authoring.proof.job import Job, job_of
from authoring.proof.settings import PASSED
from authoring.proof.story import Held
from authoring.proof.track import Point
from authoring.rules.rule import Fault

# It may have been asked before the machine came in; the author then says so in a condition.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("A1",)
ABOUT = ("option",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each option of the customer's that some machine comes to unasked."""
    options = [one for one in procedure.options.values() if one.decided_by == "customer"]
    job = job_of(procedure, library) if options else None
    if job is None:
        return
    named = {one.name for condition in procedure.conditions or () for one in brackets(condition.so)}
    for option in options:
        if option.id not in named and any(option.id in one.when for one in of_procedure(procedure)):
            yield from list(_unasked(option, job))[:1]


def _unasked(option: Option, job: Job) -> Iterator[Fault]:
    """Yield a fault for each step that depends on an option and may be come to unasked.

    Where only a choice, a value or a modification depends on it, the end of the job stands for the step.
    """
    asking = [point for point in job.track.points if _asks(point, option)]
    depending = [point for point in job.track.points if point.own and point.step and option.id in point.when]
    story = job.story((), depending, passing=asking)
    if story is None:
        return
    for point in depending:
        bad = _bad(story.before(point))
        if bad:
            yield _fault(option, point, asking, job.ways.shown(bad, story.space))
    bad = _bad(story.at_the_end()) if not depending else 0
    if bad:
        yield _fault(option, None, asking, job.ways.shown(bad, story.space))


def _bad(states: Iterator[Held]) -> Cells:
    cells = 0
    for held in states:
        passed = held.settings.get(PASSED)
        cells |= held.cells if passed is None or not passed.state else 0
    return cells


def _asks(point: Point, option: Option) -> bool:
    action = point.action
    if action is None or option.id not in action.what:
        return False
    return point.does == "ask" or (point.does == "tell" and action.details.get("who") == "customer")


def _fault(option: Option, point: Point | None, asking: Sequence[Point], shown: Shown) -> Fault:
    when = " before it counts for some machine" if asking else ""
    depends = () if point is None or point.step is None else (Related(point.step.where.span, "depends on it"),)
    return Fault(
        f'The customer decides the option "{option.id}", but no step asks about it{when}.',
        option.where.span,
        f"Add an earlier step with ask: {{what: {option.id}, who: customer}}.",
        depends,
        shown.fitments,
    )
