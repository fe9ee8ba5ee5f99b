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
from authoring.model.lacking import laid_out, taken_as_all
from authoring.model.language.step import PHASES
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Section
from authoring.model.runs import last_done
from authoring.model.space import Cells
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A3",)
ABOUT = ("phase",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each section whose phase comes before that of the section above it, for some vehicle."""
    vehicle = library.scope(procedure).vehicle
    stated = [section for section in procedure.sections if section.phase is not None]
    if vehicle is None:
        return
    # Where nothing can be said of the vehicles, all sections are taken as for all of them.
    space = laid_out(vehicle, procedure.covers, [section.when for section in stated]) or taken_as_all(vehicle)
    before: list[tuple[Section, Cells]] = []
    for section in stated:
        mine = space.where(section.when)
        above = next((one for one, _ in last_done(before, mine) if one and _place(section) < _place(one)), None)
        before.append((section, mine))
        if above is not None:
            yield Fault(
                f'The phase "{section.phase}" comes before "{above.phase}", but this section stands behind it.',
                section.where.of("phase"),
                f"The order is {', '.join(PHASES)}; move the section, or correct its phase.",
                (Related(above.where.of("phase"), "the phase above"),),
            )


def _place(section: Section) -> int:
    return PHASES.index(section.phase) if section.phase is not None else -1
