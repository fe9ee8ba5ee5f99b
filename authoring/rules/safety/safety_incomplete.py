"""A safety message leaves out what threatens, what it does, or how to stay clear of it.

A reader who is told only "hot" does not know how badly it burns or what to do about it.
All three belong together: the hazard, its consequence, and the way to avoid it (ANSI Z535.6 and DITA 1.3 ask the same).

Wrong:

```yaml shop
safety:
  hot-pipe:   #! safety-incomplete
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    avoidance: Wear the [gauntlets].
```

Right:

```yaml shop
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets].
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.words import joined, quoted
from authoring.model.library import Library
from authoring.model.messages import messages_of
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("S2",)

_ASKED = {
    "hazard": "what threatens",
    "consequence": "what it does to whom",
    "avoidance": "how to stay clear of it",
}


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each message that lacks one or more of its three parts."""
    for written in messages_of(library):
        message = written.message
        texts = {"hazard": message.hazard, "consequence": message.consequence, "avoidance": message.avoidance}
        missing = [key for key, text in texts.items() if not text]
        if missing:
            yield Fault(
                f'The safety message "{message.id}" does not say {joined([_ASKED[key] for key in missing])}.',
                message.where.span,
                f"Add {joined([quoted(key) for key in missing])}.",
            )
