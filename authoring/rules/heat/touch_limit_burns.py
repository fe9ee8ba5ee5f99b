"""A limit of temperature lets a hand on a surface that still burns.

A step that needs a hot item to have cooled names a value, such as at most 40 °C.
The equipment file says what the surface is and how long a hand rests on it, and from that follows where burns begin
(DIN EN 563, the forerunner of ISO 13732-1): the lower edge of the published band.
A limit above it promises that the surface may be touched, and burns whoever believes it.
It is an error where the equipment file says how long the item is touched; what the safety policy would ask of the steps
behind such a limit is not told beside it.

Wrong:

```yaml shop
hazards:
  hot:
    name: hot surface
    emergency: [Hold the burn under cool running water.]
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The drop box is hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets] until it has cooled.
    of: hot
```

```yaml equipment
items:
  drop-box:
    name: drop box
    hazards: [hot]
    hot: {value: at most 90 °C, source: plate, at: line 9, surface: bare-metal, touch: 1 min}
```

```yaml procedure
values:
  cool: {name: temperature for the hand, value: at most 60 °C, source: bench-book, at: page 8}   #! touch-limit-burns
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        needs: {drop-box: cool}
        safety: [hot-pipe]
        with: [rag, gauntlets]
        do:
          - clean: drop-box
```

Right:

```yaml shop
hazards:
  hot:
    name: hot surface
    emergency: [Hold the burn under cool running water.]
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The drop box is hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets] until it has cooled.
    of: hot
```

```yaml equipment
items:
  drop-box:
    name: drop box
    hazards: [hot]
    hot: {value: at most 90 °C, source: plate, at: line 9, surface: bare-metal, touch: 1 min}
```

```yaml procedure
values:
  cool: {name: temperature for the hand, value: at most 45 °C, source: bench-book, at: page 8}
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        needs: {drop-box: cool}
        safety: [hot-pipe]
        with: [rag, gauntlets]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.cooling import burns_from, needs_of
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import Item, Value
from authoring.quantities.show import spell
from authoring.quantities.units import UNITS, Dimension
from authoring.rules.rule import Fault
from authoring.workshop.interval import exactly, interval_of, quantity_of

# How long a hand rests there is taken for a second where nobody said, and that may be wrong.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("S7",)
ABOUT = ("hot",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each window of a value that a hot item must lie in and that reaches into where it burns."""
    scope = library.scope(procedure)
    told: set[tuple[str, str]] = set()
    for need in needs_of(procedure):
        named, stated = scope.things.get(need.thing), scope.things.get(need.state)
        if named is None or stated is None or (need.thing, need.state) in told:
            continue
        told.add((need.thing, need.state))
        if isinstance(named.thing, Item) and isinstance(stated.thing, Value):
            yield from _limits(named.thing, stated.thing)


def _limits(item: Item, value: Value) -> Iterator[Fault]:
    threshold = burns_from(item.hot) if item.hot is not None else None
    if item.hot is None or threshold is None:
        return
    for window in value.windows:
        quantity = window.specification.value
        if quantity is None or quantity.dimension is not Dimension.TEMPERATURE:
            continue
        highest = interval_of(quantity).high
        if highest is not None and highest > threshold:
            burns = spell(quantity_of(exactly(threshold), UNITS["°C"], 0))
            yield Fault(
                f'"{value.id}" allows {quantity.text}, but "{item.id}" burns a hand from {burns} on.',
                window.where.of("value"),
                f"State a limit below {burns}, or a shorter touch where a hand only passes.",
                (Related(item.where.of("hot"), "its surface, and how long it is touched"),),
                severity=Severity.ERROR if item.hot.touch is not None else None,
            )
