"""Somebody approved what they wrote.

Nobody sees their own slip; the second pair of eyes is the point of an approval.
That approver and author differ is this shop's rule; ISO 9001 asks only for an approval.

Wrong:

```yaml procedure
revisions:
  - {revision: A, date: 2026-03-14, author: tobi, approver: tobi, reason: First issue.}   #! approver-is-author
```

Right:

```yaml procedure
revisions:
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("C3",)


def check(procedure: Procedure, _: Library) -> Iterator[Fault]:
    """Yield a fault for each revision approved by its own author."""
    for revision in procedure.revisions:
        if revision.author == revision.approver:
            yield Fault(
                f'Revision {revision.letter} is approved by its own author, "{revision.author}".',
                revision.where.of("approver"),
                "Let somebody else read and approve it.",
                (Related(revision.where.of("author"), "the author"),),
            )
