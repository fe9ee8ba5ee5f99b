"""A thing goes back on that may be used again only sometimes, and nobody has asked.

The condition stands in the equipment file, and the hand that holds the thing does not read that.
What has reuse `if` goes back on in a step that depends on what was done (`if-done`, `unless-done`) or on what was
decided in this job, or after somebody has looked at it: inspected, measured or compared it.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  lock-plate: {name: lock plate, reuse: {is: if, say: Its tabs are whole.}}
```

```yaml procedure
sections:
  - title: Look under the plate
    steps:
      - step: Remove the [lock-plate].
        do:
          - remove: lock-plate
      - step: Fit the [lock-plate].
        do:
          - fit: lock-plate   #! reuse-unasked
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  lock-plate: {name: lock plate, reuse: {is: if, say: Its tabs are whole.}}
```

```yaml procedure
sections:
  - title: Look under the plate
    steps:
      - step: Remove the [lock-plate].
        do:
          - remove: lock-plate
      - step: Look at the tabs of the [lock-plate].
        do:
          - inspect:
              what: lock-plate
              outcomes:
                - {found: They are whole., then: go-on}
                - {found: One has a crack., then: put-right, say: Take a new one.}
      - step: Fit the [lock-plate].
        do:
          - fit: lock-plate
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.course import Act, acts
from authoring.model.library import Library
from authoring.model.mentions import touched
from authoring.model.on_and_off import PUTS_ON, TAKES_OFF
from authoring.model.procedure import Procedure
from authoring.model.space import Cells, Space
from authoring.model.things import FastenerGroup, Item
from authoring.model.ways import Ways, ways_of
from authoring.rules.rule import Fault

# Steps are taken as they are written, though an outcome may skip or repeat some.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("P2",)
ABOUT = ("reuse",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that some machine gets back without a look at it."""
    ways = ways_of(procedure, library)
    if ways is None:
        return
    things: list[Item | FastenerGroup] = [*ways.vehicle.items.values(), *ways.vehicle.fasteners.values()]
    asked = [thing for thing in things if thing.reuse is not None and thing.reuse.rule == "if"]
    course = acts(procedure, library) if asked else ()
    for thing in asked:
        mine = [act for act in course if thing.id in act.action.what]
        yield from _of_thing(thing, mine, ways, frozenset(procedure.options))


def _of_thing(thing: Item | FastenerGroup, mine: Sequence[Act], ways: Ways, options: frozenset[str]) -> Iterator[Fault]:
    space = ways.space(mine)
    if space is None:
        return
    for on, bad in _put_on_unasked(mine, options, ways, space):
        if not on.own:
            continue
        shown = ways.shown(bad, space)
        yield Fault(
            f'"{thing.id}" may be used again under a condition, but goes back on here unasked{shown.whom}.',
            next(one.span for one in touched(on.action) if one.role == "what" and one.name == thing.id),
            f'Add a step before this one that inspects, measures or compares "{thing.id}", or let "if-done" or '
            '"unless-done" say after which step it goes back on.',
            (Related(thing.where.of("reuse"), "the condition"),),
            shown.fitments,
        )


def _put_on_unasked(
    mine: Sequence[Act], options: frozenset[str], ways: Ways, space: Space
) -> Iterator[tuple[Act, Cells]]:
    """Yield each action that brings the thing back after it came off, with no look at it since and no condition.

    Only the first counts on each machine: who starts a bolt by hand has decided, and who tightens it has not to decide
    again.
    """
    off, never = 0, space.every
    for act in mine:
        done = ways.cells(act, space)
        kind = act.action.kind
        if kind.name in TAKES_OFF:
            off |= done
        elif kind.checkpoint or kind.name == "discard":
            off &= ~done
        elif kind.name in PUTS_ON:
            unasked = done & off & never
            if unasked and not _asked(act, options):
                yield act, unasked
                never &= ~unasked
            off &= ~done


def _asked(act: Act, options: frozenset[str]) -> bool:
    """Tell whether an action depends on what was done or decided in this job."""
    return any(step.if_done or step.unless_done for step in act.steps) or not options.isdisjoint(act.when)
