"""A plug was out and is tight again, and nobody looks whether it keeps tight.

A ring that lies askew under a plug weeps a drop a minute, and the box runs dry before the next service.
After the last time that a plug of a fluid, which came off in this job, is tightened, something inspects or measures it,
the item it is `on`, or the fluid, on every machine and way through the job.
A checkpoint in a procedure that is carried out later will do as well.
Nothing is asked of a joint of class A, which another rule asks a hold point of, nor where the job is stopped.

Wrong:

```yaml equipment
fasteners:
  drain-plug:
    name: drain plug
    count: 1
    thread: M22 x 1.5
    on: drop-box
    drains: [box-oil]
    torque: {value: 58 ± 5 N·m, source: plate, at: line 2}
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, disposal: used-oil tank}
```
```yaml procedure
sections:
  - title: Change the oil
    steps:
      - step: Remove the [drain-plug], and drain the [box-oil].
        do:
          - remove: drain-plug
          - drain: box-oil
      - step: Start the [drain-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - start: drain-plug
          - tighten: drain-plug   #! leak-unchecked
      - step: Top up the [box-oil].
        do:
          - top-up: box-oil
```

Right:

```yaml equipment
fasteners:
  drain-plug:
    name: drain plug
    count: 1
    thread: M22 x 1.5
    on: drop-box
    drains: [box-oil]
    torque: {value: 58 ± 5 N·m, source: plate, at: line 2}
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, disposal: used-oil tank}
```
```yaml procedure
sections:
  - title: Change the oil
    steps:
      - step: Remove the [drain-plug], and drain the [box-oil].
        do:
          - remove: drain-plug
          - drain: box-oil
      - step: Start the [drain-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - start: drain-plug
          - tighten: drain-plug
      - step: Top up the [box-oil].
        do:
          - top-up: box-oil
      - step: Feel under the [drain-plug].
        do:
          - inspect:
              what: drain-plug
              way: felt
              outcomes:
                - {found: The finger stays dry., then: go-on}
                - {found: The finger is oily., then: stop}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.on_and_off import TAKES_OFF
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup
from authoring.proof.job import Job, job_of
from authoring.proof.linked import Linked
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("H1", "N6")
ABOUT = ("tightened", "carried-out")

_LOOKS = frozenset({"inspect", "measure"})
_TIGHTENS = frozenset({"tighten"})
_MOST_AT_RISK = "A"
_OFF, _CHECKED = "was off", "checked"
"""The sides of a plug that tell whether the job took it off, and whether it was looked at since it was tightened."""


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each plug that some machine leaves tightened and not looked at, at its last tightening."""
    equipment = library.scope(procedure).equipment
    groups = equipment.fasteners.values() if equipment is not None else ()
    plugs = [one for one in groups if (one.drains or one.fills) and one.joint != _MOST_AT_RISK]
    job = job_of(procedure, library) if plugs else None
    for plug in plugs if job is not None else ():
        if job is not None and any(point.does in TAKES_OFF for point in job.track.naming.get(plug.id, ())):
            yield from _of_plug(plug, job)


def _of_plug(plug: FastenerGroup, job: Job) -> Iterator[Fault]:
    where: Side = (plug.id, "where")
    off: Side = (plug.id, _OFF)
    checked: Side = (plug.id, _CHECKED)
    near = dict.fromkeys((plug.id, *([plug.on] if plug.on else []), *plug.drains, *plug.fills))
    linked = [
        Linked(TAKES_OFF, plug.id, off, "taken off"),
        Linked(_TIGHTENS, plug.id, checked, "not looked at"),
        *(Linked(_LOOKS, one, checked, "looked at") for one in near),
    ]
    story = job.story([where, off, checked], (), [plug.when], linked)
    if story is None:
        return
    there = story.space.where(plug.when)
    bad: Gathered[Point] = Gathered()
    for held in story.at_the_end():
        now, last, since = held.settings[where], held.settings[checked], held.settings[off]
        open_ = now.state == "tight" and since.state == "taken off" and last.state == "not looked at"
        if open_ and isinstance(last.by, Point) and not told_by_itself(last.by, [since]):
            bad.note(last.by, held, held.cells & there)
    for point, held, cells in bad.each():
        yield fault(
            f'"{plug.id}" was off and is tightened here, and nothing looks whether it keeps tight',
            span_of(point, plug.id),
            f'Inspect "{plug.id}" in a later step, and say what follows where it weeps.',
            (job, story, cells, held.path),
        )
