"""The steps wait less than it takes to cool, or it never gets as cold as that.

The equipment file says how fast an item cools, and the shop file how warm its air is.
From the heat that the item has, by use or by a step, follows about how long it takes (Newton's law of cooling).
A step that waits less sends the reader on to a part that is still hot; a limit below the air is never reached.
It is an estimate: the thermometer decides, and a step that measures stays due.

Wrong:

```yaml shop
air: {value: 15 to 25 °C, source: bench-book, at: page 9}
```

```yaml equipment
items:
  drop-box:
    name: drop box
    cooling: {value: 30 min, source: plate, at: line 9}
```

```yaml procedure
values:
  warm: {name: temperature for the ring, value: 80 to 90 °C, source: bench-book, at: page 8}
  cool: {name: temperature for the plug, value: at most 40 °C, source: bench-book, at: page 8}
  pause: {name: time to cool, value: 10 to 15 min, source: bench-book, at: page 8}
sections:
  - title: Warm it
    steps:
      - step: Warm the [drop-box] to [warm].
        do:
          - heat: {what: drop-box, to: warm}
      - step: Wait [pause].
        do:
          - wait: pause   #! waits-too-short
      - step: Remove the [level-plug].
        needs: {drop-box: cool}
        do:
          - remove: level-plug
```

Right:

```yaml shop
air: {value: 15 to 25 °C, source: bench-book, at: page 9}
```

```yaml equipment
items:
  drop-box:
    name: drop box
    cooling: {value: 30 min, source: plate, at: line 9}
```

```yaml procedure
values:
  warm: {name: temperature for the ring, value: 80 to 90 °C, source: bench-book, at: page 8}
  cool: {name: temperature for the plug, value: at most 40 °C, source: bench-book, at: page 8}
  pause: {name: time to cool, value: 45 to 60 min, source: bench-book, at: page 8}
sections:
  - title: Warm it
    steps:
      - step: Warm the [drop-box] to [warm].
        do:
          - heat: {what: drop-box, to: warm}
      - step: Wait [pause].
        do:
          - wait: pause
      - step: Remove the [level-plug].
        needs: {drop-box: cool}
        do:
          - remove: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.cooling import Cooling, coolings
from authoring.model.library import Library, Scope
from authoring.model.mentions import touched
from authoring.model.procedure import Procedure
from authoring.model.things import Value
from authoring.quantities.units import UNITS
from authoring.rules.rule import Fault
from authoring.workshop.cooling import Estimate, spell_wait
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import interval_of

SEVERITY = Severity.WARNING
REQUIREMENTS = ("V3",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each need that is never reached, and for each wait that is shorter than the estimate."""
    scope = library.scope(procedure)
    for cooling in coolings(procedure, scope):
        if isinstance(cooling.estimate, Impossible):
            yield Fault(
                f'"{cooling.item.id}" must be at {cooling.target.text}. {cooling.estimate.reason}',
                cooling.need.where.of(cooling.need.thing),
                cooling.estimate.cure,
            )
        else:
            yield from _short(cooling, cooling.estimate, scope)


def _short(cooling: Cooling, estimate: Estimate, scope: Scope) -> Iterator[Fault]:
    longest = [_longest(action.what, scope) for action in cooling.waits]
    if not longest or None in longest:
        return
    if sum(one for one in longest if one is not None) >= estimate.value:
        return
    last = cooling.waits[-1]
    yield Fault(
        f'"{cooling.item.id}" takes {spell_wait(estimate, UNITS["min"])} from {cooling.start.text} '
        f"to {cooling.target.text}, and the steps wait less.",
        next(touched(last)).span,
        "Wait longer, or let a step measure the temperature and wait on until it is low enough.",
        (Related(cooling.need.where.of(cooling.need.thing), "this is needed afterwards"), *_stated(last.what, scope)),
    )


def _stated(names: tuple[str, ...], scope: Scope) -> Iterator[Related]:
    value = scope.things[names[0]].thing
    if isinstance(value, Value):
        yield Related(value.windows[0].where.of("value"), "the time to wait")


def _longest(names: tuple[str, ...], scope: Scope) -> Fraction | None:
    named = scope.things.get(names[0])
    value = named.thing if named is not None else None
    quantity = value.specification.value if isinstance(value, Value) else None
    interval = interval_of(quantity) if quantity is not None else None
    return None if interval is None else interval.high
