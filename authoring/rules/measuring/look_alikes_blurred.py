"""A gauge cannot tell the parts of a choice apart.

Two sizes are told apart when they are further from each other than the gauge may be off:
then no reading of the one part is a size of the other.
How far it may be off is its stated accuracy, or half of its smallest step, twice where both ends are read by eye.
A part that reads like its look-alike goes in, fits, and fails later.

Wrong:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  thin-seal: {name: thin seal, number: FL-P-061, one-time: true}
  thick-seal: {name: thick seal, number: FL-P-062, one-time: true}
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench}
  gauntlets: {name: heat gauntlets}
  rule: {name: steel rule, resolution: 1 mm, by-eye: true}
```

```yaml procedure
choices:
  seal:
    name: seal
    question: Which brake does the machine have?
    parts:
      - part: thin-seal
        when: {brake: drum}
        size: {value: 9.0 ± 0.1 mm, source: bench-book, at: page 30}
        tell: It has one lip.
      - part: thick-seal
        when: {brake: disc}
        size: {value: 10.0 ± 0.1 mm, source: bench-book, at: page 30}
        tell: It has two lips.
sections:
  - title: Choose
    steps:
      - step: Measure the width of the new [seal] with the [rule].
        with: [rule]
        do:
          - measure:
              what: seal   #! look-alikes-blurred
              outcomes:
                - {found: The width lies inside the window., then: go-on}
                - {found: It is another one., then: put-right, say: Take the other seal.}
      - step: Fit the [seal].
        do:
          - fit: seal
```

Right:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  thin-seal: {name: thin seal, number: FL-P-061, one-time: true}
  thick-seal: {name: thick seal, number: FL-P-062, one-time: true}
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench}
  gauntlets: {name: heat gauntlets}
  vernier: {name: vernier gauge, resolution: 0.05 mm}
```

```yaml procedure
choices:
  seal:
    name: seal
    question: Which brake does the machine have?
    parts:
      - part: thin-seal
        when: {brake: drum}
        size: {value: 9.0 ± 0.1 mm, source: bench-book, at: page 30}
        tell: It has one lip.
      - part: thick-seal
        when: {brake: disc}
        size: {value: 10.0 ± 0.1 mm, source: bench-book, at: page 30}
        tell: It has two lips.
sections:
  - title: Choose
    steps:
      - step: Measure the width of the new [seal] with the [vernier].
        with: [vernier]
        do:
          - measure:
              what: seal
              outcomes:
                - {found: The width lies inside the window., then: go-on}
                - {found: It is another one., then: put-right, say: Take the other seal.}
      - step: Fit the [seal].
        do:
          - fit: seal
```
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.gauging import Gauge, Pair, gauge_for, in_base, pairs, sizes_of
from authoring.model.library import Library
from authoring.model.mentions import Mention, touched
from authoring.model.procedure import Choice, Procedure
from authoring.quantities.show import spell
from authoring.rules.rule import Fault
from authoring.workshop.gauges import Distinction
from authoring.workshop.interval import exactly, quantity_of

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R3",)
ABOUT = ("sized-choice",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each two parts that the gauge of a measuring step may take for one another."""
    scope = library.scope(procedure)
    for _, step in procedure.steps():
        for action in step.actions:
            if action.kind.name != "measure" or "value" in action.roles:
                continue
            for mention in touched(action):
                choice = procedure.choices.get(mention.name)
                gauge = gauge_for(sizes_of(choice), step, scope) if choice is not None else None
                if choice is not None and gauge is not None:
                    yield from _blurred(choice, mention, gauge)


def _blurred(choice: Choice, mention: Mention, gauge: Gauge) -> Iterator[Fault]:
    for pair in pairs(choice, gauge):
        if pair.separation.distinction is Distinction.NOT:
            yield _fault(pair, mention, gauge)


def _fault(pair: Pair, mention: Mention, gauge: Gauge) -> Fault:
    blur = _spelled(pair.blur, gauge)
    gap = pair.separation.gap
    apart = f"lie {_spelled(gap, gauge)} apart" if gap > 0 else "overlap"
    return Fault(
        f'The {gauge.tool.name} may be off by {blur}, and the sizes of "{pair.smaller.part}" and '
        f'"{pair.larger.part}" {apart}.',
        mention.span,
        "Measure with a finer gauge, or tell the parts apart by another dimension.",
        (
            Related(pair.smaller.where.of("part"), "the smaller one"),
            Related(pair.larger.where.of("part"), "the larger one"),
        ),
    )


def _spelled(number: Fraction, gauge: Gauge) -> str:
    """Return a length on the scale of the gauge, with a digit more than the scale shows."""
    places = (gauge.tool.resolution.places if gauge.tool.resolution is not None else 0) + 1
    return spell(quantity_of(in_base(exactly(number), gauge.unit), gauge.unit, places))
