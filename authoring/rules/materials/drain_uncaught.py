"""A fluid is let out, and nothing catches it.

A litre and a half of old oil runs over the floor, under whoever lies there, and on into the drain.
A step that drains says with `into` what catches the fluid, or has a vessel among its tools, or one was brought out by
a step of the same section above it.
A vessel is a tool into which the job lets a fluid, or whose name says so: a tray, pan, tub, bucket, can or the like.
Nothing is asked where the fluid states neither its capacity nor its disposal, where all of it goes into a rag (up to
0.25 L; common practice), and where the stock holds no vessel that could be named.

Wrong:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench}
  gauntlets: {name: heat gauntlets}
  tray: {name: oil tray}
```

```yaml equipment
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, disposal: used-oil tank}
```

```yaml procedure
leaves: {box-oil: drained}
sections:
  - title: Drain
    steps:
      - step: Drain the [box-oil].
        do:
          - drain: box-oil   #! drain-uncaught
```

Right:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  wrench: {name: torque wrench}
  gauntlets: {name: heat gauntlets}
  tray: {name: oil tray}
```

```yaml equipment
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, disposal: used-oil tank}
```

```yaml procedure
leaves: {box-oil: drained}
sections:
  - title: Drain
    steps:
      - step: Drain the [box-oil] into the [tray].
        with: [tray]
        do:
          - drain: {what: box-oil, into: tray}
```
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from fractions import Fraction

from authoring.diagnostics.diagnostic import Severity
from authoring.model.course import Act, acts
from authoring.model.fluid import Fluid
from authoring.model.library import Library
from authoring.model.mentions import touched
from authoring.model.procedure import Procedure
from authoring.model.things import Stock, Tool
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault
from authoring.workshop.interval import interval_of

SEVERITY = Severity.WARNING
REQUIREMENTS = ("P5", "N6")
ABOUT = ("fluid-moved",)

_CUP = Fraction(1, 4000)  # m³
_VESSEL = re.compile(
    r"\b(tray|pan|tub|trough|bucket|pail|drum|canister|can|container|vessel|bowl|basin|jug|bottle|tank|tin|drainer)\b",
    re.IGNORECASE,
)
_FOR_PARTS = re.compile(r"\b(parts?|bolts?|tools?)\b", re.IGNORECASE)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each draining of more than a cup that no vessel is named for."""
    things = library.scope(procedure).things
    course = acts(procedure, library)
    vessels = {act.action.roles["into"] for act in course if "into" in act.action.roles} | _vessels(library.stock)
    for act in course if vessels else ():
        if act.action.kind.name != "drain" or not act.own or "into" in act.action.roles or _at_hand(act, vessels):
            continue
        for mention in touched(act.action):
            fluid = things[mention.name].thing if mention.name in things else None
            if isinstance(fluid, Fluid) and _more_than_a_cup(fluid):
                yield Fault(
                    f'"{fluid.id}" is let out, and nothing is named that catches it.',
                    mention.span,
                    "Name the vessel with into, and list it under with.",
                )


def _vessels(stock: Stock | None) -> set[str]:
    """Return the tools of the stock whose names say that they hold a fluid."""
    return {one.id for one in stock.tools.values() if _holds_fluid(one)} if stock is not None else set()


def _holds_fluid(tool: Tool) -> bool:
    return _VESSEL.search(tool.name) is not None and _FOR_PARTS.search(tool.name) is None


def _at_hand(act: Act, vessels: Collection[str]) -> bool:
    """Tell whether the step, or one of its section above it, lists a vessel."""
    steps = act.section.steps
    above = steps[: next(place for place, one in enumerate(steps) if one is act.doing) + 1]
    return any(name in vessels for step in above for name in step.uses)


def _more_than_a_cup(fluid: Fluid) -> bool:
    stated = fluid.capacity.value if fluid.capacity is not None else None
    if stated is None or stated.dimension is not Dimension.VOLUME:
        return fluid.disposal is not None
    most = interval_of(stated).high
    return most is None or most > _CUP
