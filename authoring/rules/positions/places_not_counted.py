"""The positions name more places, or fewer, than the group has fasteners.

Each place is the one of a number, from 1 to the count.
With a place too few, one fastener has no turn in the order and stays loose behind the others.

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
    positions:
      places: [[-60, 40], [60, 40], [60, -40]]   #! places-not-counted
      in: mm
      seen-from: below
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
    positions:
      places: [[-60, 40], [60, 40], [60, -40], [-60, -40]]
      in: mm
      seen-from: below
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("T2",)
ABOUT = ("positions",)


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield a fault for each group whose places are not as many as its fasteners."""
    for group in equipment.fasteners.values():
        places = group.positions.places if group.positions is not None else ()
        if group.positions is not None and places and len(places) != group.count:
            yield Fault(
                f'"{group.id}" has {_many(group.count, "fastener")}, but {_many(len(places), "place")}.',
                group.positions.where.of("places"),
                "Write one place for each, in the order of their numbers, or correct the count.",
            )


def _many(number: int, thing: str) -> str:
    return f"{number} {thing}{'' if number == 1 else 's'}"
