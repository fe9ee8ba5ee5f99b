"""Positions are given for one fastener or two, where they decide nothing.

The order of tightening is worked out of the positions and drawn with them.
One fastener has no order; of two either may be first, so nothing is worked out and nothing drawn.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  stay-bolts:
    name: stay bolts
    count: 2
    thread: M10
    on: drop-box
    positions: {circle: 80 mm, seen-from: behind}   #! positions-of-few
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  stay-bolts:
    name: stay bolts
    count: 2
    thread: M10
    on: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.orders import FEWEST
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T2",)
ABOUT = ("positions",)


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield a fault for each group of one or two fasteners that has positions."""
    for group in equipment.fasteners.values():
        if group.positions is not None and group.count < FEWEST:
            many = "one fastener" if group.count == 1 else f"{group.count} fasteners"
            yield Fault(
                f'"{group.id}" has {many}, and positions decide nothing for so few.',
                group.positions.where.key(),
                'Leave "positions" out, or correct the count.',
            )
