"""A part is not heated enough to go over its shaft.

An action that heats may name the bore and the shaft, and the room that is wanted between them.
From the metal follows how hot the part must be (the bore grows as if it were filled; OpenStax, University Physics):
with the smallest bore and the largest shaft that the limits allow, both measured at 20 °C.
A bearing that sticks half way has to be pressed, and then it is scrap.

Wrong:

```yaml procedure
values:
  warm: {name: temperature of the box, value: 60 to 70 °C, source: bench-book, at: page 8}   #! heat-too-little
  bore: {name: bore of the box, value: 71.970 to 71.985 mm, source: bench-book, at: page 8}
  ring: {name: outer ring, value: 71.987 to 72.000 mm, source: bench-book, at: page 8}
  room: {name: room for the ring, value: at least 0.015 mm, source: bench-book, at: page 8}
sections:
  - title: Warm it
    steps:
      - step: Warm the [drop-box] to [warm].
        do:
          - heat: {what: drop-box, to: warm, bore: bore, shaft: ring, clearance: room, metal: steel}
```

Right:

```yaml procedure
values:
  warm: {name: temperature of the box, value: 80 to 90 °C, source: bench-book, at: page 8}
  bore: {name: bore of the box, value: 71.970 to 71.985 mm, source: bench-book, at: page 8}
  ring: {name: outer ring, value: 71.987 to 72.000 mm, source: bench-book, at: page 8}
  room: {name: room for the ring, value: at least 0.015 mm, source: bench-book, at: page 8}
sections:
  - title: Warm it
    steps:
      - step: Warm the [drop-box] to [warm].
        do:
          - heat: {what: drop-box, to: warm, bore: bore, shaft: ring, clearance: room, metal: steel}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.growing import growing_of
from authoring.model.library import Library, Scope
from authoring.model.procedure import Action, Procedure
from authoring.model.things import Value
from authoring.quantities.show import spell
from authoring.quantities.units import UNITS
from authoring.rules.rule import Fault
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, interval_of, quantity_of

SEVERITY = Severity.WARNING
REQUIREMENTS = ("V3",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each action that heats a bore less than its shaft asks."""
    scope = library.scope(procedure)
    for _, step in procedure.steps():
        for action in step.actions:
            if action.kind.name == "heat" and "bore" in action.roles:
                yield from _too_little(action, scope)


def _too_little(action: Action, scope: Scope) -> Iterator[Fault]:
    if "metal" not in action.details:
        told = "How far a bore grows depends on its metal, which is not stated."
        yield Fault(told, action.where.of("bore"), 'Add "metal", such as steel or aluminium.')
    growing = growing_of(action, scope)
    if growing is None:
        return
    if isinstance(growing.needed, Impossible):
        yield Fault(growing.needed.reason, action.where.of("bore"), growing.needed.cure)
        return
    lowest, value = interval_of(growing.to).low, scope.things[action.roles["to"]].thing
    if lowest is None or lowest >= growing.needed or not isinstance(value, Value):
        return
    least = spell(quantity_of(Interval(growing.needed, None), UNITS["°C"], 0))
    yield Fault(
        f'"{action.what[0]}" goes over its shaft from {least} on, and "{value.id}" allows {growing.to.text}.',
        value.windows[0].where.of("value"),
        f"State {least}, as far as the part and its seals bear it, or ask the maker for another way.",
        (Related(action.where.of("to"), "heated here"),),
    )
