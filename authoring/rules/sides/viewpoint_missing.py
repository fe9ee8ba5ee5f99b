"""A side or an hour of the clock is given, and not from where it is seen.

Left is right for who stands in front of the machine, and half past seven is half past four from behind.
An hour says with `seen-from` from where; so does a side, unless the equipment file has a `viewpoint` for all of them.
Above, below, inside and outside are the same from everywhere.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box, side: left}   #! viewpoint-missing
```
```yaml procedure
sections:
  - title: Fit
    steps:
      - step: Fit the [drop-box].
        do:
          - fit:
              what: drop-box
              orientation: {mark: the arrow, clock: "7:30"}   #! viewpoint-missing
```

Right:

```yaml equipment
viewpoint: seen from the driver's seat, looking forward
items:
  drop-box: {name: drop box, side: left}
```
```yaml procedure
sections:
  - title: Fit
    steps:
      - step: Fit the [drop-box].
        do:
          - fit:
              what: drop-box
              orientation: {mark: the arrow, clock: "7:30", seen-from: "behind, standing in the pit"}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Action, Procedure
from authoring.model.things import Equipment, FastenerGroup, Item
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N16",)
ABOUT = ("side",)

_SEEN = frozenset({"left", "right", "front", "rear"})


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for the first such side of each equipment file, and for each orientation that stands on none."""
    for equipment in library.equipment.values():
        yield from _in_equipment(equipment)
    for procedure in library.procedures.values():
        yield from _in_procedure(procedure, library.equipment.get(procedure.equipment))


def _in_equipment(equipment: Equipment) -> Iterator[Fault]:
    if equipment.viewpoint is not None:
        return
    things: list[Item | FastenerGroup] = [*equipment.items.values(), *equipment.fasteners.values()]
    for thing in things:
        if thing.side in _SEEN:
            yield Fault(
                f'The side of "{thing.id}" is given, but not from where it is seen.',
                thing.where.of("side"),
                'Add "viewpoint" to the equipment file, such as: seen from the driver\'s seat, looking forward.',
            )
            return  # one viewpoint cures all


def _in_procedure(procedure: Procedure, equipment: Equipment | None) -> Iterator[Fault]:
    viewpoint = equipment is None or equipment.viewpoint is not None
    for _, step in procedure.steps():
        for action in step.actions:
            yield from _oriented(action, viewpoint=viewpoint)


def _oriented(action: Action, *, viewpoint: bool) -> Iterator[Fault]:
    turned = action.manner.orientation
    if turned is None or turned.seen_from is not None:
        return
    if turned.clock is not None:
        message, key = "An hour of the clock is given, but not from where it is seen.", "clock"
    elif turned.side in _SEEN and not viewpoint:
        message, key = "A side is given, but not from where it is seen.", "side"
    else:
        return
    yield Fault(message, turned.where.of(key), 'Add "seen-from", such as: behind, standing in the pit.')
