"""Fasteners on the left and their twin on the right are stated with different values.

A value that was changed on one side only pulls one wheel with the old torque.
Told is where both state a thread, class, torque, stages, state of the threads or friction, and the two differ.
A left-hand thread on one side is no difference; values within 1 % of each other are none either, since one of them
may be converted.
A machine may be built unlike on its two sides: then allow it, with the reason. A front and a rear one are not compared.

Wrong:

```yaml equipment
viewpoint: seen from the driver's seat, looking forward
items:
  drop-box: {name: drop box}
  left-hub: {name: left hub, side: left, twin: right-hub}
  right-hub: {name: right hub, side: right, twin: left-hub}
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  left-nuts:
    name: left wheel nuts
    count: 5
    thread: M20 x 1.5
    on: left-hub
    side: left
    twin: right-nuts
    torque: {value: 310 ± 20 N·m, source: plate, at: line 6}
  right-nuts:
    name: right wheel nuts
    count: 5
    thread: M20 x 1.5
    on: right-hub
    side: right
    twin: left-nuts
    torque: {value: 240 ± 20 N·m, source: plate, at: line 6}   #! twins-differ
```

Right:

```yaml equipment
viewpoint: seen from the driver's seat, looking forward
items:
  drop-box: {name: drop box}
  left-hub: {name: left hub, side: left, twin: right-hub}
  right-hub: {name: right hub, side: right, twin: left-hub}
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  left-nuts:
    name: left wheel nuts
    count: 5
    thread: M20 x 1.5 LH
    on: left-hub
    side: left
    twin: right-nuts
    torque: {value: 310 ± 20 N·m, source: plate, at: line 6}
  right-nuts:
    name: right wheel nuts
    count: 5
    thread: M20 x 1.5
    on: right-hub
    side: right
    twin: left-nuts
    torque: {value: 290 to 330 N·m, source: plate, at: line 6}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.specification import Specification
from authoring.model.things import Equipment, FastenerGroup
from authoring.quantities.quantity import Quantity
from authoring.rules.rule import Fault
from authoring.workshop.interval import interval_of
from authoring.workshop.metric_thread import metric_thread

SEVERITY = Severity.WARNING
REQUIREMENTS = ("N16",)
ABOUT = ("twin",)

_LEFT_AND_RIGHT = ("left", "right")
_CONVERTED = Fraction(1, 100)  # of the larger number
_WORDS = {
    "thread": "threads",
    "class": "classes",
    "torque": "torques",
    "stages": "stages",
    "threads": "states of the threads",
    "friction": "friction",
}


def check(equipment: Equipment, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each key that a left and a right group, each other's twin, state otherwise."""
    for right in equipment.fasteners.values():
        left = equipment.fasteners.get(right.twin or "")
        if left is not None and left.twin == right.id and (left.side, right.side) == _LEFT_AND_RIGHT:
            yield from _stated_unlike(right, left)


def _stated_unlike(group: FastenerGroup, other: FastenerGroup) -> Iterator[Fault]:
    """Yield a fault for each key of two groups that both state, and state otherwise."""
    unlike = {
        "thread": _other_thread(group.thread, other.thread),
        "class": None not in {group.strength, other.strength} and group.strength != other.strength,
        "torque": _other_value(group.torque, other.torque),
        "stages": bool(group.stages and other.stages) and _other_stages(group.stages, other.stages),
        "threads": None not in {group.threads, other.threads} and group.threads != other.threads,
        "friction": _other_value(group.friction, other.friction),
    }
    for key, differs in unlike.items():
        if differs:
            yield Fault(
                f'"{group.id}" and its twin "{other.id}" are stated with different {_WORDS[key]}.',
                group.where.of(key),
                "Read both in the source again; what was changed on one side may hold for the other.",
                (Related(other.where.of(key), "stated otherwise for its twin"),),
            )


def _other_thread(one: str, other: str) -> bool:
    """Tell whether two threads differ in more than the way they turn."""
    first, second = metric_thread(one), metric_thread(other)
    if first is None or second is None:
        return first is not second or _without_hand(one) != _without_hand(other)
    return (first.diameter_mm, first.pitch_mm) != (second.diameter_mm, second.pitch_mm)


def _without_hand(thread: str) -> list[str]:
    return [word for word in thread.casefold().replace("-", " ").split() if word not in {"lh", "rh"}]


def _other_value(one: Specification | None, other: Specification | None) -> bool:
    return one is not None and other is not None and _other_stages(_quantities(one), _quantities(other))


def _quantities(stated: Specification) -> tuple[Quantity, ...]:
    return () if stated.value is None else (stated.value,)


def _other_stages(one: Sequence[Quantity], other: Sequence[Quantity]) -> bool:
    """Tell whether two rows of quantities differ by more than a conversion; a refused one is told elsewhere."""
    if not one or not other:
        return False
    return len(one) != len(other) or any(_apart(first, second) for first, second in zip(one, other, strict=True))


def _apart(one: Quantity, other: Quantity) -> bool:
    first, second = interval_of(one), interval_of(other)
    ends = ((first.low, second.low), (first.high, second.high))
    return one.dimension is not other.dimension or any(_far(low, high) for low, high in ends)


def _far(one: Fraction | None, other: Fraction | None) -> bool:
    if one is None or other is None:
        return one is not other
    return abs(one - other) > _CONVERTED * max(abs(one), abs(other))
