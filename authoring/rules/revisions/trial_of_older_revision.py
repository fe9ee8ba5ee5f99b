"""The trial is older than the newest revision.

Somebody did the job from the booklet as it was, and the booklet has changed since.
What changed has been tried by nobody.

Wrong:

```yaml procedure
trial: {date: 2026-03-20, by: mara, on: Hob number 7, result: Done as written.}   #! trial-of-older-revision
revisions:
  - {revision: B, date: 2026-05-02, author: mara, approver: tobi, reason: New torque.}
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```

Right:

```yaml procedure
trial: {date: 2026-05-02, by: mara, on: Hob number 7, result: Done as written.}
revisions:
  - {revision: B, date: 2026-05-02, author: mara, approver: tobi, reason: New torque.}
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.dates import day
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("C4",)
ABOUT = ("trial",)


def check(procedure: Procedure, _: Library) -> Iterator[Fault]:
    """Yield a fault when the newest revision came after the trial; impossible dates are told elsewhere."""
    if procedure.trial is None:
        return
    tried, issued = day(procedure.trial.date), day(procedure.revision.date)
    if tried is not None and issued is not None and tried < issued:
        yield Fault(
            f"The trial of {tried} is no trial of revision {procedure.revision.letter}, which came later.",
            procedure.trial.where.of("date"),
            'Try the new revision on a machine and record that, or write "trial: none".',
            (Related(procedure.revision.where.of("date"), f"revision {procedure.revision.letter}"),),
        )
