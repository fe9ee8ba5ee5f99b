"""A part choice leaves a covered machine without a part.

The apprentice stands before a machine that the booklet covers, and none of the parts is for it;
the nearest look-alike gets fitted.
A choice is asked for the machines of the steps that need it; the message names the fewest features that show the gap.

Wrong:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015, one-time: true}
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench}
  gauntlets: {name: heat gauntlets}
consumables:
  rag: {name: lint-free rag, disposal: oily-waste bin, take: one}
```

```yaml procedure
choices:
  ring:   #! choice-gap
    name: ring of the plug
    question: Which brake does the machine have?
    parts:
      - part: wide-ring
        when: {brake: disc}
        tell: It is wide.
sections:
  - title: Fit the ring
    steps:
      - step: Fit the [ring].
        do:
          - fit: ring
```

Right:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015, one-time: true}
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench}
  gauntlets: {name: heat gauntlets}
consumables:
  rag: {name: lint-free rag, disposal: oily-waste bin, take: one}
```

```yaml procedure
choices:
  ring:
    name: ring of the plug
    question: Which brake does the machine have?
    parts:
      - part: wide-ring
        when: {brake: disc}
        tell: It is wide.
      - part: plug-ring
        when: {brake: drum}
        tell: It is narrow.
sections:
  - title: Fit the ring
    steps:
      - step: Fit the [ring].
        do:
          - fit: ring
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.choosing import answerable, asked
from authoring.model.concern import concern_of
from authoring.model.fitments import may_hold
from authoring.model.library import Library
from authoring.model.procedure import Choice, Procedure
from authoring.model.smallest import Fitment, smallest, told
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1", "N2")
ABOUT = ("choice",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each choice that gives no part for some machine."""
    vehicle = library.scope(procedure).vehicle
    if vehicle is None:
        return
    for choice in procedure.choices.values():
        if answerable(procedure, choice, vehicle):
            yield from _gap(procedure, choice, vehicle)


def _gap(procedure: Procedure, choice: Choice, equipment: Equipment) -> Iterator[Fault]:
    left: list[Fitment] = []
    served: list[Fitment] = []
    for fitment in asked(procedure, choice, equipment):
        kept = served if any(may_hold(part.when, fitment) for part in choice.parts) else left
        kept.append(fitment)
    if left:
        whom = told(smallest(left, served), equipment, "any machine covered")
        yield Fault(
            f'The choice "{choice.id}" has no part for {whom}.',
            choice.where.span,
            'Add the part for it, or leave such machines out of "covers".',
            fitments=concern_of(left, equipment.features, procedure.covers),
        )
