"""A warning is allowed that nothing gives.

An allowance outlives what it was for: the text was mended, or the step went.
It would then let a new fault of the same kind through, with an old reason.

Wrong:

```yaml procedure
allow:
  - {rule: unused-thing, why: It will be used next month.}   #! unused-allowance
```

Right:

```yaml procedure
values:
  next-month: {name: amount of the next job, value: 1 L, source: bench-book, at: page 7}
allow:
  - {rule: unused-thing, why: It will be used next month.}
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.WARNING
REQUIREMENTS = ("N20",)
ABOUT = ("allowance",)
