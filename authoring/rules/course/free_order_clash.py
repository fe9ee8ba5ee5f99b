"""Two steps that may be done in any order do not bear it.

Where the order is free, two people begin at two ends: one tightens what the other has yet to look at.
In a section with `order: any`, no two steps for the same vehicles act on one thing that one of them leaves otherwise
than it found it, none changes what another needs to be in a state, and none depends on whether another was done.
To look at a thing, to mark it or to clean it is no change, nor is to open it and to close it again in the same step.
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
from authoring.model.ends import ends
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Section, Step
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("L9",)
ABOUT = ("free-order",)

_TURNS = frozenset({"align", "bleed", "ease", "heat"})
"""Actions that change something of a thing that no state tells."""


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
        changed, theirs = _changed(one), _changed(two)
        acted_on = {name for action in two.actions for name in action.what}
        both = [name for name in changed if name in acted_on and changed[name] != theirs.get(name)]
        if both:
            return f'one of two steps changes "{both[0]}" and both act on it'
        needed = [need.thing for need in two.needs if need.thing in changed]
        if needed:
            return f'one step changes "{needed[0]}" and another needs it as it was'
        named = {*one.if_done, *one.unless_done, *([one.deadline.start] if one.deadline is not None else [])}
        if two.id in named:
            return "one step depends on whether another was done"
    return ""


def _changed(step: Step) -> dict[str, frozenset[str]]:
    """Return the things that a step leaves otherwise than it found them, each with how; what differs is never equal."""
    found: dict[str, frozenset[str]] = {}
    for (thing, _), end in ends(step.actions, step.leaves).items():
        found[thing] = found.get(thing, frozenset()) | {end.state}
    for action in step.actions:
        if action.kind.name in _TURNS:
            found |= {thing: frozenset({step.id}) for thing in action.what}
    return found


def _place(step: Step) -> Span:
    return step.where.of("step") if step.written else step.where.span
