"""The order of tightening leaves a fastener out, or names one twice or one too many.

The order is drawn and followed by its numbers; a fastener that has none stays loose behind the others.
Each fastener of the group has a number from 1, and each number stands once.

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
    thread: M8
    on: drop-box
    torque: {value: 22 ± 2 N·m, source: plate, at: line 5}
    order: [1, 3, 2, 3]   #! order-not-complete
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
    thread: M8
    on: drop-box
    torque: {value: 22 ± 2 N·m, source: plate, at: line 5}
    order: [1, 3, 2, 4]
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.words import joined
from authoring.model.library import Library
from authoring.model.things import Equipment, FastenerGroup
from authoring.rules.rule import Fault
from authoring.workshop.tightening_order import order_faults

SEVERITY = Severity.ERROR
REQUIREMENTS = ("T2",)
ABOUT = ("order",)

# Of many numbers the first will do.
_MOST_TOLD = 5


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield a fault for each group whose order is not each of its numbers once."""
    for group in equipment.fasteners.values():
        wrong = _wrong(group) if group.order else ""
        if wrong:
            yield Fault(
                f'The order of "{group.id}" {wrong}.',
                group.where.of("order"),
                f"Write each number from 1 to {group.count} once, in the order in which they are tightened.",
            )


def _wrong(group: FastenerGroup) -> str:
    faults = order_faults(group.order, group.count)
    told = [
        f"{words} {joined([str(one) for one in numbers[:_MOST_TOLD]], 'and')}"
        for words, numbers in (
            ("names twice", faults.repeated),
            ("leaves out", faults.missing),
            ("names what is not there,", faults.unknown),
        )
        if numbers
    ]
    return joined(told, "and")
