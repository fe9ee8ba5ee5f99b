"""A window is closed to some machines, and nobody is told why.

The apprentice who sees the easier window in the table of another machine takes it, unless the booklet says what goes
wrong then.
A window with `when` says once, under `otherwise`, why it does not hold for the others.
Where a thermostat is why, the `circuit` of the fluid says it already: it is shut in that window on all the others.

Wrong:

```yaml equipment
values:
  soak:
    name: settling time
    windows:
      - {value: 5 min, source: plate, at: line 7, when: {brake: drum}}   #! window-unexplained
      - {value: 9 min, source: plate, at: line 8}
```

Right:

```yaml equipment
values:
  soak:
    name: settling time
    windows:
      - {value: 5 min, source: plate, at: line 7, when: {brake: drum}, otherwise: The disc stirs the oil.}
      - {value: 9 min, source: plate, at: line 8}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.fluid import Fluid
from authoring.model.levels import closed_by, readings
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import Equipment, Value, Window
from authoring.rules.rule import Fault, Together

SEVERITY = Severity.WARNING
REQUIREMENTS = ("L6",)
ABOUT = ("window-for-some",)
TOGETHER = Together.MARKED


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each window with a condition and without a reason."""
    groups = [one.values for one in library.equipment.values()] + [one.values for one in library.procedures.values()]
    bare = [
        (value, window)
        for group in groups
        for value in group.values()
        for window in value.windows
        if window.when and window.otherwise is None
    ]
    levels = _levels(library) if bare else {}
    for value, window in bare:
        if not _told_by_a_circuit(window, levels.get(value, [])):
            yield Fault(
                f'This window of "{value.id}" is not for every machine, but nothing says why.',
                window.where.of("when"),
                'Add "otherwise: " with what goes wrong where it does not hold.',
            )


def marks(procedure: Procedure, library: Library) -> Iterator[str]:
    """Yield for each window with a condition whether the circuit of a fluid that the procedure levels explains it."""
    vehicle = library.scope(procedure).vehicle
    if vehicle is None:
        return
    for reading in readings(procedure, library):
        for place, window in enumerate(reading.value.windows):
            if window.when and window.otherwise is None:
                closed = _told_by_a_circuit(window, [(reading.fluid, vehicle)])
                yield f"{reading.value.where.document.file} {reading.value.id} {place} {closed}"


def _levels(library: Library) -> dict[Value, list[tuple[Fluid, Equipment]]]:
    """Return the fluids whose level goes by each value, with the machine and what its job decides."""
    found: dict[Value, list[tuple[Fluid, Equipment]]] = {}
    for procedure in library.procedures.values():
        vehicle = library.scope(procedure).vehicle
        if vehicle is not None:
            for reading in readings(procedure, library):
                found.setdefault(reading.value, []).append((reading.fluid, vehicle))
    return found


def _told_by_a_circuit(window: Window, levels: list[tuple[Fluid, Equipment]]) -> bool:
    return bool(levels) and all(closed_by(window, fluid, vehicle) is not None for fluid, vehicle in levels)
