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
from authoring.model.smallest import Fitment
from authoring.model.things import FastenerGroup, Item
from authoring.model.ways import Ways, ways_of
from authoring.rules.rule import Fault

# Steps are taken as they are written, though an outcome may skip or repeat some.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("P2",)


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
    bad: dict[Act, list[Fitment]] = {}
    machines = ways.machines(mine)
    for machine in machines:
        on = _put_on_unasked([act for act in mine if ways.happens(act, machine)], options)
        if on is not None and on.own:
            bad.setdefault(on, []).append(machine)
    for on, concern in bad.items():
        shown = ways.shown(concern, [one for one in machines if one not in concern])
        yield Fault(
            f'"{thing.id}" may be used again under a condition, but goes back on here unasked{shown.whom}.',
            next(one.span for one in touched(on.action) if one.role == "what" and one.name == thing.id),
            f'Add a step before this one that inspects, measures or compares "{thing.id}", or let "if-done" or '
            '"unless-done" say after which step it goes back on.',
            (Related(thing.where.of("reuse"), "the condition"),),
            shown.fitments,
        )


def _put_on_unasked(done: Sequence[Act], options: frozenset[str]) -> Act | None:
    """Return the first action that brings the thing back after it came off, with no look at it since and no condition.

    Only the first counts: who starts a bolt by hand has decided, and who tightens it has not to decide again.
    """
    off = False
    for act in done:
        kind = act.action.kind
        if kind.name in TAKES_OFF:
            off = True
        elif kind.checkpoint or kind.name == "discard":
            off = False
        elif kind.name in PUTS_ON and off:
            step = act.doing
            asked = step.if_done or step.unless_done or not options.isdisjoint(act.when)
            if not asked:
                return act
            off = False
    return None
