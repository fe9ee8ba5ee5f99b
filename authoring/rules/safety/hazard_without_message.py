"""A kind of hazard is registered, but no safety message warns of it.

The shop knows that such a thing hurts people here, and no booklet says so.
A message cites the kind it warns of under `of`, so that what to do when it has happened is found from it.

Wrong:

```yaml shop
hazards:
  hot:
    name: hot surface
    emergency: [Hold the burn under cool running water.]
  crushing:   #! hazard-without-message
    name: crushing
    emergency: [Call for help before you move the load.]
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets] and keep your arm clear of the pipe.
    sign: hot-surface
    of: hot
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
    sign: hot-surface
    of: hot
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.messages import messages_of
from authoring.rules.rule import Fault, Together

# A register may be ahead of the procedures, so this is likely a gap and not one for certain.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("S7",)
TOGETHER = Together.EVERY


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each registered kind that no message of the library cites."""
    if library.shop is None or library.partial:
        return  # the message may well stand in the file that could not be read
    cited = {written.message.of for written in messages_of(library)}
    for hazard in library.shop.hazards.values():
        if hazard.id not in cited:
            yield Fault(
                f'No safety message warns of the hazard "{hazard.id}".',
                hazard.where.span,
                f'Write "of: {hazard.id}" in the message that warns of it, write that message, or leave this out.',
            )
