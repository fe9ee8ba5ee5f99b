"""A fluid is poured in while each plug through which it goes in is shut.

Oil that finds no hole ends up on the floor, or in another box whose plug looks alike and is open.
Of the items and fasteners that `fills` the fluid, one is off, loose, only started or open on every machine and way
through the job when it is filled, filled to a level or topped up.
Nothing is asked where the equipment says of nothing that it `fills` the fluid, where one of them has positions, where
what it sits on, or what the fluid is `in`, is off, and where the step `needs` one off or open.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 2}
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, disposal: used-oil tank}
```
```yaml procedure
sections:
  - title: Top up the oil
    steps:
      - step: Top up the [box-oil].
        do:
          - top-up: box-oil   #! filled-while-shut
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
    torque: {value: 42 ± 4 N·m, source: plate, at: line 2}
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, disposal: used-oil tank}
```
```yaml procedure
sections:
  - title: Top up the oil
    steps:
      - step: Remove the [level-plug], and top up the [box-oil].
        do:
          - remove: level-plug
          - top-up: box-oil
      - step: Start the [level-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - start: level-plug
          - tighten: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.words import joined
from authoring.model.fluid import Fluid
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.proof.housing import pouring
from authoring.proof.job import Job, job_of
from authoring.proof.plugs import plugs
from authoring.proof.shut import Plug, all_shut, story_of_plugs
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N6",)
ABOUT = ("fluid-moved", "carried-out")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each pouring on some machine and way that has every plug of the fluid shut."""
    equipment = library.scope(procedure).equipment
    through = [plug for plug in plugs(equipment) if plug.fills] if equipment is not None else []
    job = job_of(procedure, library) if through else None
    if equipment is None or job is None:
        return
    for fluid in equipment.fluids.values():
        mine = [plug for plug in through if fluid.id in plug.fills]
        points = [point for point in job.track.naming.get(fluid.id, ()) if mine and _pours(point, fluid)]
        if points:
            yield from _of_fluid(fluid, mine, points, job)


def _pours(point: Point, fluid: Fluid) -> bool:
    return point.does in pouring() and point.action is not None and fluid.id in point.action.what


def _of_fluid(fluid: Fluid, mine: list[Plug], points: list[Point], job: Job) -> Iterator[Fault]:
    story = story_of_plugs(fluid, mine, points, job)
    if story is None:
        return
    bad: Gathered[tuple[Point, tuple[str, ...]]] = Gathered()
    for one in all_shut(fluid, mine, points, (job, story)):
        if not told_by_itself(one.point, one.settings):
            bad.note((one.point, one.plugs), one.held, one.cells)
    for (point, names), held, cells in bad.each():
        quoted = [f'"{name}"' for name in names]
        shut = "is shut" if len(names) == 1 else "are all shut"
        yield fault(
            f'"{fluid.id}" is poured in while {joined(quoted)}, through which it goes in, {shut}',
            span_of(point, fluid.id),
            f"Open, loosen or remove {joined(quoted, 'or')} in an action before, or say under "
            '"fills" of the equipment what else it goes in through.',
            (job, story, cells, held.path),
        )
