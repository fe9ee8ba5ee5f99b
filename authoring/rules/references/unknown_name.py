"""A name stands for nothing.

A step that calls a thing by a name nobody knows cannot be followed, and whatever hangs on the name
(a torque, a tool, a caution) silently falls away.
This covers names in brackets, in actions, in lists of tools, safety messages and figures, in `covers` and in `on`.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Remove the [levle-plug].   #! unknown-name
        do:
          - remove: levle-plug   #! unknown-name
```

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Remove the [level-plug].
        do:
          - remove: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.nearest import did_you_mean
from authoring.model.library import Library
from authoring.model.mentions import Mention, mentions
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A6", "R1")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each mention of a name that stands for nothing."""
    if library.partial:
        return  # the name may well stand in the file that could not be read
    scope = library.scope(procedure)
    for mention in mentions(procedure):
        known: Mapping[str, object] = scope.safety if mention.wants == "message" else scope.things
        if mention.name not in known:
            yield _unknown(mention, known)


def _unknown(mention: Mention, known: Mapping[str, object]) -> Fault:
    sort = "safety message" if mention.wants == "message" else "thing"
    return Fault(
        f"No {sort} is called “{mention.name}”.",
        mention.span,
        did_you_mean(mention.name, known)
        or "Use a name from the stock, the equipment or this procedure, or add it there.",
    )
