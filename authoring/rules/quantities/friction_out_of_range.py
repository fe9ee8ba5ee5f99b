"""No thread has the friction or the nut factor that is stated for it.

The clamp force follows from it, and a slipped decimal point makes that ten times too much or too little.
Coefficients of friction of threads go from 0.04 to somewhat above 0.30 (the classes of VDI 2230, from memory); told is
what lies outside 0.04 to 0.5.
Nut factors go from 0.09 to 0.30 (Shigley's Mechanical Engineering Design, 9th edition, Table 8-15); told is what lies
outside 0.05 to 0.6.

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
    friction: {value: 1.2 to 1.6, source: plate, at: line 9}   #! friction-out-of-range
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
    friction: {value: 0.12 to 0.16, source: plate, at: line 9}
```
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.specification import Specification
from authoring.model.things import Equipment
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault
from authoring.workshop.interval import Interval, interval_of

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T1", "N3")
ABOUT = ("friction",)

_FRICTION = Interval(Fraction("0.04"), Fraction("0.5"))
_NUT_FACTOR = Interval(Fraction("0.05"), Fraction("0.6"))
_USUAL_FRICTION = "0.04 to 0.30 (VDI 2230, from memory)"
_USUAL_NUT_FACTOR = "0.09 to 0.30 (Shigley, 9th edition, Table 8-15)"


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield a fault for each friction and nut factor of which an end lies where no thread has it."""
    for group in equipment.fasteners.values():
        for stated, possible, called, usual in (
            (group.friction, _FRICTION, "coefficient of friction", _USUAL_FRICTION),
            (group.nut_factor, _NUT_FACTOR, "nut factor", _USUAL_NUT_FACTOR),
        ):
            if stated is not None and stated.value is not None and _outside(stated, possible):
                yield Fault(
                    f"No thread has a {called} of {stated.value.text}; usual are {usual}.",
                    stated.where.of("value"),
                    "Read the value and its decimal point in the source once more.",
                )


def _outside(stated: Specification, possible: Interval) -> bool:
    if stated.value is None or stated.value.dimension is not Dimension.RATIO:
        return False
    reach = interval_of(stated.value)
    ends = [end for end in (reach.low, reach.high) if end is not None]
    return any(possible.low is not None and end < possible.low for end in ends) or any(
        possible.high is not None and end > possible.high for end in ends
    )
