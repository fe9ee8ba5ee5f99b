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
from fractions import Fraction
from functools import partial

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.fitments import may_hold, together
from authoring.model.growing import Growing, conditions_of, growing_of
from authoring.model.lacking import Lack, lack, laid_out, taken_as_all
from authoring.model.library import Library, Scope
from authoring.model.procedure import Action, Procedure
from authoring.model.runs import one_of_each
from authoring.model.space import Cells
from authoring.model.specification import When
from authoring.model.things import Equipment, Value
from authoring.quantities.convert import convert
from authoring.quantities.show import spell
from authoring.quantities.units import UNITS
from authoring.rules.rule import Fault
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, quantity_of

SEVERITY = Severity.WARNING
REQUIREMENTS = ("V3",)
ABOUT = ("heated",)


_HOTTEST = convert(Fraction(250), UNITS["°C"], UNITS["K"])  # beyond it nobody heats a bore to join it


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each action that heats a bore less than its shaft asks, on some machine."""
    scope = library.scope(procedure)
    for section, step in procedure.steps():
        for action in step.actions:
            if action.kind.name == "heat" and "bore" in action.roles:
                if "metal" not in action.details:
                    told = "How far a bore grows depends on its metal, which is not stated."
                    yield Fault(told, action.where.of("bore"), 'Add "metal", such as steel or aluminium.')
                elif scope.vehicle is not None:
                    yield from _too_little(action, together(section.when, step.when), scope, scope.vehicle)


def _too_little(action: Action, when: When, scope: Scope, vehicle: Equipment) -> Iterator[Fault]:
    covers = together(scope.procedure.covers, when)
    whens = conditions_of(action, scope)
    space = laid_out(vehicle, covers, whens) or taken_as_all(vehicle)
    bad: dict[str, Cells] = {}
    found: dict[str, Growing] = {}
    for machine, alike in one_of_each(whens, space.every, space):
        growing = growing_of(action, scope, partial(may_hold, selection=machine))
        fault = _fault_of(growing) if growing is not None else ""
        if growing is not None and fault:
            bad[fault] = bad.get(fault, 0) | alike
            found.setdefault(fault, growing)
    for fault, some in bad.items():
        yield _told(fault, action, found[fault], lack(space, some), scope)


def _fault_of(growing: Growing) -> str:
    """Return in one word what is wrong, or nothing."""
    if isinstance(growing.needed, Impossible):
        return "impossible"
    if growing.loose:
        return "loose"
    if growing.needed > _HOTTEST:
        return "unlikely"
    return "cold" if growing.to.low is None or growing.to.low < growing.needed else ""


def _told(fault: str, action: Action, growing: Growing, shown: Lack, scope: Scope) -> Fault:
    what, related = action.what[0], (Related(action.where.of("to"), "heated here"),)
    if isinstance(growing.needed, Impossible):
        return Fault(growing.needed.reason, action.where.of("bore"), growing.needed.cure, fitments=shown.fitments)
    least = spell(quantity_of(Interval(growing.needed, None), UNITS["°C"], 0)).removeprefix("at least ")
    again = "Read the two sizes once more; one of them may be mistyped, or they have changed places."
    if fault == "loose":
        message = f'"{what}" goes over its shaft cold{shown.whom}.'
        return Fault(message, action.where.of("bore"), again, related, shown.fitments)
    if fault == "unlikely":
        message = f'"{what}" would have to be at {least} to go over its shaft{shown.whom}.'
        return Fault(message, action.where.of("bore"), again, related, shown.fitments)
    value = scope.things[action.roles["to"]].thing
    typed = value.specification.value if isinstance(value, Value) else None
    return Fault(
        f'"{what}" goes over its shaft from {least} on, and "{action.roles["to"]}" allows '
        f"{typed.text if typed is not None else 'less'}{shown.whom}.",
        value.windows[0].where.of("value") if isinstance(value, Value) else action.where.of("to"),
        f"State at least {least}, as far as the part and its seals bear it, or ask the maker for another way.",
        related,
        shown.fitments,
    )
