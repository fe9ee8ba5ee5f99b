"""A level is read in a window in which a part of the circuit is still shut.

Behind a shut thermostat the cooler fills only later, and what it takes is missing from the level that was read.
The box is then too full or too low by as much as the cooler holds, and nobody sees it.
A window of a level is one in which the `circuit` of the fluid is open, or says with `when` that it is for the
vehicles without that thermostat.

Wrong:

```yaml equipment
fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil of our grade 2
    circuit: {name: cooler, opens: 66 to 70 °C, source: plate, at: line 6, when: {brake: disc}}
```

```yaml procedure
values:
  warm: {name: temperature for the level check, value: 30 to 50 °C, source: plate, at: line 5}
sections:
  - title: Fill
    steps:
      - step: Add [box-oil] at [warm] until it runs from the hole of the [level-plug].
        do:
          - fill-to-level: {what: box-oil, at: level-plug, window: warm}   #! level-window-shut
```

Right:

```yaml equipment
fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil of our grade 2
    circuit: {name: cooler, opens: 66 to 70 °C, source: plate, at: line 6, when: {brake: disc}}
```

```yaml procedure
values:
  warm:
    name: temperature for the level check
    windows:
      - {value: 30 to 50 °C, source: plate, at: line 5, when: {brake: drum}}
      - {value: 75 to 85 °C, source: plate, at: line 6}
sections:
  - title: Fill
    steps:
      - step: Add [box-oil] at [warm] until it runs from the hole of the [level-plug].
        do:
          - fill-to-level: {what: box-oil, at: level-plug, window: warm}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.concern import concern
from authoring.model.fitments import together
from authoring.model.fluid import Circuit
from authoring.model.levels import LevelReading, readings, shut
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.space import possible
from authoring.model.things import Equipment, Window
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1", "H2")
ABOUT = ("level",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each window of a level in which the circuit is shut on some machine, at its first reading."""
    vehicle = library.scope(procedure).vehicle
    if vehicle is None:
        return
    told: set[Window] = set()
    for reading in readings(procedure, library):
        circuit = reading.fluid.circuit
        for window in reading.value.windows if circuit is not None else ():
            if circuit is not None and window not in told and shut(window, circuit):
                found = list(_of_window(window, circuit, reading, vehicle))
                told |= {window} if found else set()
                yield from found


def _of_window(window: Window, circuit: Circuit, reading: LevelReading, vehicle: Equipment) -> Iterator[Fault]:
    procedure_whens = (reading.section.when, reading.step.when, reading.fluid.when, window.when, circuit.when)
    machine = together(reading.covers, *procedure_whens)
    if not possible(vehicle, machine):
        return
    stated, opening = window.specification.value, circuit.opens.value
    amount = stated.text if stated is not None else ""
    where = opening.text if opening is not None else ""
    yield Fault(
        f"The thermostat of the {circuit.name} opens at {where} only, and at {amount} what the {circuit.name} takes is "
        f'missing from the level of "{reading.fluid.id}".',
        reading.span,
        "State a window above that temperature, or say with when that this one is for vehicles without the thermostat.",
        (
            Related(window.where.of("value"), "the window"),
            Related(circuit.where.of("opens"), "where the thermostat opens"),
        ),
        concern(vehicle.features, reading.covers, procedure_whens),
    )
