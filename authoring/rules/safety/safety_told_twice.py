"""A step repeats a safety message that its section gives already.

Said twice within a page, a message is skipped both times, and so is the next one.
A message of the section stands before every step of it.
One that holds for the whole job may well be repeated at the step where it bites.

Wrong:

```yaml procedure
sections:
  - title: Wipe
    safety: [hot-pipe]
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        safety: [hot-pipe]   #! safety-told-twice
        with: [rag]
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Wipe
    safety: [hot-pipe]
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("S3",)


def check(procedure: Procedure, _: Library) -> Iterator[Fault]:
    """Yield a fault for each message listed both at a section and at a step of it."""
    for section, step in procedure.steps():
        for place, name in enumerate(step.safety):
            if name in section.safety:
                yield Fault(
                    f'The safety message "{name}" is given for the whole section already.',
                    step.where.of("safety", place),
                    "List it at the section or at the step that it guards, not at both.",
                    (Related(section.where.of("safety", section.safety.index(name)), "given here"),),
                )
