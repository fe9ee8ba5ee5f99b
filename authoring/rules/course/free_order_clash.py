"""Two steps that may be done in any order do not bear it.

Where the order is free, two people begin at two ends: one tightens what the other has yet to look at.
In a section with `order: any`, no two steps for the same vehicles act on one thing of which one changes the state,
none changes what another needs to be in a state, and none depends on whether another was done.
To look at a thing, to mark it or to clean it is no change of state.
(Free order only for what may be swapped: NUREG-0899, from memory.)

Wrong:

```yaml procedure
sections:
  - title: Round
    order: any
    steps:
      - step: Open the [drop-box].
        do:
          - open: drop-box
      - step: Wipe the [drop-box] dry with a [rag].   #! free-order-clash
        with: [rag]
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Round
    order: any
    steps:
      - step: Open the [drop-box] and wipe it dry with a [rag].
        with: [rag]
        do:
          - open: drop-box
          - clean: drop-box
      - step: Mark the [level-plug].
        do:
          - mark: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.course import meet, siblings
from authoring.model.library import Library
from authoring.model.procedure import Action, Procedure, Section, Step
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("L9",)

_KEEPS = frozenset({"apply", "carry-out", "clean", "keep", "leave-empty", "mark", "tell", "wait"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each pair of steps in free order that may not be swapped; each step is told of once."""
    for section in procedure.sections:
        if section.free:
            for place, step in enumerate(section.steps):
                yield from _against(step, section, place, procedure, library)


def _against(step: Step, section: Section, place: int, procedure: Procedure, library: Library) -> Iterator[Fault]:
    for other in section.steps[:place]:
        reason = _reason(step, other)
        if reason and not siblings(step, other):
            if not meet(procedure, library, procedure.covers, section.when, step.when, other.when):
                continue
            yield Fault(
                f"The order of this section is free, but {reason}.",
                _place(step),
                'Put both into one step, or take "order: any" out of the section.',
                (Related(_place(other), "the other step"),),
            )
            return


def _reason(step: Step, other: Step) -> str:
    """Return why two steps may not be swapped, or nothing."""
    for one, two in ((step, other), (other, step)):
        changed = _changed(one)
        both = sorted(changed & _acted_on(two))
        if both:
            return f'one of two steps changes "{both[0]}" and both act on it'
        needed = sorted(changed & {need.thing for need in two.needs})
        if needed:
            return f'one step changes "{needed[0]}" and another needs it as it was'
        named = {*one.if_done, *one.unless_done, *([one.deadline.start] if one.deadline is not None else [])}
        if two.id in named:
            return "one step depends on whether another was done"
    return ""


def _changed(step: Step) -> set[str]:
    left = {need.thing for need in step.leaves}
    return left | {name for action in step.actions if _changes(action) for name in action.what}


def _changes(action: Action) -> bool:
    return not action.kind.checkpoint and action.kind.name not in _KEEPS


def _acted_on(step: Step) -> set[str]:
    return {name for action in step.actions for name in action.what}


def _place(step: Step) -> Span:
    return step.where.of("step") if step.written else step.where.span
