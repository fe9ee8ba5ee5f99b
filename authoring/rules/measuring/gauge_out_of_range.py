"""What is measured lies outside of what the gauge can show.

A tool of the stock file states its range.
A limit outside of it cannot be read, and a gauge that is forced beyond its scale is damaged.

Wrong:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench}
  gauntlets: {name: heat gauntlets}
  depth:
    name: depth gauge
    range: {value: 0 to 25 mm, source: bench-book, at: page 3}
    resolution: 0.05 mm
```

```yaml procedure
values:
  depth-of-bore: {name: depth of the bore, value: 30.0 ± 0.5 mm, source: bench-book, at: page 22}
sections:
  - title: Check
    steps:
      - step: Measure the [drop-box] with the [depth].
        with: [depth]
        do:
          - measure:
              what: drop-box
              value: depth-of-bore   #! gauge-out-of-range
              outcomes:
                - {found: It lies inside the window., then: go-on}
                - {found: It lies outside., then: stop}
```

Right:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench}
  gauntlets: {name: heat gauntlets}
  depth:
    name: depth gauge
    range: {value: 0 to 50 mm, source: bench-book, at: page 3}
    resolution: 0.05 mm
```

```yaml procedure
values:
  depth-of-bore: {name: depth of the bore, value: 30.0 ± 0.5 mm, source: bench-book, at: page 22}
sections:
  - title: Check
    steps:
      - step: Measure the [drop-box] with the [depth].
        with: [depth]
        do:
          - measure:
              what: drop-box
              value: depth-of-bore
              outcomes:
                - {found: It lies inside the window., then: go-on}
                - {found: It lies outside., then: stop}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.gauging import Gauge, gauges, measured
from authoring.model.library import Library
from authoring.model.procedure import Action, Procedure
from authoring.model.things import Window
from authoring.quantities.quantity import Quantity
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R3",)
ABOUT = ("measured",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each window that none of the step's gauges for it can show."""
    scope = library.scope(procedure)
    for _, step in procedure.steps():
        for action in step.actions:
            for window, limits in measured(action, scope):
                fit = [gauge for gauge in gauges(step, scope) if gauge.unit.dimension is limits.dimension]
                if fit and not any(gauge.shows([limits]) for gauge in fit):
                    yield _fault(action, window, limits, fit[0])


def _fault(action: Action, window: Window, limits: Quantity, gauge: Gauge) -> Fault:
    reach = gauge.tool.range
    shows = reach.value.text if reach is not None and reach.value is not None else "less"
    return Fault(
        f"The {gauge.tool.name} shows {shows}, and what is measured is {limits.text}.",
        action.where.of("value"),
        "Name a gauge under with whose range holds both limits.",
        (Related(window.where.of("value"), "the window"), Related(gauge.tool.where.of("range"), "the range")),
    )
