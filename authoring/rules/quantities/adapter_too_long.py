"""The adapter is longer than the torque wrench that carries it.

What to set follows from both lengths, so one that was read wrong gives a wrong torque and no sign of it.
A crow-foot or an open-end adapter reaches some centimetres beyond the square; one that is longer than the whole wrench
was typed in the wrong unit, or with a 0 too many.
Such a wrench is not told of as unfit, because another wrench is not the cure.

Wrong:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  gauntlets: {name: heat gauntlets}
  crow-foot: {name: crow-foot, adapter: {length: 400 mm}}
  wrench: {name: torque wrench, length: 380 mm, range: {value: 10 to 100 N·m, source: bench-book, at: page 2}}
```
```yaml procedure
sections:
  - title: Tighten
    steps:
      - step: Tighten the [level-plug].
        with: [wrench, crow-foot]
        do:
          - tighten: level-plug   #! adapter-too-long
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
from authoring.model.wrenches import overlong, tightenings
from authoring.quantities.show import spell
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T4",)
ABOUT = ("adapter",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each tightening where every wrench of the step is shorter than its adapter."""
    for one in tightenings(procedure, library.scope(procedure)):
        if not one.held or not all(overlong(held) for held in one.held):
            continue
        held = one.held[0]
        if held.adapter is None or held.adapter.adapter is None or held.wrench.length is None:
            continue
        reach = spell(held.adapter.adapter.length) if held.adapter.adapter.length is not None else ""
        yield Fault(
            f"The {held.adapter.name}, {reach}, is longer than the {held.wrench.name}, {spell(held.wrench.length)}.",
            one.mention.span,
            "Read the length of the adapter again, from its square to the fastener, and that of the wrench.",
            (
                Related(held.adapter.where.of("adapter", "length"), "the length of the adapter"),
                Related(held.wrench.where.of("length"), "the length of the wrench"),
            ),
        )
