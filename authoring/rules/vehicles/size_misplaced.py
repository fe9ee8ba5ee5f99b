"""The sizes of a choice and its dimensions do not match.

A vernier gauge in the hand needs one answer: what is measured, and which window each part has there.
A part has one `size`, or `sizes` in the dimensions that the choice states; every part has a size in each of them,
because an empty field in the table tells nobody anything.
At least one dimension decides, or there is no need to measure.

Wrong:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015, one-time: true}
```

```yaml procedure
choices:
  ring:
    name: ring of the plug
    question: How large is the old ring?
    dimensions:
      width: {name: width}
      bore: {name: bore, decides: false}
    parts:
      - part: plug-ring
        sizes:
          width: {value: 9.0 ± 0.3 mm, source: bench-book, at: page 3}
          bore: {value: 18.2 ± 0.2 mm, source: bench-book, at: page 3}
          height: {value: 4 mm, source: bench-book, at: page 3}   #! size-misplaced
        tell: It is narrow.
      - part: wide-ring
        sizes:   #! size-misplaced
          width: {value: 13.0 ± 0.3 mm, source: bench-book, at: page 3}
        tell: It is wide.
sections:
  - title: Fit the ring
    steps:
      - step: Measure the [ring].
        do:
          - measure:
              what: ring
              outcomes:
                - {found: The size lies inside the window., then: go-on}
                - {found: It is another one., then: stop}
      - step: Fit the [ring].
        do:
          - fit: ring
```

Right:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015, one-time: true}
```

```yaml procedure
choices:
  ring:
    name: ring of the plug
    question: How large is the old ring?
    dimensions:
      width: {name: width}
      bore: {name: bore, decides: false}
    parts:
      - part: plug-ring
        sizes:
          width: {value: 9.0 ± 0.3 mm, source: bench-book, at: page 3}
          bore: {value: 18.2 ± 0.2 mm, source: bench-book, at: page 3}
        tell: It is narrow.
      - part: wide-ring
        sizes:
          width: {value: 13.0 ± 0.3 mm, source: bench-book, at: page 3}
          bore: {value: 18.2 ± 0.2 mm, source: bench-book, at: page 3}
        tell: It is wide.
sections:
  - title: Fit the ring
    steps:
      - step: Measure the [ring].
        do:
          - measure:
              what: ring
              outcomes:
                - {found: The size lies inside the window., then: go-on}
                - {found: It is another one., then: stop}
      - step: Fit the [ring].
        do:
          - fit: ring
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.nearest import did_you_mean
from authoring.diagnostics.words import joined, quoted
from authoring.model.library import Library
from authoring.model.procedure import Choice, ChoicePart, Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N2",)
ABOUT = ("sized-choice",)


def check(procedure: Procedure, _: Library) -> Iterator[Fault]:
    """Yield a fault for each part with a size too many or too few, and for dimensions of which none decides."""
    for choice in procedure.choices.values():
        for part in choice.parts:
            yield from _of_part(choice, part)
        if choice.dimensions and not any(one.decides for one in choice.dimensions.values()):
            yield Fault(
                f'No dimension of the choice "{choice.id}" decides, so measuring tells nothing.',
                choice.where.key("dimensions"),
                'Leave "decides: false" out where the size tells the parts apart, or say so under "no-matter" instead.',
            )


def _of_part(choice: Choice, part: ChoicePart) -> Iterator[Fault]:
    if part.stated is not None and (part.sizes or choice.dimensions):
        message = f'"{part.part}" has a "size" and "sizes".'
        if not part.sizes:
            message = f'"{part.part}" has a single "size", but the choice "{choice.id}" states dimensions.'
        yield Fault(message, part.where.key("size"), 'Keep "sizes" alone, with one entry for each dimension.')
        return
    for name, size in part.sizes.items():
        if name not in choice.dimensions:
            yield Fault(
                f'The choice "{choice.id}" has no dimension "{name}".',
                size.where.span,
                did_you_mean(name, choice.dimensions) or 'State it under "dimensions" of the choice.',
            )
    missing = [one for name, one in choice.dimensions.items() if name not in part.sizes]
    if missing:
        yield Fault(
            f'"{part.part}" has no size for {joined([quoted(one.id) for one in missing])}.',
            part.where.key("sizes"),
            "Give it its size there, or leave the dimension out.",
            (Related(missing[0].where.span, "the dimension"),),
        )
