"""The stages of tightening do not rise to the torque.

A stage that is no tighter than the one before does nothing, and the apprentice who follows it stops too early or
undoes what was done.
Stages are torques that rise; a turn by an angle may follow them and never comes before, because an angle counts from
fasteners that are already snug.
The last torque lies in the window that the group states as its torque.

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
    stages: [12 N·m, 10 N·m, 22 N·m]   #! stages-not-rising
```

The torque is never reached.

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
    stages: [10 N·m, 19 N·m]   #! stages-not-rising
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
    stages: [10 N·m, 22 N·m]
```
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.things import Equipment, FastenerGroup
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault
from authoring.workshop.interval import Standing, compare, interval_of

SEVERITY = Severity.ERROR
REQUIREMENTS = ("T2",)
ABOUT = ("stages",)


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield the first fault of each group's stages; where a stage was refused, nothing is said of them."""
    for group in equipment.fasteners.values():
        written = group.where.document.data["fasteners"][group.id].get("stages", ())
        if group.stages and len(group.stages) == len(written):
            yield from list(_of_group(group))[:1]


def _of_group(group: FastenerGroup) -> Iterator[Fault]:
    for place, stage in enumerate(group.stages):
        if stage.dimension not in {Dimension.TORQUE, Dimension.ANGLE}:
            words = f'Stage {place + 1} of "{group.id}" is a {stage.dimension.value}; a stage is a torque or an angle.'
            yield Fault(words, group.where.of("stages", place), "Write torques, and angles after them.")
    for place, (before, stage) in enumerate(pairwise(group.stages), 1):
        if before.dimension is Dimension.ANGLE and stage.dimension is Dimension.TORQUE:
            words = f'Stage {place + 1} of "{group.id}" is a torque that comes after an angle.'
            yield Fault(words, group.where.of("stages", place), "Put the torques first, and the angles after them.")
        elif before.dimension is stage.dimension is Dimension.TORQUE and not _rises(before, stage):
            words = f'The stages of "{group.id}" do not rise: {before.text}, then {stage.text}.'
            yield Fault(words, group.where.of("stages", place), "Put the stages in the order in which they rise.")
    yield from _last(group)


def _last(group: FastenerGroup) -> Iterator[Fault]:
    torques = [place for place, stage in enumerate(group.stages) if stage.dimension is Dimension.TORQUE]
    if not torques:
        words = f'The stages of "{group.id}" begin with an angle, which counts from nothing.'
        yield Fault(words, group.where.of("stages"), "Put the torque at which the fasteners are snug before it.")
        return
    last = group.stages[torques[-1]]
    torque = group.torque.value if group.torque is not None else None
    if group.torque is not None and torque is not None and not _within(last, torque):
        yield Fault(
            f'The last torque among the stages of "{group.id}" is {last.text}, outside its torque of {torque.text}.',
            group.where.of("stages", torques[-1]),
            "Let the stages end at the torque that is stated, or correct the one that is wrong.",
            (Related(group.torque.where.of("value"), "its torque"),),
        )


def _rises(before: Quantity, stage: Quantity) -> bool:
    """Tell whether both ends of a stage lie above those of the stage before; an end without a limit does not count."""
    lower, upper = interval_of(before), interval_of(stage)
    ends = ((lower.low, upper.low), (lower.high, upper.high))
    return all(one < other for one, other in ends if one is not None and other is not None)


def _within(stage: Quantity, torque: Quantity) -> bool:
    return compare(interval_of(stage), interval_of(torque)).standing is Standing.WITHIN
