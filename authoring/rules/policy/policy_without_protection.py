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
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.told_demands import met, reason
from authoring.model.unworn import unworn
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A2", "S2")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each step and policy of which the step does not list what is to be worn."""
    for found in unworn(procedure, library):
        policy, names = found.demand.policy, joined([f'"{name}"' for name in found.names], "and")
        yield Fault(
            f"{met(found.demand, procedure)} and does not list {names}{found.lack.whom}. {reason(policy)}",
            found.demand.mention.span,
            f'Add {names} to "with" of the step.',
            (Related(policy.where.of("wear"), "asked for here"),) if policy.where is not None else (),
            found.lack.fitments,
        )
