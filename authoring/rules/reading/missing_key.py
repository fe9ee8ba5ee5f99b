"""A key that must be there is missing.

The message says what the key is for.
What a booklet cannot do without is asked of the author, and never guessed.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box].   #! missing-key
```

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("A6",)
