"""The positions do not say plainly where the fasteners stand.

They stand evenly on a circle, or each at a place; both would be two answers.
A circle has a diameter, which is a length above zero; `first` belongs to it.
Places are numbers, so `in` says of which unit.

Wrong:

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
    positions: {first: "3", seen-from: outside}   #! positions-unclear
  lid-bolts:
    name: lid bolts
    count: 3
    thread: M8
    on: drop-box
    positions:
      circle: 90 mm
      places: [[0, 45], [39, -23], [-39, -23]]   #! positions-unclear
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
  hub-nuts:
    name: hub nuts
    count: 5
    thread: M20
    on: drop-box
    positions: {circle: 180 mm, first: "3", seen-from: outside}
  lid-bolts:
    name: lid bolts
    count: 3
    thread: M8
    on: drop-box
    positions:
      places: [[0, 1.8], [1.5, -0.9], [-1.5, -0.9]]
      in: in
      seen-from: below
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.fastening import Positions
from authoring.model.library import Library
from authoring.model.things import Equipment
from authoring.quantities.quantity import Form
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("T2",)
ABOUT = ("positions",)

_ONE_ENDED = frozenset({Form.MINIMUM, Form.MAXIMUM})


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield a fault for each group whose positions say nothing, two things, or a circle that cannot be."""
    for group in equipment.fasteners.values():
        if group.positions is not None:
            yield from _unclear(group.id, group.positions)


def _unclear(name: str, stated: Positions) -> Iterator[Fault]:
    where = stated.where
    circle = _has(stated, "circle")
    if not circle and not stated.places:
        message = f'The positions of "{name}" do not say where its fasteners stand.'
        yield Fault(message, where.key(), 'Add "circle" with its diameter, or "places" with one place for each.')
    elif circle and stated.places:
        message = f'The fasteners of "{name}" stand on a circle and at places too.'
        yield Fault(message, where.of("places"), "Keep the one that is right.")
    elif stated.circle is not None and not _is_diameter(stated):
        message = f'The circle of "{name}" has no diameter that could be drawn.'
        yield Fault(message, where.of("circle"), "Write the diameter as one length, such as 120 mm.")
    elif stated.places and not _has(stated, "in"):
        message = f'The places of "{name}" are numbers without a unit.'
        yield Fault(message, where.key("places"), 'Add "in: mm", or "in: in" where they are inches.')
    elif circle and _has(stated, "in"):
        message = f'"in" is the unit of places, and "{name}" has none.'
        yield Fault(message, where.of("in"), "Leave it out; the circle carries its unit itself.")
    elif not circle and _has(stated, "first"):
        message = f'"first" is a place on a circle, and "{name}" has none.'
        yield Fault(message, where.of("first"), "Leave it out; the first place is that of number 1.")


def _has(stated: Positions, key: str) -> bool:
    return stated.where.document.places.has((*stated.where.path, key))


def _is_diameter(stated: Positions) -> bool:
    circle = stated.circle
    if circle is None or circle.form in _ONE_ENDED:
        return False
    least = circle.low if circle.low is not None else circle.nominal
    return least is not None and least > 0
