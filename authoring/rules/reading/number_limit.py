"""A number cannot be kept as it is written.

It has more digits than anything that is measured, or it is not finite; it would be printed as another number.

Wrong:

```yaml procedure
persons: .inf   #! number-limit
```

Right:

```yaml procedure
persons: 2
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("I2",)
