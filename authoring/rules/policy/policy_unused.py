"""No procedure of the library meets a policy of the shop.

A policy that nothing meets is a slip in a name or a bound, or a leftover of a job that is gone.
Whoever reads it believes that something is guarded.
A change to a default that ships is not asked for, since the next machine may need it.

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
  hot-by-hand:   #! policy-unused
    hazard: hot
    hotter-than: 600 °C
    why: A burn of the hand costs a week of work.
```

```yaml equipment
items:
  drop-box: {name: drop box}
  exhaust-pipe: {name: pipe, hazards: [hot], hot: {value: 300 °C, source: plate, at: line 9, surface: stone}}
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
    hotter-than: 60 °C
    why: A burn of the hand costs a week of work.
```

```yaml equipment
items:
  drop-box: {name: drop box}
  exhaust-pipe: {name: pipe, hazards: [hot], hot: {value: 300 °C, source: plate, at: line 9, surface: stone}}
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

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.demanding import demands
from authoring.model.library import Library
from authoring.model.policy_defaults import DEFAULTS
from authoring.rules.rule import Fault, Together

SEVERITY = Severity.WARNING
REQUIREMENTS = ("A6",)
ABOUT = ("shop-policy",)
TOGETHER = Together.EVERY


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each policy of the shop that no step of any procedure meets."""
    if library.shop is None or not library.shop.policy or library.partial:
        return
    met = {demand.policy.id for one in library.procedures.values() for demand in demands(one, library)}
    for policy in library.shop.policy.values():
        if policy.id not in met and policy.id not in DEFAULTS and policy.where is not None:
            yield Fault(
                f'No step of the library meets the policy "{policy.id}".',
                policy.where.key(),
                "Look at its hazard, its acts and its bounds, or remove it.",
            )
