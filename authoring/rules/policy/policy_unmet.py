"""The shop's policy demands a safety message in a situation, and none is in force there.

The shop file says under `policy` which situation demands a message: the kind of hazard, what is done near it or with
it, and from which temperature, mass, pressure, voltage or height on.
A message is in force at a step if it is the step's own, its section's, or the job's; one at another step comes too
early or too late.
A policy that names a `message` has it placed at the step by the compiler, so that nothing is left to find.
The defaults that ship ask the same of every shop, as far as stated facts leave no doubt.

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
        with: [rag]
        near: [exhaust-pipe]   #! policy-unmet
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
    message: hot-pipe
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
        with: [rag]
        near: [exhaust-pipe]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.demanding import Demand, demands
from authoring.model.in_force import kinds_of, spoken
from authoring.model.lacking import without
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.told_demands import kind, met, origin, reason
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("S7", "N9")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each step and policy of which some machine has no message of the kind in force."""
    scope = library.scope(procedure)
    vehicle = scope.vehicle
    told: set[tuple[str, str, str]] = set()
    for demand in demands(procedure, library):
        here = {(demand.step.id, demand.item.id, name) for name in kinds_of(demand.policy, demand.item, scope)}
        if vehicle is None or not (demand.policy.asks_message and demand.certain):
            continue
        if demand.policy.where is None and here & told:
            continue  # the shop asks for the same, which was told
        given = (*(one.when for one in spoken(demand, library, procedure)), *demand.settled)
        lack = without(vehicle, procedure.covers, demand.asked, given)
        if lack is not None:
            told |= here
            yield Fault(
                f"{met(demand, procedure)}, but no safety message {kind(demand.policy)} is in force{lack.whom}. "
                f"{reason(demand.policy)}",
                demand.mention.span,
                _cure(demand),
                origin(demand),
                lack.fitments,
            )


def _cure(demand: Demand) -> str:
    policy = demand.policy
    if policy.message is not None:
        return f'Let "{policy.message}" name only what this procedure knows, or call another message of the kind.'
    sort = f'with "of: {policy.hazard}"' if policy.hazard is not None else f'with "sign: {policy.sign}"'
    return f'List a message {sort} under "safety" of the step or its section, or under "hazards".'
