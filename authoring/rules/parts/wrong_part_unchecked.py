"""A part that looks like another is fitted, and nobody has checked which one it is.

The wrong one goes in as well, and what it then does shows on the road.
Before a choice with `if-wrong`, or with sizes, is fitted, the part in the hand is measured, inspected or compared, on
every machine and way that leads there: once it is in, the next part hides it.
The checkpoint names the choice, or one of its parts.

Wrong:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015, one-time: true}
```

```yaml procedure
choices:
  ring:
    name: ring of the plug
    question: How large is the old ring?
    if-wrong: It goes in as well, and leaks when it is warm.
    parts:
      - part: plug-ring
        when: {brake: drum}
        tell: It is narrow.
      - part: wide-ring
        when: {brake: disc}
        tell: It is wide.
sections:
  - title: Fit the ring
    steps:
      - step: Fit the [ring].
        do:
          - fit: ring   #! wrong-part-unchecked
```

Right:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015, one-time: true}
```

```yaml procedure
choices:
  ring:
    name: ring of the plug
    question: How large is the old ring?
    if-wrong: It goes in as well, and leaks when it is warm.
    parts:
      - part: plug-ring
        when: {brake: drum}
        tell: It is narrow.
      - part: wide-ring
        when: {brake: disc}
        tell: It is wide.
sections:
  - title: Fit the ring
    steps:
      - step: Look at the lip of the new [ring].
        do:
          - inspect:
              what: ring
              outcomes:
                - {found: It is as the table says., then: go-on}
                - {found: It is another one., then: stop}
      - step: Fit the [ring].
        do:
          - fit: ring
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.words import joined
from authoring.model.library import Library
from authoring.model.procedure import Choice, Procedure
from authoring.proof.job import Job, job_of
from authoring.proof.settings import PASSED
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault
from authoring.rules.rule import Fault

# What is seen at a glance may need no step of its own; the author then says why under allow.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N2",)
ABOUT = ("look-alike",)

_CHECKS = frozenset({"measure", "inspect", "compare"})
_FITS = frozenset({"fit", "seat", "hold"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for the first fitting of each choice that some machine reaches without a check."""
    choices = [choice for choice in procedure.choices.values() if _is_like(choice)]
    job = job_of(procedure, library) if choices else None
    if job is not None:
        for choice in choices:
            yield from list(_unchecked(choice, job))[:1]


def _is_like(choice: Choice) -> bool:
    return choice.if_wrong is not None or any(part.sizes or part.stated is not None for part in choice.parts)


def _unchecked(choice: Choice, job: Job) -> Iterator[Fault]:
    names = {choice.id, *(name for part in choice.parts for name in (part.part, *part.equal))}
    checks = [point for point in job.track.points if point.own and point.does in _CHECKS and _names(point, names)]
    fits = [point for point in job.track.points if point.own and point.does in _FITS and _names(point, {choice.id})]
    story = job.story((), fits, passing=checks)
    for point in fits if story is not None else ():
        bad: Gathered[None] = Gathered()
        for held in story.before(point) if story is not None else ():
            passed = held.settings.get(PASSED)
            bad.note(None, held, held.cells if passed is None or not passed.state else 0)
        for _, held, cells in bad.each():
            if point.action is not None and story is not None:
                yield fault(
                    f'"{choice.id}" is fitted here, but nobody has checked before that it is the right one',
                    point.action.where.span,
                    f"Add a step before this one that {_how(choice)}; {_others(choice)} would go in as well.",
                    (job, story, cells, held.path),
                    Severity.WARNING,
                    (Related(choice.where.span, "the parts that look alike"),),
                )


def _names(point: Point, names: set[str]) -> bool:
    return point.action is not None and any(name in names for _, name in point.action.names())


def _how(choice: Choice) -> str:
    deciding = [f"the {one.name}" for one in choice.dimensions.values() if one.decides]
    if deciding:
        return f'measures "{choice.id}" by {joined(deciding, "and")}'
    if any(part.stated is not None for part in choice.parts):
        return f'measures "{choice.id}"'
    return f'measures, inspects or compares "{choice.id}"'


def _others(choice: Choice) -> str:
    return joined([f'"{part.part}"' for part in choice.parts], "or")
