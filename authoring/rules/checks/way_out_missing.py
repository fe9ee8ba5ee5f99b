"""A checkpoint does not say what follows when it is met, or when it is not.

An apprentice who finds what the page does not foresee guesses.
A checkpoint has an outcome with which the job goes on, one for what is not as it should be,
and an outcome that is to be put right says how.

Wrong:

```yaml procedure
sections:
  - title: Look
    steps:
      - step: Look at the [level-plug].
        do:
          - inspect: {what: level-plug, outcomes: [{found: It is dry., then: go-on}]}   #! way-out-missing
      - step: Look at the [drop-box].
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: put-right}   #! way-out-missing
```

Right:

```yaml procedure
sections:
  - title: Look
    steps:
      - step: Look at the [level-plug].
        do:
          - inspect:
              what: level-plug
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: put-right, say: Tighten it once more.}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Action, Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R3", "N11")

_ONWARD = frozenset({"go-on", "go-to"})


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each checkpoint that lacks a good or a bad outcome, and for each that says not how."""
    for _, step in procedure.steps():
        for action in step.actions:
            if action.kind.checkpoint:
                yield from _of_checkpoint(action)


def _of_checkpoint(action: Action) -> Iterator[Fault]:
    follows = {outcome.then for outcome in action.outcomes}
    if not follows & _ONWARD:
        yield Fault(
            "This checkpoint has no outcome with which the job goes on.",
            action.where.span,
            "Add an outcome for what is as it should be, with then: go-on.",
        )
    if follows <= {"go-on"}:
        yield Fault(
            "This checkpoint does not say what follows when it is not met.",
            action.where.span,
            "Add an outcome for what is not as it should be: put-right, do, go-to, stop or ask-customer.",
        )
    for outcome in action.outcomes:
        if outcome.then == "put-right" and outcome.say is None:
            yield Fault(
                "This is to be put right, but the reader is not told how.",
                outcome.where.of("then"),
                'Say how under "say".',
            )
