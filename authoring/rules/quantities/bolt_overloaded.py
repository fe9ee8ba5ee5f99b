"""A torque stretches its bolt beyond what a bolt of that size and class bears.

A bolt that is pulled beyond its proof load stays longer, pulls less afterwards, and breaks at one of the next pulls.
The clamp force follows from the torque, the thread and the friction or the nut factor that the equipment file states,
and from what the wrench may be off; it is held against the proof load of the class (ISO 898-1).
Where the bolt bears the lower limit at the highest friction and not the upper limit at the lowest, it is a warning;
where it bears neither, one of the values is wrong, and it is an error.
Of stages that end in a turn the torque before the turn counts.

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
    class: "8.8"
    on: drop-box
    torque: {value: 30 ± 2 N·m, source: plate, at: line 5}   #! bolt-overloaded
    friction: {value: 0.10 to 0.16, source: plate, at: line 6}
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
    class: "8.8"
    on: drop-box
    torque: {value: 22 ± 2 N·m, source: plate, at: line 5}
    friction: {value: 0.10 to 0.16, source: plate, at: line 6}
```
"""

from __future__ import annotations

import math
from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.words import joined
from authoring.model.clamping import clamp_in, ways_to_tighten
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import UNITS
from authoring.rules.rule import Fault, Together
from authoring.workshop.bolt_load import BoltLoad

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T1", "N3")
ABOUT = ("torque",)
TOGETHER = Together.MARKED

_UNITS = ("N·m", "lbf·ft", "lbf·in", "kgf·m", "kgf·cm")
_LEAST_SHARE = 1 / 3


def marks(procedure: Procedure, library: Library) -> Iterator[str]:
    """Yield how a procedure tightens each group: the worst wrench of all procedures counts."""
    return ways_to_tighten(procedure, library)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each group whose greatest clamp force is beyond its proof load."""
    for equipment in library.equipment.values():
        for group in equipment.fasteners.values():
            load = clamp_in(group, library)
            if load is not None and load.overloaded:
                yield _fault(group, load)


def _fault(group: FastenerGroup, load: BoltLoad) -> Fault:
    torque = group.torque.value if group.torque is not None else None
    certain = load.least_share > 1
    share = math.floor(100 * load.least_share) if certain else math.ceil(100 * load.greatest_share)
    much = "at least" if certain else "up to"
    resists = group.where.of("friction" if group.friction is not None else "nut-factor")
    others = joined(list(_units_borne(torque, load)), "or") if torque is not None else ""
    once_more = (
        "Read the torque, its unit and the class in the source once more"
        if certain
        else "Read the torque and the friction in the source once more"
    )
    return Fault(
        f"{torque.text if torque is not None else ''} gives {group.thread} of class {group.strength} "
        f"{much} {share} % of the tension that it bears.",
        group.where.of("torque", "value"),
        f"{once_more}; the bolt bears that number in {others}." if others else f"{once_more}.",
        (Related(resists, "what resists the turning"),),
        severity=Severity.ERROR if certain else None,
    )


def _units_borne(torque: Quantity, load: BoltLoad) -> Iterator[str]:
    """Yield the units in which the bolt bears that number, and is pulled to a third of that at least."""
    for symbol in _UNITS:
        ratio = float(UNITS[symbol].factor / torque.unit.factor)
        if load.greatest_share * ratio <= 1 and load.least_share * ratio >= _LEAST_SHARE:
            yield symbol
