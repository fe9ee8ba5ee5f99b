"""An action holds a thing against itself, or puts it on itself.

One of the two names was meant to be another, most often the one of the other side.
What stands under `with`, `on`, `in`, `to`, `until`, `replaces` or `without` is another thing than `what`; so is what it
`engages` and what it must be `clear-of`.

Wrong:

```yaml procedure
sections:
  - title: Compare
    steps:
      - step: Compare the [level-plug] with the [level-plug].
        do:
          - compare:
              what: level-plug
              with: level-plug   #! named-with-itself
              outcomes:
                - {found: Both are alike., then: go-on}
                - {found: They differ., then: stop, say: Ask the workshop lead.}
```

Right:

```yaml procedure
sections:
  - title: Compare
    steps:
      - step: Compare the [level-plug] with the [plug-ring].
        do:
          - compare:
              what: level-plug
              with: plug-ring
              outcomes:
                - {found: Both are alike., then: go-on}
                - {found: They differ., then: stop, say: Ask the workshop lead.}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.mentions import touched
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R1",)

_OTHERS = frozenset({"with", "on", "in", "to", "until", "replaces", "without", "engages", "clear-of"})


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each name that an action gives to both sides."""
    for _section, step in procedure.steps():
        for action in step.actions:
            manner = action.manner
            named = [(one.name, one.role, one.span) for one in touched(action)]
            named += [(one.other, "engages", one.where.of("with")) for one in manner.engages]
            named += [(one.of, "clear-of", one.where.of("of")) for one in manner.clear_of]
            for name, role, span in named:
                if role in _OTHERS and action.what == (name,):
                    yield Fault(
                        f'"{name}" stands under "{role}" of an action on itself.', span, "Name the other thing."
                    )
