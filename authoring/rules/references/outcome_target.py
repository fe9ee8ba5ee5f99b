"""An outcome does not say where it leads, or says it in vain.

With `do` the reader carries out a procedure and comes back, with `go-to` the reader goes on at a step or section:
both need `to`.
With any other `then` a `to` would be dropped, and the reader would never hear of it.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Inspect the [drop-box].
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It drips., then: go-to}   #! outcome-target
      - step: Clean the [drop-box].
        id: clean-box
        do:
          - clean: drop-box
      - step: Inspect the [drop-box].
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is clean., then: go-on}
                - {found: It is not., then: put-right, to: clean-box, say: Clean it again.}   #! outcome-target
```

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box].
        id: clean-box
        do:
          - clean: drop-box
      - step: Inspect the [drop-box].
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is clean., then: go-on}
                - {found: It is not., then: go-to, to: clean-box, at-most: 2, else: Take another rag.}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Outcome, Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R1", "R3")

_LEADS_TO = {
    "do": ("which procedure", '"to: " and the procedure\'s number, such as to: FL-120'),
    "go-to": ("which step", '"to: " and the id of a step or section'),
}


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each outcome that lacks its target, or has one that nobody follows."""
    for _, step in procedure.steps():
        for action in step.actions:
            for outcome in action.outcomes:
                yield from _fault(outcome)


def _fault(outcome: Outcome) -> Iterator[Fault]:
    needed = _LEADS_TO.get(outcome.then)
    if needed and outcome.to is None:
        what, add = needed
        yield Fault(f"This outcome does not say {what} follows.", outcome.where.of("then"), f"Add {add}.")
    elif outcome.to is not None and not needed:
        yield Fault(
            f'"{outcome.then}" leads nowhere, so "{outcome.to}" would never be reached.',
            outcome.where.of("to"),
            'Take "to" out, or write then: go-to for a step, then: do for a procedure.',
        )
