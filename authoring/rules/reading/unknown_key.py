"""A key is not known where it stands.

Nothing is dropped in silence: a key that is mistyped or stands one level too high would simply have no effect,
and a caution under it would not be printed.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box].
        wiht: [rag]   #! unknown-key
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box] with a [rag].
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("A6",)
