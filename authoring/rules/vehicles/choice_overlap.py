"""A part choice gives two parts for one machine, or for one measured size.

The reader has to pick by chance; where parts look alike, the wrong one may even fit.
Sizes that only touch overlap as well, because a measurement may give just that number.
Where several dimensions decide, it is enough that one of them keeps two parts apart; a dimension that is measured by
habit keeps none apart.
Parts that do as well as each other (`equal`) do not compete.

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
        when: {brake: [disc, drum]}
        tell: It is wide.
      - part: plug-ring
        when: {brake: drum}   #! choice-overlap
        tell: It is narrow.
sections:
  - title: Fit the ring
    steps:
      - step: Fit the [ring].
        do:
          - fit: ring
```

Two sizes that overlap between 9.2 and 9.3 mm.

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
    question: How wide is the old ring?
    parts:
      - part: plug-ring
        size: {value: 9.0 ± 0.3 mm, source: bench-book, at: page 3}
        tell: It is narrow.
      - part: wide-ring
        size: {value: 9.2 to 9.8 mm, source: bench-book, at: page 3}   #! choice-overlap
        tell: It is wide.
sections:
  - title: Fit the ring
    steps:
      - step: Look at the new [ring].
        do:
          - inspect:
              what: ring
              outcomes:
                - {found: It is as the table says., then: go-on}
                - {found: It is not., then: stop}
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
    question: How wide is the old ring?
    parts:
      - part: plug-ring
        size: {value: 9.0 ± 0.3 mm, source: bench-book, at: page 3}
        tell: It is narrow.
      - part: wide-ring
        size: {value: 11.0 ± 0.3 mm, source: bench-book, at: page 3}
        tell: It is wide.
sections:
  - title: Fit the ring
    steps:
      - step: Look at the new [ring].
        do:
          - inspect:
              what: ring
              outcomes:
                - {found: It is as the table says., then: go-on}
                - {found: It is not., then: stop}
      - step: Fit the [ring].
        do:
          - fit: ring
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TypeAlias

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.diagnostics.words import joined
from authoring.model.choosing import asked, comparable, decided, deciding
from authoring.model.concern import concern_of
from authoring.model.fitments import told
from authoring.model.library import Library
from authoring.model.procedure import Choice, ChoicePart, Procedure
from authoring.model.space import Cells, Space
from authoring.model.specification import Specification
from authoring.quantities.quantity import Quantity
from authoring.rules.rule import Fault
from authoring.workshop.interval import interval_of, overlap

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1", "N2")
ABOUT = ("choice",)

Sizes: TypeAlias = Mapping[str, Specification]


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each part that competes with an earlier one of its choice."""
    vehicle = library.scope(procedure).vehicle
    if vehicle is None:
        return
    for choice in procedure.choices.values():
        question = asked(procedure, choice, vehicle) if all(decided(choice, part) for part in choice.parts) else None
        if question is not None:
            for place, part in enumerate(choice.parts):
                faults = (_overlap((other, part), choice, *question) for other in choice.parts[:place])
                yield from [fault for fault in faults if fault is not None][:1]


def _overlap(pair: tuple[ChoicePart, ChoicePart], choice: Choice, space: Space, asking: Cells) -> Fault | None:
    one, other = pair
    mine, others = deciding(choice, one), deciding(choice, other)
    bad = asking & space.where(one.when) & space.where(other.when)
    if not bad or _either_will_do(one, other) or _told_by_size(mine, others):
        return None
    whom = told(space.fewest(bad, asking), space.vehicle)
    fitments = concern_of(space.groups(bad), space.vehicle.features, space.covers)
    related = (Related(_place(one, mine), f'the condition of "{one.part}"'),)
    if mine and others:
        message = f'"{one.part}" and "{other.part}" share sizes: {_shared(choice, mine, others)}.'
        cure = "State sizes that are apart, or tell the parts by a feature."
        return Fault(message, _place(other, others), cure, related, fitments)
    message = f'The choice "{choice.id}" gives both "{one.part}" and "{other.part}" for {whom}.'
    return Fault(message, _place(other, others), "Narrow one of the two conditions.", related, fitments)


def _either_will_do(one: ChoicePart, other: ChoicePart) -> bool:
    return not {one.part, *one.equal}.isdisjoint({other.part, *other.equal})


def _told_by_size(mine: Sizes, others: Sizes) -> bool:
    """Tell whether sizes keep the parts apart in some dimension.

    Where a size was refused, or nothing of the one can be compared with the other, that is told already.
    """
    if not mine or not others:
        return False
    pairs = [(mine[name].value, others[name].value) for name in mine if name in others]
    both = [(one, other) for one, other in pairs if one is not None and other is not None and comparable(one, other)]
    return not both or len(both) < len(pairs) or any(_apart(*pair) for pair in both)


def _apart(one: Quantity, other: Quantity) -> bool:
    return overlap(interval_of(one), interval_of(other)) is None


def _shared(choice: Choice, mine: Sizes, others: Sizes) -> str:
    """Return the sizes that overlap, in words, with the name of the dimension where it has one."""
    told_of = []
    for name, size in mine.items():
        other = others[name].value if name in others else None
        if size.value is not None and other is not None:
            called = f"{choice.dimensions[name].name} " if name in choice.dimensions else ""
            told_of.append(f"{called}{size.value.text} and {other.text} overlap")
    return joined(told_of, "and")


def _place(part: ChoicePart, sizes: Sizes) -> Span:
    for size in sizes.values():
        return size.where.of("value")
    return part.where.of("when")
