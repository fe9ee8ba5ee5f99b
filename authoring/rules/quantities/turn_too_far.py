"""The turns after a torque are together further than any that is published.

A 0 too many in 900 ° shears the bolt, and the apprentice counts turns until it does.
A cylinder head is turned by 165° in all (US Army TM 10-3930-669-20, Table E-1), the longest structural bolts by two
thirds of a turn, 240° (RCSC Table 8.2); what is told begins above 270°, three quarters of a turn.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M12
    class: "10.9"
    on: drop-box
    torque: {value: 60 ± 5 N·m, source: plate, at: line 5}
    stages: [60 N·m, 900 °]   #! turn-too-far
    reuse: {is: never}
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
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M12
    class: "10.9"
    on: drop-box
    torque: {value: 60 ± 5 N·m, source: plate, at: line 5}
    stages: [60 N·m, 90 °]
    reuse: {is: never}
```
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.things import Equipment
from authoring.quantities.quantity import Quantity
from authoring.quantities.rounding import down
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault
from authoring.workshop.interval import interval_of

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T2", "N3")
ABOUT = ("angle",)

_FURTHEST_DEGREE = 270


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield a fault for each group whose turns sum to more than three quarters of a turn, at the largest of them."""
    for group in equipment.fasteners.values():
        turns = [(at, _degree(one)) for at, one in enumerate(group.stages) if one.dimension is Dimension.ANGLE]
        whole = sum((degree for _, degree in turns), Fraction(0))
        if whole > _FURTHEST_DEGREE:
            largest, _degrees = max(turns, key=lambda turn: turn[1])
            words = f'"{group.id}" is turned by {down(whole, 0)}° in all'
            yield Fault(
                f"{words}; the furthest that is published is 240°, for long structural bolts (RCSC Table 8.2).",
                group.where.of("stages", largest),
                "Read the angle and its unit in the source once more.",
            )


def _degree(turn: Quantity) -> Fraction:
    """Return the least that a turn may be, or its one limit, in degrees."""
    reach = interval_of(turn)
    return next((end for end in (reach.low, reach.high) if end is not None), Fraction(0))
