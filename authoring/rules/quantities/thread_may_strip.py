"""A torque can tear the thread out of the soft metal that its bolt is screwed into.

A steel bolt in aluminium seldom breaks: the hole gives way, often only at the last pull, and the whole part is scrap.
The hole strips at a force that follows from its whole threads and the shear strength of its metal, as `tapped` states
them; it is held against the greatest clamp force of the torque, or where no friction is stated, against what the bolt
bears.
The threads bear a quarter less where bolt and hole are at the loose end of their limits, and a third less where the
pitch is below 1 mm; that is taken off first.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M8
    class: "8.8"
    on: drop-box
    torque: {value: 22 ± 2 N·m, source: plate, at: line 5}
    friction: {value: 0.10 to 0.16, source: plate, at: line 6}
    tapped:
      material: cast aluminium
      engaged: 6 mm   #! thread-may-strip
      shear-strength: 140 MPa
      source: plate
      at: line 7
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M8
    class: "8.8"
    on: drop-box
    torque: {value: 22 ± 2 N·m, source: plate, at: line 5}
    friction: {value: 0.10 to 0.16, source: plate, at: line 6}
    tapped:
      material: cast aluminium
      engaged: 12 mm
      shear-strength: 140 MPa
      source: plate
      at: line 7
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.clamping import clamp_in, stripping_of, ways_to_tighten
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup
from authoring.rules.rule import Fault, Together
from authoring.workshop.metric_thread import metric_thread
from authoring.workshop.proof_load import proof_load_newton

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T1",)
ABOUT = ("tapped",)
TOGETHER = Together.MARKED

_KILO = 1000


def marks(procedure: Procedure, library: Library) -> Iterator[str]:
    """Yield how a procedure tightens each group: the worst wrench of all procedures counts."""
    return ways_to_tighten(procedure, library)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each tapped hole that gives way before its bolt is pulled to the greatest force."""
    for equipment in library.equipment.values():
        for group in equipment.fasteners.values():
            strips, pulled = stripping_of(group), _greatest(group, library)
            if group.tapped is None or strips is None or pulled is None or pulled[0] <= strips:
                continue
            force, by = pulled
            torque = (Related(group.torque.where.of("value"), "the torque"),) if group.torque is not None else ()
            yield Fault(
                f'The {group.tapped.material} under "{group.id}" may strip at {strips / _KILO:.1f} kN, and '
                f"{by} {force / _KILO:.1f} kN.",
                group.where.of("tapped", "engaged"),
                "Read the torque and the length of whole threads in the source once more; "
                "more thread, or a thread insert, bears more.",
                torque,
            )


def _greatest(group: FastenerGroup, library: Library) -> tuple[float, str] | None:
    """Return the greatest force in N on the thread, and in words what gives it."""
    load = clamp_in(group, library)
    if load is not None:
        return load.greatest_newton, "the torque may pull it with"
    thread = metric_thread(group.thread)
    bears = proof_load_newton(thread, group.strength) if thread is not None and group.strength is not None else None
    return (bears, "its bolt bears") if bears is not None else None
