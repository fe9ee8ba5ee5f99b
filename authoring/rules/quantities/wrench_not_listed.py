"""A step tightens to a torque and lists no torque wrench, though the shop has one.

Without a wrench in the list of tools nobody takes one to the machine, and the torque is guessed by the arm.
The wrenches of the stock whose range and marks suit the torque are named; where none does, that is another finding.
A tool counts as a torque wrench once it states a `range` of torque.

Wrong:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  gauntlets: {name: heat gauntlets}
  wrench: {name: torque wrench, range: {value: 10 to 100 N·m, source: bench-book, at: page 2}}
```
```yaml procedure
sections:
  - title: Tighten
    steps:
      - step: Tighten the [level-plug].
        with: [spanner]
        do:
          - tighten: level-plug   #! wrench-not-listed
```

Right:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  gauntlets: {name: heat gauntlets}
  wrench: {name: torque wrench, range: {value: 10 to 100 N·m, source: bench-book, at: page 2}}
```
```yaml procedure
sections:
  - title: Tighten
    steps:
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.words import joined, quoted
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.wrenches import fitting, tightenings
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T4",)
ABOUT = ("tightened",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each tightening without a torque wrench that some wrench of the stock could do."""
    for one in tightenings(procedure, library.scope(procedure)):
        able = [] if one.held else fitting(one, library.stock)
        if able:
            yield Fault(
                f'"{one.group.id}" has a torque, but this step lists no torque wrench whose range is known.',
                one.mention.span,
                f"Add {joined([quoted(tool.id) for tool in able], 'or')} under with.",
                (Related(one.group.where.of("torque", "value"), "the torque"),),
            )
