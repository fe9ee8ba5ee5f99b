"""The level of a fluid is taken at a plug where it does not go in.

Whoever fills a box at its drain plug stands in the oil, and at the plug of another box the wrong one is filled.
Where `fill-to-level` names a place that `drains` the fluid, or is a plug of other fluids only, and some other thing of
the machine `fills` the fluid, it is an error; a look at the level of a fluid there is a warning.
A glass, a dipstick or a plug of which nothing of that kind is stated will do.
Where the level is set by an overflow in the drain plug, say under `fills` that it is one of its places.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  drain-plug:
    name: drain plug
    count: 1
    thread: M22 x 1.5
    on: drop-box
    drains: [box-oil]
    torque: {value: 58 ± 5 N·m, source: plate, at: line 2}
```

```yaml procedure
sections:
  - title: Fill
    steps:
      - step: Add [box-oil] at the [drain-plug] until it runs out.
        do:
          - fill-to-level: {what: box-oil, at: drain-plug}   #! level-at-the-wrong-place
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  drain-plug:
    name: drain plug
    count: 1
    thread: M22 x 1.5
    on: drop-box
    drains: [box-oil]
    torque: {value: 58 ± 5 N·m, source: plate, at: line 2}
```

```yaml procedure
sections:
  - title: Fill
    steps:
      - step: Remove the [level-plug].
        do:
          - remove: level-plug
      - step: Add [box-oil] at the [level-plug] until it runs out.
        do:
          - fill-to-level: {what: box-oil, at: level-plug}
      - step: Start the [level-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - start: level-plug
          - tighten: level-plug
      - step: Look for drops of [box-oil] on the floor.
        do:
          - inspect:
              what: box-oil
              outcomes:
                - {found: There is none., then: go-on}
                - {found: There are some., then: stop}
```
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.words import joined, quoted
from authoring.model.brackets import words_only
from authoring.model.course import Act, acts
from authoring.model.fitments import together
from authoring.model.fluid import Fluid
from authoring.model.lacking import without
from authoring.model.library import Library, Scope
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup, Item
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("N6",)
ABOUT = ("level",)

_LEVEL = re.compile(r"\blevels?\b", re.IGNORECASE)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each level taken at a plug that does not fill the fluid, where another thing does."""
    scope = library.scope(procedure)
    for act in acts(procedure, library):
        place = scope.things.get(act.action.roles.get("at", ""))
        if not act.own or place is None or not isinstance(place.thing, Item | FastenerGroup):
            continue
        if not _of_a_level(act):
            continue
        for name in act.action.what:
            fluid = scope.things.get(name)
            if fluid is not None and isinstance(fluid.thing, Fluid):
                yield from _misplaced(act, fluid.thing, place.thing, scope)


def _of_a_level(act: Act) -> bool:
    """Tell whether an action goes by a level; a look at what runs out of a drain is none."""
    name = act.action.kind.name
    return name == "fill-to-level" or (name == "inspect" and _LEVEL.search(words_only(act.doing.text)) is not None)


def _misplaced(act: Act, fluid: Fluid, place: Item | FastenerGroup, scope: Scope) -> Iterator[Fault]:
    if fluid.id in place.fills or not (place.drains or place.fills) or scope.equipment is None or scope.vehicle is None:
        return
    things: list[Item | FastenerGroup] = [*scope.equipment.items.values(), *scope.equipment.fasteners.values()]
    fillers = [one for one in things if fluid.id in one.fills]
    asked = [together(act.when, fluid.when, place.when, one.when) for one in fillers]
    lack = without(scope.vehicle, scope.procedure.covers, asked, [])
    if lack is not None:
        yield Fault(
            f'The level of "{fluid.id}" is taken at "{place.id}", '
            f"{'where it runs out' if fluid.id in place.drains else 'which is a plug of other fluids'}{lack.whom}.",
            act.action.where.of("at"),
            f"Take it at {joined([quoted(one.id) for one in fillers], 'or')}, "
            f'or write under "fills" of "{place.id}" that the fluid goes in there.',
            (Related(place.where.of("drains" if place.drains else "fills"), "what is stated of this place"),),
            lack.fitments,
            Severity.ERROR if act.action.kind.pours else None,
        )
