"""Two things that are called twins are not each other's twin.

A left and a right one are told apart by their side; where both stand on the same side, or one is the twin of a third,
the reader compares the wrong two, and what came off on the left goes back on the right.
Twins name each other, and stand on two sides.

Wrong:

```yaml equipment
viewpoint: seen from the driver's seat, looking forward
items:
  drop-box: {name: drop box}
  left-hub: {name: left hub, side: left, twin: right-hub}
  right-hub: {name: right hub, side: left, twin: left-hub}   #! twins-unlike
  left-cap: {name: left cap, side: left, twin: right-cap}   #! twins-unlike
  right-cap: {name: right cap, side: right}
```

Right:

```yaml equipment
viewpoint: seen from the driver's seat, looking forward
items:
  drop-box: {name: drop box}
  left-hub: {name: left hub, side: left, twin: right-hub}
  right-hub: {name: right hub, side: right, twin: left-hub}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.things import Equipment, FastenerGroup, Item
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N16",)
ABOUT = ("twin",)


def check(equipment: Equipment, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that is no twin of its twin; a pair on one side is told of once."""
    yield from _among(equipment.items)
    yield from _among(equipment.fasteners)


def _among(things: Mapping[str, Item] | Mapping[str, FastenerGroup]) -> Iterator[Fault]:
    met: set[str] = set()
    for thing in things.values():
        met.add(thing.id)
        other = things.get(thing.twin or "")
        if other is None:
            continue  # an unknown name is told elsewhere
        if thing.side is None:
            yield Fault(
                f'"{thing.id}" has a twin, and does not say on which side it is.',
                thing.where.of("twin"),
                'Add "side", such as side: left.',
            )
        if other is thing:
            yield Fault(
                f'"{thing.id}" is called its own twin.', thing.where.of("twin"), "Name the other one, or leave it out."
            )
        elif other.twin != thing.id:
            yield Fault(
                f'"{thing.id}" is called a twin of "{other.id}", but that one does not name it.',
                thing.where.of("twin"),
                f"Write twin: {thing.id} at {other.id}, or leave it out here.",
                (Related(other.where.span, f'"{other.id}" is stated here'),),
            )
        elif other.id in met and thing.side is not None and thing.side == other.side:
            yield Fault(
                f'"{thing.id}" and its twin "{other.id}" are both on the same side ({thing.side}).',
                thing.where.of("side"),
                "Correct the side of one of them.",
                (Related(other.where.of("side"), "the side of its twin"),),
            )
