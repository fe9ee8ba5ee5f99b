"""A value does not have the form that its key takes.

It is not one of the words that are allowed, is out of range, or is not written in the form of a date, a number
of a procedure or a short name.

Wrong:

```yaml procedure
revisions:
  - {revision: A, date: 14.03.2026, author: mara, approver: tobi, reason: First issue.}   #! wrong-value
```

Right:

```yaml procedure
revisions:
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("A1",)
