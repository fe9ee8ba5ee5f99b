"""What to set on the wrench cannot be worked out behind the adapter of the step.

An adapter that does not sit at a right angle makes the wrench longer or shorter, so the mark is not the torque.
Whoever sets the torque itself pulls too tight: with an adapter of 60 mm on a wrench of 400 mm by a seventh.
How long the wrench is, from the middle of its square to the middle of its grip, is its `length` in the stock file.

Wrong:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  gauntlets: {name: heat gauntlets}
  crow-foot: {name: crow-foot, adapter: {length: 40 mm}}
  wrench: {name: torque wrench, range: {value: 10 to 100 N·m, source: bench-book, at: page 2}}
```
```yaml procedure
sections:
  - title: Tighten
    steps:
      - step: Tighten the [level-plug].
        with: [wrench, crow-foot]
        do:
          - tighten: level-plug   #! setting-unknown
```

Right:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  gauntlets: {name: heat gauntlets}
  crow-foot: {name: crow-foot, adapter: {length: 40 mm}}
  wrench: {name: torque wrench, length: 380 mm, range: {value: 10 to 100 N·m, source: bench-book, at: page 2}}
```
```yaml procedure
sections:
  - title: Tighten
    steps:
      - step: Tighten the [level-plug].
        with: [wrench, crow-foot]
        do:
          - tighten: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.wrenches import tightenings
from authoring.rules.rule import Fault
from authoring.workshop.impossible import Impossible

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T4",)
ABOUT = ("adapter",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each tightening with an adapter behind which no wrench of the step has a known setting."""
    for one in tightenings(procedure, library.scope(procedure)):
        unknown = [(held, held.ratio) for held in one.held if isinstance(held.ratio, Impossible)]
        if unknown and len(unknown) == len(one.held):
            held, why = unknown[0]
            related = [Related(held.wrench.where.span, f'"{held.wrench.id}" is stated here')]
            if held.adapter is not None:
                related.append(Related(held.adapter.where.of("adapter"), "the adapter"))
            yield Fault(
                f'What to set on the {held.wrench.name} for "{one.group.id}" is not known. {why.reason}',
                one.mention.span,
                why.cure,
                tuple(related),
            )
