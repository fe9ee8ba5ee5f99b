"""No reading of the gauge proves that a limit is kept, so that nothing passes.

A limit is judged on the scale of the gauge that the step names.
With guarded acceptance (ISO 14253-1), which the shop file chooses, the limits move in by what the gauge may be off;
with a coarse gauge nothing is left between them, or no step of its scale lies there.
Whoever measures so can only guess.

Wrong:

```yaml shop
decision-rule: guarded
```

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench}
  gauntlets: {name: heat gauntlets}
  vernier: {name: vernier gauge, resolution: 0.05 mm, accuracy: {value: 0.05 mm, source: bench-book, at: page 3}}
```

```yaml procedure
values:
  gap: {name: gap at the face, value: 0.02 to 0.10 mm, source: bench-book, at: page 22}
sections:
  - title: Check
    steps:
      - step: Measure the [drop-box] with the [vernier].
        with: [vernier]
        do:
          - measure:
              what: drop-box
              value: gap   #! range-vanishes
              outcomes:
                - {found: It lies inside the window., then: go-on}
                - {found: It lies outside., then: stop}
```

Right:

```yaml shop
decision-rule: guarded
```

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench}
  gauntlets: {name: heat gauntlets}
  vernier: {name: vernier gauge, resolution: 0.01 mm, accuracy: {value: 0.02 mm, source: bench-book, at: page 3}}
```

```yaml procedure
values:
  gap: {name: gap at the face, value: 0.02 to 0.10 mm, source: bench-book, at: page 22}
sections:
  - title: Check
    steps:
      - step: Measure the [drop-box] with the [vernier].
        with: [vernier]
        do:
          - measure:
              what: drop-box
              value: gap
              outcomes:
                - {found: It lies inside the window., then: go-on}
                - {found: It lies outside., then: stop}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.gauging import gauges, measured, readings, rule_of
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault
from authoring.workshop.impossible import Impossible

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R3",)
ABOUT = ("measured",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each window of which no reading of the step's gauge is sure to lie inside."""
    scope = library.scope(procedure)
    for _, step in procedure.steps():
        for action in step.actions:
            for window, limits in measured(action, scope):
                fit = [gauge for gauge in gauges(step, scope) if gauge.shows([limits])]
                rule = rule_of(library.shop)
                if not fit or not all(isinstance(readings(limits, one, rule), Impossible) for one in fit):
                    continue
                yield Fault(
                    f"The {fit[0].tool.name} is too coarse for {limits.text}: none of its readings proves that it is "
                    "kept.",
                    action.where.of("value"),
                    "Name a finer gauge under with, or state a wider window if its source allows that.",
                    (
                        Related(window.where.of("value"), "the window"),
                        Related(fit[0].tool.where.of("resolution"), "its smallest step"),
                    ),
                )
