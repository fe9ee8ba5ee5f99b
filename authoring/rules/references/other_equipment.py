"""A procedure for other equipment is carried out.

Its items, torques and fluids are those of another machine; on this one they are wrong, or are not there at all.
Pointing to such a procedure in a text is lawful, carrying it out as a part of the job is not.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Carry out [FL-210].
        do:
          - carry-out: FL-210   #! other-equipment
```

```yaml other
procedure: FL-210
title: Clean the bucket
equipment: thyme
job: Dirt hides a crack.
audience: Apprentice in the second year, under a technician.
persons: 1
time: 10 min
conditions: none
hazards: none
sections:
  - title: Clean
    steps:
      - step: Clean the [bucket].
        do:
          - clean: bucket
trial: none
revisions:
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```

```yaml other-equipment
equipment: thyme
name: Thyme yard loader
items:
  bucket: {name: bucket}
```

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box].
        tip: The loader has its own, [FL-210].
        do:
          - clean: drop-box
```

```yaml other
procedure: FL-210
title: Clean the bucket
equipment: thyme
job: Dirt hides a crack.
audience: Apprentice in the second year, under a technician.
persons: 1
time: 10 min
conditions: none
hazards: none
sections:
  - title: Clean
    steps:
      - step: Clean the [bucket].
        do:
          - clean: bucket
trial: none
revisions:
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```

```yaml other-equipment
equipment: thyme
name: Thyme yard loader
items:
  bucket: {name: bucket}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.calls import calls
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R1", "R2")
ABOUT = ("carried-out",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each procedure that is carried out and is not for this procedure's equipment."""
    for mention in calls(procedure, library):
        other = library.procedures.get(mention.name)
        if other is None or other.equipment == procedure.equipment:
            continue
        yield Fault(
            f'{other.number} is a procedure for "{other.equipment}", but this one works on "{procedure.equipment}".',
            mention.span,
            "Carry out a procedure for the same equipment, or write one.",
            (Related(other.where.of("equipment"), "the equipment it is for"),),
        )
