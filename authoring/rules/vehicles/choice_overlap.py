"""A part choice gives two parts for one machine, or for one measured size.

The reader has to pick by chance; where parts look alike, the wrong one may even fit.
Sizes that only touch overlap as well, because a measurement may give just that number.

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
      - step: Fit the [ring].
        do:
          - fit: ring
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.choosing import answerable, asked, both_fit, comparable, decided
from authoring.model.concern import concern_of
from authoring.model.fitments import may_hold
from authoring.model.library import Library
from authoring.model.procedure import Choice, ChoicePart, Procedure
from authoring.model.smallest import Fitment, smallest, told
from authoring.model.stated import stated
from authoring.model.things import Equipment, When
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1", "N2")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each part that competes with an earlier one of its choice."""
    equipment = library.equipment[procedure.equipment]
    for choice in procedure.choices.values():
        if all(decided(part) for part in choice.parts) and answerable(procedure, choice, equipment):
            machines = asked(procedure, choice, equipment)
            for place, part in enumerate(choice.parts):
                pairs = ((other, part) for other in choice.parts[:place])
                faults = (_overlap(*pair, choice, machines, equipment, procedure.covers) for pair in pairs)
                yield from [fault for fault in faults if fault is not None][:1]


def _overlap(
    one: ChoicePart,
    other: ChoicePart,
    choice: Choice,
    machines: Sequence[Fitment],
    equipment: Equipment,
    covers: When,
) -> Fault | None:
    if one.part == other.part or _told_by_size(one, other):
        return None
    bad: list[Fitment] = []
    good: list[Fitment] = []
    for each in machines:
        kept = bad if may_hold(one.when, each) and may_hold(other.when, each) else good
        kept.append(each)
    if not bad:
        return None
    whom = told(smallest(bad, good), equipment)
    fitments = concern_of(bad, equipment.features, covers)
    related = (Related(_place(one), f'the condition of "{one.part}"'),)
    if one.size is not None and other.size is not None:
        message = f'"{one.part}" and "{other.part}" share sizes: {one.size.text} and {other.size.text} overlap.'
        cure = "State sizes that are apart, or tell the parts by a feature."
        return Fault(message, _place(other), cure, related, fitments)
    message = f'The choice "{choice.id}" gives both "{one.part}" and "{other.part}" for {whom}.'
    return Fault(message, _place(other), "Narrow one of the two conditions.", related, fitments)


def _told_by_size(one: ChoicePart, other: ChoicePart) -> bool:
    """Tell whether two measured sizes keep the parts apart; where a size was refused, that is told already."""
    if not (stated(one.where, "size") and stated(other.where, "size")):
        return False
    if one.size is None or other.size is None or not comparable(one.size, other.size):
        return True
    return not both_fit(one.size, other.size)


def _place(part: ChoicePart) -> Span:
    return part.where.of("size", "value") if stated(part.where, "size") else part.where.of("when")
