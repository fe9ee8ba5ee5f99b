"""A quantity cannot be read without guessing.

A number without a unit, a unit that means two things, a window that is upside down: each has been misread at a bench.
The message says what may be meant, and how to write that.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 Nn, source: plate, at: line 4}   #! bad-quantity
```

A unit of the shop must measure what it stands for.

```yaml shop
units:
  torque: [N·m, mm]   #! bad-quantity
  length: [mm, in]
  volume: [L, US qt]
  temperature: [°C, °F]
  time: [min]
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 Nm, source: plate, at: line 4}
```
"""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity

SEVERITY = Severity.ERROR
REQUIREMENTS: tuple[str, ...] = ("T1", "N13")
