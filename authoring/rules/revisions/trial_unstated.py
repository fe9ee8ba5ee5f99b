"""Whether somebody tried the procedure on a machine is left unsaid.

A procedure that was only read at a desk prints NOT VALIDATED, and that is an honest answer.
Saying nothing is none: the record of the trial, or the word none, has to stand there.

Wrong:

```yaml procedure without trial
procedure: FL-110   #! trial-unstated
```

Right:

```yaml procedure
trial: {date: 2026-03-20, by: tobi, on: Hob number 7, result: Done as written.}
```

Or that there was none.

```yaml procedure
trial: none
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.stated import stated
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("C4",)


def check(procedure: Procedure, _: Library) -> Iterator[Fault]:
    """Yield a fault when the procedure says nothing about a trial."""
    if not stated(procedure.where, "trial"):
        yield Fault(
            "The procedure does not state whether it was tried on a machine.",
            procedure.where.key("procedure"),
            'Add "trial:" with date, by, on and result, or the word none.',
        )
