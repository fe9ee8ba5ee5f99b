"""A thing that is never used again comes off and goes back on.

A bolt that was stretched once, or a plate that was bent open, looks sound and does not hold a second time.
What the equipment file says is never used again is discarded where it comes off, so that a new one goes on.
What may be used again under a condition says under which, or the reader cannot decide.
Each way through the job is followed by itself: what is discarded where one method was taken goes back on where the
other was.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  lock-plate: {name: lock plate, reuse: {is: never, say: Its tabs break.}}
```

```yaml procedure
sections:
  - title: Look under the plate
    steps:
      - step: Remove the [lock-plate] and clean the [drop-box].
        do:
          - remove: lock-plate
          - clean: drop-box
      - step: Fit the [lock-plate].
        do:
          - fit: lock-plate   #! used-again
```

It depends, but on what?

```yaml equipment
items:
  drop-box: {name: drop box}
  lock-plate: {name: lock plate, reuse: {is: if}}   #! used-again
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  lock-plate: {name: lock plate, reuse: {is: never, say: Its tabs break.}}
```

```yaml procedure
sections:
  - title: Look under the plate
    steps:
      - step: Remove the [lock-plate], discard it and clean the [drop-box].
        do:
          - remove: lock-plate
          - discard: lock-plate
          - clean: drop-box
      - step: Fit a new [lock-plate].
        do:
          - fit: lock-plate
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.coming_back import returns
from authoring.model.library import Library
from authoring.model.things import FastenerGroup, Item
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("P2",)
ABOUT = ("reuse",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each condition of reuse that is not told, and for each thing that goes back on and must not."""
    for equipment in library.equipment.values():
        things: list[Item | FastenerGroup] = [*equipment.items.values(), *equipment.fasteners.values()]
        for thing in things:
            if thing.reuse is not None and thing.reuse.rule == "if" and thing.reuse.say is None:
                words = f'"{thing.id}" may be used again if something is so, but nobody is told what.'
                yield Fault(words, thing.reuse.where.of("is"), 'Add "say: " with what it depends on.')
    for procedure in library.procedures.values():
        for one in returns(procedure, library, _never):
            yield Fault(
                f'"{one.thing.id}" is never used again, but goes back on here after it came off{one.shown.whom}.',
                one.mention.span,
                f"Add discard: {one.thing.id} to the step that takes it off, and fit a new one here.",
                (Related(one.thing.where.of("reuse"), "never used again"),),
                one.shown.fitments,
            )


def _never(thing: Item | FastenerGroup) -> bool:
    return thing.reuse is not None and thing.reuse.rule == "never"
