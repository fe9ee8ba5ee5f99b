"""The calendar has no such day.

A date that cannot be is a slip of the finger, and nobody can tell afterwards which day was meant.

Wrong:

```yaml procedure
revisions:
  - {revision: A, date: 2026-02-31, author: mara, approver: tobi, reason: First issue.}   #! impossible-date
```

Right:

```yaml procedure
revisions:
  - {revision: A, date: 2028-02-29, author: mara, approver: tobi, reason: First issue.}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.dates import day
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("C1",)


def check(procedure: Procedure, _: Library) -> Iterator[Fault]:
    """Yield a fault for each date of a revision or trial that is on no calendar."""
    dated = [(one.date, one.where) for one in procedure.revisions]
    if procedure.trial is not None:
        dated.append((procedure.trial.date, procedure.trial.where))
    for date, where in dated:
        if day(date) is None:
            yield Fault(f"There is no day {date}.", where.of("date"), "Write the day as year-month-day.")
