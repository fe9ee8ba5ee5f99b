"""A step asks for too much at once.

Who is interrupted after the second of four acts ticks the step, or does it all again.
A step holds one instruction, or two or three acts that belong together (DOE-STD-1029, from memory).

Wrong:

```yaml procedure
sections:
  - title: Open
    steps:
      - step: Loosen and remove the [level-plug], discard the [plug-ring], clean the [drop-box]. #! several-instructions
        do:
          - loosen: level-plug
          - remove: level-plug
          - discard: plug-ring
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Open
    steps:
      - step: Remove the [level-plug] and discard the [plug-ring].
        do:
          - remove: level-plug
          - discard: plug-ring
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("L1",)

MOST = 3


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each step with more actions than belong together."""
    for _, step in procedure.steps():
        if len(step.actions) > MOST:
            yield Fault(
                f"This step holds {len(step.actions)} actions; {MOST} are the most that belong together.",
                step.where.of("step") if step.written else step.where.span,
                "Make two steps of it.",
            )
