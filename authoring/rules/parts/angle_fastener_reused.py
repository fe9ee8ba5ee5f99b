"""Fasteners that are tightened by an angle go back on, and nobody says whether they may.

A turn beyond snug often stretches a bolt for good; turned a second time it is stretched further, and it may break or
pull less than it did.
Whether it may be used again is the maker's word: state it as `reuse`, with new ones where it is never.
Loosening counts as coming off, since the same turn is made again.

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
    thread: M10
    on: drop-box
    torque: {value: 20 ± 2 N·m, source: plate, at: line 5}
    stages: [20 N·m, 90 °]
```
```yaml procedure
sections:
  - title: Open the lid
    steps:
      - step: Remove the [lid-bolts].
        do:
          - remove: lid-bolts
      - step: Start the [lid-bolts] by hand and tighten them.
        with: [wrench]
        do:
          - start: lid-bolts   #! angle-fastener-reused
          - tighten: lid-bolts
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
    thread: M10
    on: drop-box
    torque: {value: 20 ± 2 N·m, source: plate, at: line 5}
    stages: [20 N·m, 90 °]
    reuse: {is: never, say: The turn stretches them for good.}
```
```yaml procedure
sections:
  - title: Open the lid
    steps:
      - step: Remove the [lid-bolts] and discard them.
        do:
          - remove: lid-bolts
          - discard: lid-bolts
      - step: Start new [lid-bolts] by hand and tighten them.
        with: [wrench]
        do:
          - start: lid-bolts
          - tighten: lid-bolts
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.coming_back import returns
from authoring.model.library import Library
from authoring.model.on_and_off import TAKES_OFF
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup, Item
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("P2", "T2")
ABOUT = ("angle",)

_LET_GO = TAKES_OFF | {"loosen"}


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each group turned by an angle that goes back on without a word about reuse."""
    for one in returns(procedure, library, _turned_unsaid, _LET_GO):
        yield Fault(
            f'"{one.thing.id}" is tightened by an angle and goes back on here after it came off{one.shown.whom}, '
            "but nothing says whether it may.",
            one.mention.span,
            f'Add "reuse: " to "{one.thing.id}" as its source says it: never, with new ones here, if, or always.',
            (Related(one.thing.where.of("stages"), "tightened by an angle"),),
            one.shown.fitments,
        )


def _turned_unsaid(thing: Item | FastenerGroup) -> bool:
    turned = isinstance(thing, FastenerGroup) and any(stage.dimension is Dimension.ANGLE for stage in thing.stages)
    return turned and thing.reuse is None
