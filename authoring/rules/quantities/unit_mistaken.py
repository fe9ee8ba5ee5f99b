"""A torque is odd for its bolt, and would be usual in another unit.

A torque that was copied in the wrong unit is wrong by a factor of nine to twelve, and the bolt shears or comes loose.
It is held against what a plain bolt of that thread and class takes; what friction and grade explain is not told.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  cover-bolts:
    name: cover bolts
    count: 4
    thread: M8 x 1.25
    class: "8.8"
    on: drop-box
    torque: {value: 215 N·m, source: plate, at: line 6}   #! unit-mistaken torque-without-limits
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
  cover-bolts:
    name: cover bolts
    count: 4
    thread: M8 x 1.25
    class: "8.8"
    on: drop-box
    torque: {value: 215 ± 15 lbf·in, source: plate, at: line 6}
```
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.words import joined
from authoring.model.library import Library
from authoring.model.things import Equipment, FastenerGroup
from authoring.quantities.quantity import Quantity
from authoring.rules.rule import Fault
from authoring.workshop.meant_unit import units_probably_meant
from authoring.workshop.metric_thread import metric_thread

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T1", "N3")


def check(equipment: Equipment, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each torque of a bolt with a class that another unit would explain."""
    for group in equipment.fasteners.values():
        torque = group.torque.value if group.torque is not None else None
        number = _number(torque) if torque is not None else None
        thread = metric_thread(group.thread)
        if torque is None or number is None or thread is None or group.strength is None or _turned_further(group):
            continue
        meant = units_probably_meant(number, torque.unit, thread, group.strength)
        if meant:
            units = joined([unit.symbol for unit in meant], "or")
            yield Fault(
                f"{torque.text} is odd for {group.thread}, class {group.strength}; in {units} it would be usual.",
                group.where.of("torque", "value"),
                "Read the value and its unit in the source once more.",
            )


def _number(torque: Quantity) -> Fraction | None:
    """Return one number for the torque, in its unit: the nominal, or the middle or the one limit."""
    if torque.nominal is not None:
        return torque.nominal
    known = [limit for limit in (torque.low, torque.high) if limit is not None]
    return sum(known, Fraction(0)) / len(known) if known else None


def _turned_further(group: FastenerGroup) -> bool:
    """Tell whether the torque is a snug one before a turn."""
    return any(stage.unit.symbol in {"°", "turn"} for stage in group.stages)
