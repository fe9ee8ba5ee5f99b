"""A step depends on another one that cannot have been done by then.

Whether a later step was done, or one of another vehicle, nobody can say yet, so the reader guesses.
What stands under `if-done`, `unless-done` and `deadline` is a step before this one,
or one that a way back or a repetition has led through, and some vehicle has both.

Wrong:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        if-done: [mark-box]   #! step-not-yet-done
        with: [rag]
        do:
          - clean: drop-box
      - id: mark-box
        step: Mark the [drop-box].
        when: {brake: drum}
        do:
          - mark: drop-box
      - step: Wipe the [drop-box] dry with a [rag].
        when: {brake: disc}
        unless-done: [mark-box]   #! step-not-yet-done
        with: [rag]
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - id: mark-box
        step: Mark the [drop-box].
        when: {brake: drum}
        do:
          - mark: drop-box
      - step: Wipe the [drop-box] dry with a [rag].
        if-done: [mark-box]
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.course import Target, meet, seen, siblings, targets
from authoring.model.fitments import together
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Step
from authoring.rules.rule import Fault
from authoring.source.document import Where

SEVERITY = Severity.ERROR
REQUIREMENTS = ("L8", "R1", "N11")
ABOUT = ("after-a-step",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each step that another depends on and that cannot have been done before it."""
    known = targets(procedure)
    loops: list[tuple[int, int]] | None = None
    for place, (section, step) in enumerate(procedure.steps()):
        for name, where, keys in _names(step):
            target = known.get(name)
            if target is None or target.step is None:
                continue  # an unknown name is told elsewhere, and so is one that is no step
            loops = list(_loops(procedure, known)) if loops is None else loops
            reason = "" if _round(place, target.first, loops) else _reason(step, place, target)
            when = together(procedure.covers, section.when, step.when)
            if not reason and not meet(procedure, library, when, target.when):
                reason = "is for other vehicles only"
            if reason:
                yield Fault(
                    f'The step "{name}" {reason}, so it cannot have been done by now.',
                    where.of(*keys),
                    "Name a step before this one that is for the same vehicles, or move this step behind it.",
                    (Related(target.where.of("id"), "the step that is named"),),
                )


def _names(step: Step) -> Iterator[tuple[str, Where, tuple[str | int, ...]]]:
    """Yield (name, where, keys) for each step that a step depends on."""
    for key, names in (("if-done", step.if_done), ("unless-done", step.unless_done)):
        for place, name in enumerate(names):
            yield name, step.where, (key, place)
    if step.deadline is not None:
        yield step.deadline.start, step.deadline.where, ("from",)


def _reason(step: Step, place: int, target: Target) -> str:
    if target.step is step:
        return "is this step itself"
    if target.step is not None and siblings(step, target.step):
        return "is another method of this step, of which only one is done"
    return "comes later" if target.first > place else ""


def _loops(procedure: Procedure, known: dict[str, Target]) -> Iterator[tuple[int, int]]:
    """Yield (first, last) for each run of steps that may be gone through again."""
    for one in seen(procedure):
        target = known.get(one.outcome.to or "") if one.outcome.then == "go-to" else None
        if target is not None:
            yield target.first, one.last
    place = 0
    for section in procedure.sections:
        if section.repeat is not None:
            yield place, place + len(section.steps) - 1
        for step in section.steps:
            if step.repeat is not None:
                yield place, place
            place += 1


def _round(place: int, target: int, loops: Sequence[tuple[int, int]]) -> bool:
    """Tell whether some way back begins at the target or later and leads to the step or before it."""
    return any(first <= place and target <= last for first, last in loops)
