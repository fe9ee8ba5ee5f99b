"""The safety message that is in force says less than the shop's policy demands.

From severity and likelihood follow the signal word and the order in which messages are read.
A message that is turned down from serious to minor goes to the end of the row, and the policy with it.
At least one message of the kind that is in force states the policy's `severity` and `likelihood`, or what is worse.

Wrong:

```yaml shop
hazards:
  hot:
    name: hot surface
    emergency: [Hold the burn under cool running water.]
safety:
  hot-pipe:
    harm: person
    severity: minor
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Keep your arm clear of the pipe.
    of: hot
policy:
  hot-by-hand:
    hazard: hot
    severity: serious
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
        safety: [hot-pipe]   #! policy-too-weak
        with: [rag]
        near: [exhaust-pipe]
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
    severity: serious
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
        near: [exhaust-pipe]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.demanding import Demand, demands
from authoring.model.fitments import together
from authoring.model.in_force import spoken
from authoring.model.lacking import without
from authoring.model.library import Library
from authoring.model.policy import Policy
from authoring.model.procedure import Procedure
from authoring.model.signal_word import LIKELIHOODS, SEVERITIES
from authoring.model.things import Message
from authoring.model.told_demands import kind, met, reason
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("S1", "S7")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each step and policy of which some machine has only messages that state less."""
    vehicle = library.scope(procedure).vehicle
    for demand in demands(procedure, library):
        policy = demand.policy
        if vehicle is None or not demand.certain or (policy.severity is None and policy.likelihood is None):
            continue
        said = spoken(demand, library, procedure)
        weak = [one for one in said if not _enough(one, policy)]
        asked = [together(one.when, when) for one in weak for when in demand.asked]
        given = (*(one.when for one in said if one not in weak), *demand.settled)
        lack = without(vehicle, procedure.covers, asked, given) if weak else None
        if lack is not None:
            yield Fault(
                f'{met(demand, procedure)}, and "{weak[0].id}" says less of it than {_least(policy)}{lack.whom}. '
                f"{reason(policy)}",
                _span(demand, weak),
                f"Call a message {kind(policy)} that states {_least(policy)} or what is worse.",
                (Related(weak[0].where.of("severity"), "what it states"),),
                lack.fitments,
            )


def _enough(message: Message, policy: Policy) -> bool:
    severe = policy.severity is None or SEVERITIES.index(message.severity) <= SEVERITIES.index(policy.severity)
    likely = policy.likelihood is None or LIKELIHOODS.index(message.likelihood) <= LIKELIHOODS.index(policy.likelihood)
    return severe and likely and (message.harm == "person" or not policy.by_facts)


def _least(policy: Policy) -> str:
    stated = (("severity", policy.severity), ("likelihood", policy.likelihood))
    return " and ".join(f'"{key}: {value}"' for key, value in stated if value is not None)


def _span(demand: Demand, weak: Sequence[Message]) -> Span:
    """Return where the weak message is called by the step or its section, else what the policy is about."""
    for holder in (demand.step, demand.section):
        for place, name in enumerate(holder.safety):
            if name in {one.id for one in weak}:
                return holder.where.of("safety", place)
    return demand.mention.span
