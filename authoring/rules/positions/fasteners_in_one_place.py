"""Two fasteners of a group have the same place.

One of the places is a slip, and the drawing would show a fastener too few.

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
      in: mm
      places:
        - [-60, 40]
        - [60, 40]
        - [60, -40]
        - [60, 40]   #! fasteners-in-one-place
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
      in: mm
      places:
        - [-60, 40]
        - [60, 40]
        - [60, -40]
        - [-60, -40]
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
    """Yield a fault for each place that an earlier fastener of the group has already."""
    for group in equipment.fasteners.values():
        stated, first = group.positions, dict[tuple[float, float], int]()
        for at, place in enumerate(stated.places if stated is not None else ()):
            if stated is not None and place in first:
                yield Fault(
                    f'Fasteners {first[place] + 1} and {at + 1} of "{group.id}" have the same place.',
                    stated.where.of("places", at),
                    "Correct one of the two places.",
                )
            first.setdefault(place, at)
