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
from functools import partial

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.cooling import Cooling, Holds, conditions_of, coolings, needs_of
from authoring.model.demands import Need
from authoring.model.fitments import may_hold
from authoring.model.lacking import Lack, lack, laid_out, taken_as_all
from authoring.model.library import Library, Scope
from authoring.model.mentions import touched
from authoring.model.procedure import Procedure
from authoring.model.runs import one_of_each
from authoring.model.space import Cells
from authoring.model.things import Value
from authoring.quantities.units import UNITS
from authoring.rules.rule import Fault
from authoring.workshop.cooling import Estimate, spell_wait
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import interval_of

SEVERITY = Severity.WARNING
REQUIREMENTS = ("V3",)
ABOUT = ("value-needed",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each need that some machine never reaches, and for each wait that is shorter than it takes."""
    scope = library.scope(procedure)
    if scope.vehicle is None or not any(need.state in scope.things for need in needs_of(procedure)):
        return
    whens = conditions_of(procedure, scope)
    space = laid_out(scope.vehicle, procedure.covers, whens) or taken_as_all(scope.vehicle)
    short: dict[tuple[Need, str], Cells] = {}
    found: dict[tuple[Need, str], Cooling] = {}
    for machine, alike in one_of_each(whens, space.every, space):
        holds = partial(may_hold, selection=machine)
        for cooling in coolings(procedure, scope, holds):
            if isinstance(cooling.estimate, Impossible):
                key = (cooling.need, cooling.estimate.reason)
            elif _short(cooling, cooling.estimate, scope, holds):
                key = (cooling.need, "")
            else:
                continue
            short[key] = short.get(key, 0) | alike
            found.setdefault(key, cooling)
    for key, bad in short.items():
        yield _fault(found[key], lack(space, bad), scope)


def _short(cooling: Cooling, estimate: Estimate, scope: Scope, holds: Holds) -> bool:
    longest = [_longest(action.what, scope, holds) for action in cooling.waits]
    known = [one for one in longest if one is not None]
    return bool(longest) and len(known) == len(longest) and sum(known) < estimate.value


def _fault(cooling: Cooling, shown: Lack, scope: Scope) -> Fault:
    if isinstance(cooling.estimate, Impossible):
        return Fault(
            f'"{cooling.item.id}" must be {cooling.target.text}{shown.whom}. {cooling.estimate.reason}',
            cooling.need.where.of(cooling.need.thing),
            cooling.estimate.cure,
            fitments=shown.fitments,
        )
    last = cooling.waits[-1]
    return Fault(
        f'"{cooling.item.id}" takes {spell_wait(cooling.estimate, UNITS["min"])} from {cooling.start.text} '
        f"to {cooling.target.text}, and the steps wait less{shown.whom}.",
        next(touched(last)).span,
        "Wait longer, or let a step measure the temperature and wait on until it is low enough.",
        (Related(cooling.need.where.of(cooling.need.thing), "this is needed afterwards"), *_stated(last.what, scope)),
        shown.fitments,
    )


def _stated(names: tuple[str, ...], scope: Scope) -> Iterator[Related]:
    value = scope.things[names[0]].thing
    if isinstance(value, Value):
        yield Related(value.windows[0].where.of("value"), "the time to wait")


def _longest(names: tuple[str, ...], scope: Scope, holds: Holds) -> Fraction | None:
    """Return the longest that a wait may last in s; None where it is open or not stated."""
    named = scope.things.get(names[0])
    value = named.thing if named is not None else None
    stated = [one.specification.value for one in value.windows if holds(one.when)] if isinstance(value, Value) else []
    ends = [interval_of(one).high if one is not None else None for one in stated]
    known = [end for end in ends if end is not None]
    return max(known) if known and len(known) == len(ends) else None
