"""Fewer persons do a step than the shop's policy demands.

What the step says under `persons` counts, or else what the procedure says; a helper who holds something is a second
person.
A default asks for two persons where something heavier than the reference mass is taken off or put on; whether a crane
carries it, the compiler cannot know, so where the step lists any tool this is a warning that may be allowed with the
reason.

Wrong:

```yaml equipment
items:
  drop-box:
    name: drop box
    mass: {value: 42 kg, source: plate, at: line 7}
```

```yaml procedure
persons: 1
sections:
  - title: Take it off
    steps:
      - step: Remove the [drop-box].
        do:
          - remove: drop-box   #! policy-too-few
```

Right:

```yaml equipment
items:
  drop-box:
    name: drop box
    mass: {value: 42 kg, source: plate, at: line 7}
```

```yaml procedure
persons: 2
sections:
  - title: Take it off
    steps:
      - step: Remove the [drop-box].
        persons: 2
        do:
          - remove: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.demanding import demands
from authoring.model.lacking import without
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Step
from authoring.model.told_demands import met, origin, reason
from authoring.rules.rule import Fault

# What a shop demands, and what stated facts leave no doubt of, is an error.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("A4", "N17")

_WITH_HELPER = 2


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each step and policy of which fewer persons do the step."""
    vehicle = library.scope(procedure).vehicle
    for demand in demands(procedure, library):
        asked = demand.policy.persons
        if vehicle is None or asked is None or _persons(demand.step, procedure) >= asked:
            continue
        lack = without(vehicle, procedure.covers, demand.asked, demand.settled)
        if lack is not None:
            yield Fault(
                f"{met(demand, procedure)} and takes {_persons(demand.step, procedure)} instead of {asked} "
                f"persons{lack.whom}. {reason(demand.policy)}",
                demand.mention.span,
                f'Write "persons: {asked}" at the step, and at the procedure.',
                origin(demand),
                lack.fitments,
                Severity.ERROR if demand.certain else None,
            )


def _persons(step: Step, procedure: Procedure) -> int:
    """Return how many persons do a step; where nothing is said, one."""
    helped = _WITH_HELPER if step.holding is not None and step.holding.by == "helper" else 1
    return max(helped, step.persons if step.persons is not None else procedure.persons or 1)
