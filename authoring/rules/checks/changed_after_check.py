"""A thing is checked, and changed afterwards in the same step.

What was found no longer holds: the depth was right until the seal was pushed once more, and nobody looks again.
A check changes nothing, and what is done to the same thing in its step stands before it.
Taking the thing off afterwards is no such change, because it was checked as it was.
(Checking and changing apart: DOE-STD-1029, from memory.)

Wrong:

```yaml procedure
sections:
  - title: Top up
    steps:
      - step: Look at the level of the [box-oil], and top it up.
        do:
          - inspect:
              what: box-oil
              outcomes:
                - {found: The oil stands at the edge of the hole., then: go-on}
                - {found: The oil stands lower., then: stop}
          - top-up: box-oil   #! changed-after-check
```

Right:

```yaml procedure
sections:
  - title: Top up
    steps:
      - step: Top up the [box-oil], and look at its level.
        do:
          - top-up: box-oil
          - inspect:
              what: box-oil
              outcomes:
                - {found: The oil stands at the edge of the hole., then: go-on}
                - {found: The oil stands lower., then: stop}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.mentions import touched
from authoring.model.procedure import Action, Procedure, Step
from authoring.rules.rule import Fault

# A check of one thing about a part, such as its thread, is not undone by a change of another, such as its angle.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("L3", "N8")
ABOUT = ("checkpoint",)

_CHANGES = frozenset({"align", "bleed", "fill", "fill-to-level", "heat", "seat", "tighten", "top-up"})
_WAKES = frozenset({"restore", "run"})


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing of a step that is changed after its checkpoint in that step."""
    for _, step in procedure.steps():
        yield from _in_step(step)


def _in_step(step: Step) -> Iterator[Fault]:
    checked: dict[str, Action] = {}
    for action in step.actions:
        if action.kind.checkpoint:
            checked |= dict.fromkeys(action.what, action)
            continue
        for mention in touched(action) if checked else ():
            before = checked.get(mention.name) if mention.role == "what" else None
            if before is not None and _undone(before, action):
                yield Fault(
                    f'"{mention.name}" was checked before in this step, and is changed here.',
                    mention.span,
                    "Put this action before the checkpoint, and say it so in the text.",
                    (Related(before.where.span, "checked here"),),
                )


def _undone(before: Action, action: Action) -> bool:
    name = action.kind.name
    return name in _CHANGES or (before.kind.name == "prove-dead" and name in _WAKES)
