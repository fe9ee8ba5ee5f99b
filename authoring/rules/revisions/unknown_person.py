"""Somebody is named whom the shop does not know.

A signature counts only if it is clear whose it is.
Authors, approvers and those who tried the procedure are short names from `people` of the shop file;
people who have left stay there.

Wrong:

```yaml procedure
revisions:
  - {revision: A, date: 2026-03-14, author: maria, approver: tobi, reason: First issue.}   #! unknown-person
```

Right:

```yaml procedure
revisions:
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.nearest import did_you_mean
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("C1", "C3", "C4")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each author, approver and trier who is not among the shop's people."""
    if library.shop is None:
        return  # that the shop file is missing or broken is told already
    people = library.shop.people
    named = [
        (name, one.where, key)
        for one in procedure.revisions
        for key, name in (("author", one.author), ("approver", one.approver))
    ]
    if procedure.trial is not None:
        named.append((procedure.trial.by, procedure.trial.where, "by"))
    for name, where, key in named:
        if name not in people:
            cure = did_you_mean(name, people) or 'Add the person to "people" of the shop file.'
            yield Fault(f'The shop has nobody called "{name}".', where.of(key), cure)
