"""A warning is allowed that no rule gives, or an error is allowed.

What cannot be allowed must be mended, and a misspelt id would let a warning through for a reason that nobody reads.

Wrong:

```yaml procedure
allow:
  - {rule: unused-thin, why: It will be used next month.}   #! unknown-allowance
```

An error.

```yaml procedure
allow:
  - {rule: torque-missing, why: Everybody knows it.}   #! unknown-allowance
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

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N20",)
ABOUT = ("allowance",)
