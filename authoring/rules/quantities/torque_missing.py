"""Fasteners are tightened, but no torque is stated for them.

"Tighten" without a number is tightened by feel, which is the commonest way to strip a thread or to lose a bolt.
The torque stands once, with the fastener group in the equipment file, and is printed at every step that tightens it.

Wrong:

```yaml equipment
fasteners:
  level-plug: {name: level plug, count: 1, thread: M18 x 1.5, on: drop-box}
```

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Start the [level-plug] by hand.
        do:
          - start: level-plug
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug   #! torque-missing
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
```

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Start the [level-plug] by hand.
        do:
          - start: level-plug
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.mentions import Mention, touched
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("T1",)
ABOUT = ("tightened",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for the first tightening of each group without a torque."""
    things = library.scope(procedure).things
    told: set[str] = set()
    for mention in _tightened(procedure):
        named = things.get(mention.name)
        group = named.thing if named is not None else None
        if (
            isinstance(group, FastenerGroup)
            and group.torque is None
            and group.tightened is None
            and group.id not in told
        ):
            told.add(group.id)
            yield Fault(
                f'No torque is stated for "{group.id}", which is tightened here.',
                mention.span,
                'Add "torque: " with its value and source to the fastener group, or "tightened: " if there is none.',
                (Related(group.where.span, f'"{group.id}" is stated here'),),
            )


def _tightened(procedure: Procedure) -> Iterator[Mention]:
    for _, step in procedure.steps():
        for action in step.actions:
            if action.kind.torque:
                yield from (mention for mention in touched(action) if mention.role == "what")
