"""The length that is clamped is too short or too long for the bolt.

What a turn adds to the clamp force follows from the grip; centimetres taken for millimetres make that ten times wrong.
A grip from 0.3 to 30 times the diameter is left alone, which is common practice: a thin plate under a head, and the
longest through bolts.

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
    grip: {value: 3 mm, source: plate, at: line 9}   #! grip-out-of-range
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
    grip: {value: 30 mm, source: plate, at: line 9}
```
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.things import Equipment
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault
from authoring.workshop.interval import interval_of
from authoring.workshop.metric_thread import metric_thread

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T1", "N3")
ABOUT = ("grip",)

_SHORTEST, _LONGEST = Fraction(3, 10), Fraction(30)
_MM = 1000


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield a fault for each metric group whose grip, at either end, no bolt of its diameter has."""
    for group in equipment.fasteners.values():
        thread, grip = metric_thread(group.thread), group.grip.value if group.grip is not None else None
        if thread is None or group.grip is None or grip is None or grip.dimension is not Dimension.LENGTH:
            continue
        reach = interval_of(grip)
        shares = [end * _MM / thread.diameter_mm for end in (reach.low, reach.high) if end is not None]
        if any(not _SHORTEST <= share <= _LONGEST for share in shares):
            yield Fault(
                f"A grip of {grip.text} is no length for {group.thread}; usual are 0.3 to 30 times its diameter.",
                group.grip.where.of("value"),
                "Read the length and its unit again.",
            )
