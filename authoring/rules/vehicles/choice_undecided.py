"""Nothing tells one part of a choice from the others.

A choice is made by a feature of the machine (`when`) or by a measured size (`size`, or `sizes` in dimensions that
decide); a part among several that has neither would always do.
Sizes that measure different things cannot decide either.

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
  ring:
    name: ring of the plug
    question: Which brake does the machine have?
    parts:
      - part: wide-ring
        when: {brake: disc}
        tell: It is wide.
      - part: plug-ring   #! choice-undecided
        tell: It is narrow.
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

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.choosing import comparable, decided, deciding
from authoring.model.library import Library
from authoring.model.procedure import Choice, Procedure
from authoring.model.specification import Specification
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1", "N2")
ABOUT = ("choice",)


def check(procedure: Procedure, _: Library) -> Iterator[Fault]:
    """Yield a fault for each part that nothing decides on, and for a size that compares with no other."""
    for choice in procedure.choices.values():
        if len(choice.parts) > 1:
            yield from _undecided(choice)


def _undecided(choice: Choice) -> Iterator[Fault]:
    measured: dict[str, Specification] = {}
    for part in choice.parts:
        if not decided(choice, part):
            yield Fault(
                f'Nothing says when "{part.part}" is the right part of the choice "{choice.id}".',
                part.where.of("part"),
                'State "when" with a feature, or a measured size.',
            )
        for name, size in deciding(choice, part).items():
            yield from _measured_differently(choice, measured.setdefault(name, size), size)


def _measured_differently(choice: Choice, first: Specification, size: Specification) -> Iterator[Fault]:
    one, other = first.value, size.value
    if one is not None and other is not None and not comparable(one, other):
        yield Fault(
            f'The parts of the choice "{choice.id}" are measured differently: '
            f"one by its {one.dimension.value}, one by its {other.dimension.value}.",
            size.where.of("value"),
            "Measure the same thing of every part.",
            (Related(first.where.of("value"), "the other measure"),),
        )
