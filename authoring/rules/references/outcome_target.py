"""An outcome does not say where it leads, or says it in vain.

With `do` the reader carries out a procedure and comes back, with `go-to` the reader goes on at a step or section:
both need `to`.
With any other `then` a `to` would be dropped, and the reader would never hear of it.
A step or section that some vehicle does not have is no place for it to go on at.
What is noticed unasked leads on in the same way as what a checkpoint shows.

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

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.course import Seen, Target, seen, targets
from authoring.model.lacking import Lack, without
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R1", "R3", "N11")
ABOUT = ("outcome",)

_LEADS_TO = {
    "do": ("which procedure", '"to: " and the procedure\'s number, such as to: FL-120'),
    "do-after": ("which procedure", '"to: " and the procedure\'s number, such as to: FL-120'),
    "go-to": ("which step", '"to: " and the id of a step or section'),
}


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each outcome that lacks its target, or has one that nobody follows or reaches."""
    vehicle = library.scope(procedure).vehicle
    known = targets(procedure)
    for one in seen(procedure):
        yield from _fault(one)
        target = known.get(one.outcome.to) if one.outcome.then == "go-to" and one.outcome.to is not None else None
        if target is not None and vehicle is not None:
            left = without(vehicle, procedure.covers, [one.when], [target.when])
            if left is not None:
                yield _elsewhere(one, target, left)


def _fault(one: Seen) -> Iterator[Fault]:
    outcome = one.outcome
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


def _elsewhere(one: Seen, target: Target, left: Lack) -> Fault:
    return Fault(
        f'This leads to "{one.outcome.to}", which is not there{left.whom}.',
        one.outcome.where.of("to"),
        "Name a step that the same vehicles have, or say with when: for which vehicles this outcome is.",
        (Related(target.where.of("id"), "the target"),),
        left.fitments,
    )
