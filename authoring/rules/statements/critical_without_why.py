"""A step on which much depends does not say why.

Who knows what a step guards against does it on a Friday afternoon as well; who does not know skips it.
A hold point, and the tightening of a joint of class A, has a reason: `why` at the step, `because` at an action,
or an outcome that says what follows "because" of it.
A reason that stands at the thing itself (`critical`), at a choice (`if-wrong`), or at a step of the same section
that works on the same thing, is read there too and need not be said again.

Wrong:

```yaml procedure
sections:
  - title: Look
    steps:
      - step: Look at the [drop-box].
        do:
          - inspect:
              what: drop-box
              hold: true   #! critical-without-why
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: stop}
```

Right:

```yaml procedure
sections:
  - title: Look
    steps:
      - step: Look at the [drop-box].
        why: Oil that drips here runs onto the brake.
        do:
          - inspect:
              what: drop-box
              hold: true
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: stop}
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library, Scope
from authoring.model.mentions import touched
from authoring.model.procedure import Action, Choice, Procedure, Section, Step
from authoring.model.things import FastenerGroup, Item, Part
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("L6",)

_BECAUSE = re.compile(r"\b(?:because|since|so that|otherwise|or else)\b", re.IGNORECASE)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each hold point, and each tightening of a joint of class A, without a reason."""
    scope = library.scope(procedure)
    for section in procedure.sections:
        reasoned: set[str] | None = None
        for step in section.steps:
            action = next((one for one in step.actions if one.hold or _life_at_risk(one, scope)), None)
            if action is None or _gives_reason(step) or any(_says_itself(name, scope) for name in _named(step)):
                continue
            reasoned = _reasoned(section) if reasoned is None else reasoned
            if reasoned.isdisjoint(action.what):
                yield _fault(action, scope)


def _life_at_risk(action: Action, scope: Scope) -> list[str]:
    """Return the joints of class A that an action tightens."""
    named = [scope.things[name] for name in action.what if name in scope.things] if action.kind.torque else []
    return [one.id for one in named if isinstance(one.thing, FastenerGroup) and one.thing.joint == "A"]


def _fault(action: Action, scope: Scope) -> Fault:
    cure = 'Add "why" to the step: what happens when this is wrong.'
    if action.hold:
        return Fault("Nobody goes on until this is met, but nothing says why.", action.where.of("hold"), cure)
    joint = _life_at_risk(action, scope)[0]
    span = next(mention.span for mention in touched(action) if mention.name == joint)
    return Fault(f'"{joint}" is a joint of class A, but nothing says what hangs on it.', span, cure)


def _gives_reason(step: Step) -> bool:
    if step.why is not None or (step.method is not None and step.method.why is not None):
        return True
    if any(action.manner.because is not None for action in step.actions):
        return True
    said = (outcome.say or "" for action in step.actions for outcome in action.outcomes)
    return any(_BECAUSE.search(text) is not None for text in said)


def _named(step: Step) -> set[str]:
    return {name for action in step.actions for _, name in action.names()}


def _says_itself(name: str, scope: Scope) -> bool:
    named = scope.things.get(name)
    thing = named.thing if named is not None else None
    if isinstance(thing, Choice):
        return thing.if_wrong is not None or any(_says_itself(part.part, scope) for part in thing.parts)
    return isinstance(thing, Item | Part) and thing.critical is not None


def _reasoned(section: Section) -> set[str]:
    return {name for step in section.steps if _gives_reason(step) for action in step.actions for name in action.what}
