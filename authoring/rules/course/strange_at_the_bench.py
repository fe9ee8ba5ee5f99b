"""A step at the bench works on something that is no part of what lies there.

A section with `bench` tells the reader to leave the machine, so a thing that stayed on the machine is out of reach.
Either the thing belongs to what lies at the bench and does not say so, or the step stands in the wrong section.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  pump: {name: oil pump, part-of: drop-box}
  rotor: {name: rotor}
```
```yaml procedure
sections:
  - title: Take off
    steps:
      - do: [{remove: pump}]
  - title: Clean the pump
    bench: pump
    steps:
      - step: Clean the [rotor].
        do:
          - clean: rotor   #! strange-at-the-bench
  - title: Put back
    steps:
      - do: [{fit: pump}]
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  pump: {name: oil pump, part-of: drop-box}
  rotor: {name: rotor, part-of: pump}
  vane: {name: vane, part-of: rotor}
```
```yaml procedure
sections:
  - title: Take off
    steps:
      - do: [{remove: pump}]
  - title: Clean the pump
    bench: pump
    steps:
      - do: [{clean: [pump, rotor, vane]}]
  - title: Put back
    steps:
      - do: [{fit: pump}]
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.mentions import touched
from authoring.model.on_and_off import wholes
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("N5",)
ABOUT = ("bench",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each item that a step at the bench touches and that does not lie there."""
    things = library.scope(procedure).things
    equipment = library.scope(procedure).equipment
    items = equipment.items if equipment is not None else {}
    for section in procedure.sections:
        if section.bench not in items:
            continue  # what is no item is told elsewhere
        told: set[str] = set()
        for action in (action for step in section.steps for action in step.actions):
            for mention in touched(action):
                if (
                    mention.name in items
                    and mention.name not in told
                    and section.bench not in wholes(mention.name, things)
                ):
                    told.add(mention.name)
                    yield Fault(
                        f'"{mention.name}" is no part of "{section.bench}", which is what lies at the bench here.',
                        mention.span,
                        f"Write part-of: {section.bench} at the item, or move the step to another section.",
                        (Related(section.where.of("bench"), "what lies at the bench"),),
                    )
