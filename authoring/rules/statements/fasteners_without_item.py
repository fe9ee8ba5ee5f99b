"""Fasteners have a torque, and nobody says what they hold.

What is tightened to a torque clamps something. With `on` the check knows which item stays up by these fasteners:
it tells where that comes off while they are tight, where it is gone while they are tightened, and the table of torques
says on what they are.
`among` says beside which others they sit, not what they hold.
A plug holds nothing; which fluid is behind it, `drains` or `fills` tells. What is never touched is held by nobody.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  flange-bolts:
    name: flange bolts   #! fasteners-without-item
    count: 4
    thread: M10 x 1.5
    torque: {value: 46 ± 4 N·m, source: plate, at: line 5}
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  rear-shaft: {name: rear shaft}
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  flange-bolts:
    name: flange bolts
    count: 4
    thread: M10 x 1.5
    on: rear-shaft
    torque: {value: 46 ± 4 N·m, source: plate, at: line 5}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("N5",)
ABOUT = ("torque",)


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield a fault for each group with a torque that is on no item, is no plug, and may be turned."""
    for group in equipment.fasteners.values():
        if group.on is None and group.torque is not None and not (group.drains or group.fills or group.untouched):
            yield Fault(
                f'"{group.id}" has a torque, and no "on" says which item it holds.',
                group.where.of("name"),
                'Add "on: " with the item; for a plug, say which fluid it "drains" or "fills".',
            )
