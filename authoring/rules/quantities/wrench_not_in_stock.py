"""A step tightens to a torque that no wrench of the shop can do.

Whoever stands at the machine finds that the wrenches of the shop end below the torque, begin above it, or have no mark
between its limits, and tightens by the arm.
Buy, borrow or state the tool first; a tool counts as a torque wrench once it states a `range` of torque.
A step that lists a wrench which is not the one is another finding.

Wrong:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  gauntlets: {name: heat gauntlets}
  wrench: {name: torque wrench, range: {value: 2 to 20 N·m, source: bench-book, at: page 2}}
```
```yaml procedure
sections:
  - title: Tighten
    steps:
      - step: Tighten the [level-plug].
        with: [spanner]
        do:
          - tighten: level-plug   #! wrench-not-in-stock
```

Right:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  gauntlets: {name: heat gauntlets}
  wrench: {name: torque wrench, range: {value: 2 to 20 N·m, source: bench-book, at: page 2}}
  large-wrench: {name: large torque wrench, range: {value: 20 to 100 N·m, source: bench-book, at: page 2}}
```
```yaml procedure
sections:
  - title: Tighten
    steps:
      - step: Tighten the [level-plug].
        with: [large-wrench]
        do:
          - tighten: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.wrenches import fitting, tightenings, wrenches_of
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T4",)
ABOUT = ("tightened",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each tightening without a torque wrench that no wrench of the stock could do."""
    wrenches = wrenches_of(library.stock)
    for one in tightenings(procedure, library.scope(procedure)) if wrenches else ():
        if not one.held and not fitting(one, library.stock):
            torque = one.group.torque
            stated = torque.value.text if torque is not None and torque.value is not None else ""
            yield Fault(
                f'No torque wrench of the shop can do the {stated} of "{one.group.id}".',
                one.mention.span,
                "State a wrench in the stock file whose range and marks suit the torque, and list it under with.",
                (
                    Related(one.group.where.of("torque", "value"), "the torque"),
                    *(Related(tool.where.of("range", "value"), f"the {tool.name}") for tool in wrenches),
                ),
            )
