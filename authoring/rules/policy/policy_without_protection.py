"""The shop's policy demands something to wear or use, and the step does not list it.

What is not listed under `with` is not laid ready, and nobody walks back for it with oily hands.
Each tool or consumable that the policy names under `wear` stands under `with` of the step.

Wrong:

```yaml shop
hazards:
  hot:
    name: hot surface
    emergency: [Hold the burn under cool running water.]
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Keep your arm clear of the pipe.
    of: hot
policy:
  hot-by-hand:
    hazard: hot
    wear: [gauntlets]
    why: A burn of the hand costs a week of work.
```

```yaml equipment
items:
  drop-box: {name: drop box}
  exhaust-pipe: {name: pipe, hazards: [hot]}
```

```yaml procedure
hazards: none
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        safety: [hot-pipe]
        with: [rag]
        near: [exhaust-pipe]   #! policy-without-protection
        do:
          - clean: drop-box
```

Right:

```yaml shop
hazards:
  hot:
    name: hot surface
    emergency: [Hold the burn under cool running water.]
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Keep your arm clear of the pipe.
    of: hot
policy:
  hot-by-hand:
    hazard: hot
    wear: [gauntlets]
    why: A burn of the hand costs a week of work.
```

```yaml equipment
items:
  drop-box: {name: drop box}
  exhaust-pipe: {name: pipe, hazards: [hot]}
```

```yaml procedure
hazards: none
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        safety: [hot-pipe]
        with: [rag, gauntlets]
        near: [exhaust-pipe]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.words import joined
from authoring.model.demanding import demands
from authoring.model.lacking import without
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.told_demands import met, reason
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A2", "S2")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each step and policy of which the step does not list what is to be worn."""
    vehicle = library.scope(procedure).vehicle
    for demand in demands(procedure, library):
        names = [f'"{name}"' for name in demand.policy.wear if name not in demand.step.uses]
        lack = without(vehicle, procedure.covers, demand.asked, demand.eased) if names and vehicle is not None else None
        if lack is not None and demand.policy.where is not None:
            yield Fault(
                f"{met(demand, procedure)} and does not list {joined(names, 'and')}{lack.whom}. "
                f"{reason(demand.policy)}",
                demand.mention.span,
                f'Add {joined(names, "and")} to "with" of the step.',
                (Related(demand.policy.where.of("wear"), "asked for here"),),
                lack.fitments,
            )
