"""A file does not say what it holds.

Each file of a library begins with what it is: `shop`, `stock`, `equipment` or `procedure`.
Without that key nobody can tell what the rest should look like, so nothing of it is checked.

Wrong:

```yaml other
title: Clean the drop box   #! unknown-kind-of-file
```

Right:

```yaml procedure
procedure: FL-112
title: Check the oil level of the drop box
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("A6",)
