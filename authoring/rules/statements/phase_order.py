"""The sections of a job are not in the order of its phases.

A job is prepared, taken apart, done, put together, tested and closed.
A section that comes too late or too early is a section somebody moved, and its conditions no longer hold.
Sections that no vehicle has both of are not compared.

Wrong:

```yaml procedure
sections:
  - title: Put together
    phase: refit
    steps:
      - do: [{start: level-plug}, {tighten: level-plug}]
  - title: Take apart
    phase: remove   #! phase-order
    steps:
      - do: [{remove: level-plug}]
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

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.course import meet
from authoring.model.language.step import PHASES
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A3",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each section whose phase comes before that of the last one above it that its vehicles have."""
    stated = [(section, section.phase) for section in procedure.sections if section.phase is not None]
    for place, (section, phase) in enumerate(stated):
        for above, first in reversed(stated[:place]):
            if not meet(procedure, library, procedure.covers, above.when, section.when):
                continue
            if PHASES.index(phase) < PHASES.index(first):
                yield Fault(
                    f'The phase "{phase}" comes before "{first}", but this section stands behind it.',
                    section.where.of("phase"),
                    f"The order is {', '.join(PHASES)}; move the section, or correct its phase.",
                    (Related(above.where.of("phase"), "the phase above"),),
                )
            break
