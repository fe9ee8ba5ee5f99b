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
from authoring.model.choosing import asked
from authoring.model.concern import concern_of
from authoring.model.fitments import told
from authoring.model.library import Library
from authoring.model.procedure import Choice, Procedure
from authoring.model.space import Cells, Space
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
        question = asked(procedure, choice, vehicle)
        if question is not None:
            yield from _gap(choice, *question)


def _gap(choice: Choice, space: Space, asking: Cells) -> Iterator[Fault]:
    left = asking & ~space.either(part.when for part in choice.parts)
    if left:
        whom = told(space.fewest(left, asking), space.vehicle, "any machine covered")
        yield Fault(
            f'The choice "{choice.id}" has no part for {whom}.',
            choice.where.span,
            'Add the part for it, or leave such machines out of "covers".',
            fitments=concern_of(space.groups(left), space.vehicle.features, space.covers),
        )
