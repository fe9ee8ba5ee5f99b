"""A step takes more people than the procedure says.

Who plans the day reads the cover; who stands alone under a carrier of forty kilograms reads the step.
`persons` of the procedure is the most that any of its steps takes: what the step says, two where a helper holds
something meanwhile, and what a procedure that is carried out says.

Wrong:

```yaml procedure
persons: 1
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        persons: 2   #! too-few-persons
        with: [rag]
        do:
          - clean: drop-box
      - step: Wipe the [drop-box] dry with a [rag].
        while: {hold: [drop-box], by: helper}   #! too-few-persons
        with: [rag]
        do:
          - clean: drop-box
```

Right:

```yaml procedure
persons: 2
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        persons: 2
        with: [rag]
        do:
          - clean: drop-box
      - step: Wipe the [drop-box] dry with a [rag].
        while: {hold: [drop-box], by: helper}
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.library import Library
from authoring.model.mentions import touched
from authoring.model.procedure import Procedure, Step
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A4", "N17")

_WITH_HELPER = 2


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each step that takes more people than there are."""
    there = procedure.persons
    if there is None:
        return  # told elsewhere
    for _, step in procedure.steps():
        for takes, span in _takes(step, library):
            if takes > there:
                yield Fault(
                    f"This takes {takes} people, but the procedure is for {there}.",
                    span,
                    f"Write persons: {takes} at the procedure, or do it with fewer.",
                    (Related(procedure.where.of("persons"), "how many the procedure says"),),
                )


def _takes(step: Step, library: Library) -> Iterator[tuple[int, Span]]:
    """Yield (how many people, where that is said) for a step."""
    if step.persons is not None:
        yield step.persons, step.where.of("persons")
    if step.holding is not None and step.holding.by == "helper":
        yield _WITH_HELPER, step.holding.where.of("by")
    for action in step.actions:
        for mention in touched(action) if action.kind.name == "carry-out" else ():
            called = library.procedures.get(mention.name)
            if called is not None and called.persons is not None:
                yield called.persons, mention.span
