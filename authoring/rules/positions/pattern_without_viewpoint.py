"""Places or a clock position of fasteners are given, and not from where they are seen.

Right and left change when the pattern is seen from the other side, and so does 3 o'clock.
A circle whose number 1 stands at 12 or at 6 is the same from both sides, and needs no viewpoint.

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
    positions:   #! pattern-without-viewpoint
      places: [[-60, 40], [60, 45], [60, -40], [-60, -40]]
      in: mm
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
  hub-nuts:
    name: hub nuts
    count: 5
    thread: M20
    on: drop-box
    positions: {circle: 180 mm}
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M8
    on: drop-box
    positions:
      places: [[-60, 40], [60, 45], [60, -40], [-60, -40]]
      in: mm
      seen-from: below, lying with the head to the rear
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N16",)
ABOUT = ("positions",)

_BOTH_WAYS = frozenset({"12", "12:00", "6", "6:00"})


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield a fault for each group whose pattern would look another way from behind."""
    for group in equipment.fasteners.values():
        stated = group.positions
        if stated is None or stated.seen_from is not None:
            continue
        if stated.places or stated.first not in _BOTH_WAYS:
            yield Fault(
                f'It is not said from where the fasteners of "{group.id}" are seen.',
                stated.where.key(),
                'Add "seen-from", such as: below, lying with the head to the rear.',
            )
