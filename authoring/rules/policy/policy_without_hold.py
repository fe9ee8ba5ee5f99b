"""The shop's policy demands a hold point before an act, and none comes before it.

A hold point is a checkpoint with `hold: true`: nobody goes on until it is met.
It stands in the same section, at an earlier step or at an earlier action of the step itself, so that nothing that
happened in between can undo what it has shown.
A hold point after the act comes too late to keep anybody from harm.

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
    acts: [near]
    hold: true
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
    safety: [hot-pipe]
    steps:
      - step: Feel from a distance whether the [exhaust-pipe] is warm.
        do:
          - inspect:
              what: exhaust-pipe
              way: felt
              outcomes:
                - {found: No warmth is felt., then: go-on}
                - {found: Warmth is felt., then: put-right, say: Let the pipe cool.}
        why: In the next step your arm lies across the pipe.
      - step: Wipe the [drop-box] dry with a [rag].
        with: [rag]
        near: [exhaust-pipe]   #! policy-without-hold
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
    acts: [near]
    hold: true
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
    safety: [hot-pipe]
    steps:
      - step: Feel from a distance whether the [exhaust-pipe] is warm.
        do:
          - inspect:
              what: exhaust-pipe
              way: felt
              hold: true
              outcomes:
                - {found: No warmth is felt., then: go-on}
                - {found: Warmth is felt., then: put-right, say: Let the pipe cool.}
        why: In the next step your arm lies across the pipe.
      - step: Wipe the [drop-box] dry with a [rag].
        with: [rag]
        near: [exhaust-pipe]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.demanding import demands
from authoring.model.lacking import without
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.told_demands import met, reason
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("H1",)
ABOUT = ("shop-policy",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each step and policy of which some machine comes to the act without a hold point."""
    vehicle = library.scope(procedure).vehicle
    for demand in demands(procedure, library):
        if vehicle is None or not demand.policy.hold or demand.policy.where is None:
            continue
        lack = without(vehicle, procedure.covers, demand.asked, (*demand.held, *demand.settled))
        if lack is not None:
            yield Fault(
                f"{met(demand, procedure)}, but no hold point of this section comes before it{lack.whom}. "
                f"{reason(demand.policy)}",
                demand.mention.span,
                'Put a checkpoint with "hold: true" before it, in the same section or step.',
                (Related(demand.policy.where.of("hold"), "asked for here"),),
                lack.fitments,
            )
