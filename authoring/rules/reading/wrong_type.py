"""A value is of another kind than its key takes.

A text stands where a list belongs, or a number where a text does.
A short name that happens to be a number or a yes goes into quotes.

Wrong:

```yaml procedure
title: 120   #! wrong-type
```

Right:

```yaml procedure
title: "120"
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("A1",)
