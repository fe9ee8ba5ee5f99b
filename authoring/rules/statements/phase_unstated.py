"""Some sections say which phase of the job they are, and this one does not.

Phases are for those who come back after a break: they look for where the machine stands.
Either every section states its phase, or none does.

Wrong:

```yaml procedure
sections:
  - title: Take apart
    phase: remove
    steps:
      - do: [{remove: level-plug}]
  - title: Put together   #! phase-unstated
    steps:
      - do: [{start: level-plug}, {tighten: level-plug}]
```

Right:

```yaml procedure
sections:
  - title: Take apart
    phase: remove
    steps:
      - do: [{remove: level-plug}]
  - title: Put together
    phase: refit
    steps:
      - do: [{start: level-plug}, {tighten: level-plug}]
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.language.step import PHASES
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("A3",)
ABOUT = ("phase",)


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each section without a phase in a procedure where another section states one."""
    if any(section.phase is not None for section in procedure.sections):
        for section in procedure.sections:
            if section.phase is None:
                yield Fault(
                    f'The section "{section.title}" does not say which phase of the job it is.',
                    section.where.of("title"),
                    f"Add phase: one of {', '.join(PHASES)}.",
                )
