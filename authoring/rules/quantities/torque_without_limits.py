"""A torque is stated without its limits.

The wrench has an error and the hand another, so a single number says nothing about how far off is too far.
Where the source gives only that number it is printed as it is, as a nominal, and nothing is made up;
where the source, or a policy of the shop that it names, gives a tolerance, state it.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 N·m, source: plate, at: line 4}   #! torque-without-limits
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 38 to 46 N·m, source: plate, at: line 4}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.things import Equipment
from authoring.quantities.quantity import Form
from authoring.rules.rule import Fault

SEVERITY = Severity.NOTE
REQUIREMENTS = ("T1",)
ABOUT = ("torque",)


def check(equipment: Equipment, _library: Library) -> Iterator[Fault]:
    """Yield a note for each fastener group whose torque is one number."""
    for group in equipment.fasteners.values():
        torque = group.torque
        if torque is not None and torque.value is not None and torque.value.form is Form.VALUE:
            yield Fault(
                f'The torque of "{group.id}" is a nominal without limits, and is printed as one.',
                torque.where.of("value"),
                "Add the tolerance if the source gives one, such as 42 ± 4 N·m.",
            )
