"""A safety message about people belongs to no hazard that the shop has registered.

Whoever is hurt needs to know at once what to do first, and that stands with the kind of hazard.
A message that cites no kind leads nowhere when its warning came too late.
This is asked only where the shop registers hazards, and only of messages about harm to people.

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
    avoidance: Wear the [gauntlets] and keep your arm clear of the pipe.
    of: hot
  hot-oil:   #! message-without-hazard
    harm: person
    severity: moderate
    likelihood: could
    hazard: The oil is hot after a drive.
    consequence: It scalds the hand it runs over.
    avoidance: Wear the [gauntlets].
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
    avoidance: Wear the [gauntlets] and keep your arm clear of the pipe.
    of: hot
  hot-oil:
    harm: person
    severity: moderate
    likelihood: could
    hazard: The oil is hot after a drive.
    consequence: It scalds the hand it runs over.
    avoidance: Wear the [gauntlets].
    of: hot
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.messages import messages_of
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("S7",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each message about people that cites no hazard, where hazards are registered."""
    if library.shop is None or not library.shop.hazards:
        return
    for written in messages_of(library):
        message = written.message
        if message.harm == "person" and message.of is None:
            yield Fault(
                f'The safety message "{message.id}" cites none of the hazards that the shop has registered.',
                message.where.span,
                'Add "of: " with the kind of hazard; register it in the shop file if it is a new one.',
            )
