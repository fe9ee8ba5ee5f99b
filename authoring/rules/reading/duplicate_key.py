"""A key stands twice in one group.

Most programs would keep the second one and say nothing, so that the torque you read is not the one that is printed.

Wrong:

```yaml equipment
fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil of our grade 2
    kind: gear oil of our grade 3   #! duplicate-key
```

Right:

```yaml equipment
fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil of our grade 2
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("I2",)
