"""An outcome is like a picture that is not there.

"As in picture 2" helps only who can see picture 2; without it the reader grades by memory.
An outcome with `like` belongs to a checkpoint with `against` a figure, and the figure has a callout of that number.

Wrong:

```yaml procedure
sections:
  - title: Look
    steps:
      - step: Look at the [drop-box].
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is dry., like: 1, then: go-on}   #! like-without-picture
                - {found: It is wet., then: stop}
```

The figure has no such number.

```yaml procedure
figures:
  wear:
    file: drop-box.svg
    title: The plug, sound and worn
    alt: The first plug has sharp corners, and those of the second are round.
    callouts:
      - {on: level-plug, across: 20, down: 60}
      - {on: level-plug, across: 70, down: 60}
sections:
  - title: Look
    steps:
      - step: Look at the corners of the [level-plug].
        figures: [wear]
        do:
          - inspect:
              what: level-plug
              against: wear
              outcomes:
                - {found: They are sharp., like: 1, then: go-on}
                - {found: They are round., like: 3, then: stop}   #! like-without-picture
```

Right:

```yaml procedure
figures:
  wear:
    file: drop-box.svg
    title: The plug, sound and worn
    alt: The first plug has sharp corners, and those of the second are round.
    callouts:
      - {on: level-plug, across: 20, down: 60}
      - {on: level-plug, across: 70, down: 60}
sections:
  - title: Look
    steps:
      - step: Look at the corners of the [level-plug].
        figures: [wear]
        do:
          - inspect:
              what: level-plug
              against: wear
              outcomes:
                - {found: They are sharp., like: 1, then: go-on}
                - {found: They are round., like: 2, then: stop}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.course import Seen, seen
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("F1", "R1")
ABOUT = ("graded",)


def check(procedure: Procedure, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each outcome that is like a picture, or a number, that its checkpoint does not have."""
    for one in seen(procedure):
        if one.outcome.like is not None:
            yield from _like(one, one.outcome.like, procedure)


def _like(one: Seen, number: int, procedure: Procedure) -> Iterator[Fault]:
    span = one.outcome.where.of("like")
    against = one.action.roles.get("against") if one.action is not None else None
    if against is None:
        cure = (
            'Name the figure under "against" of the checkpoint, or take "like" out.'
            if one.action is not None
            else 'Make it an outcome of a checkpoint with "against", or take "like" out.'
        )
        yield Fault("This is like a picture, but there is none to compare with.", span, cure)
        return
    figure = procedure.figures.get(against)
    if figure is not None and number > len(figure.callouts):  # an unknown figure is told elsewhere
        has = len(figure.callouts)
        yield Fault(
            f'The figure "{against}" has no number {number}.',
            span,
            f"Its numbers go from 1 to {has}." if has else "Give the figure callouts, one for each picture in it.",
            (Related(figure.where.span, "the figure"),),
        )
