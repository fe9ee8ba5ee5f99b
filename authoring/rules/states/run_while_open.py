"""Something is set running while a plug of a fluid is not back, or a fluid is drained.

A loose plug throws its oil on to the exhaust pipe, and gears that run dry are done for in minutes.
Each plug that `drains` or `fills` a fluid is closed, or fitted and tight, and each fluid that was drained is filled
again, on every machine and way through the job.
A plug that is meant to be out then says why: `open-while-running`.
What was discarded, replaced or left empty on purpose is not waited for.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  engine: {name: engine}
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, disposal: used-oil tank}
```
```yaml procedure
sections:
  - title: Change the oil
    steps:
      - step: Remove the [level-plug].
        do:
          - remove: level-plug
      - step: Drain the [box-oil].
        do:
          - drain: box-oil
      - step: Run the [engine].
        do:
          - run: engine   #! run-while-open run-while-open
      - step: Stop the [engine].
        do:
          - stop: engine
      - step: Top up the [box-oil].
        do:
          - top-up: box-oil
      - step: Start the [level-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - start: level-plug
          - tighten: level-plug
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  engine: {name: engine}
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
fluids:
  box-oil: {name: drop-box oil, kind: gear oil of our grade 2, disposal: used-oil tank}
```
```yaml procedure
sections:
  - title: Change the oil
    steps:
      - step: Remove the [level-plug].
        do:
          - remove: level-plug
      - step: Drain the [box-oil].
        do:
          - drain: box-oil
      - step: Top up the [box-oil].
        do:
          - top-up: box-oil
      - step: Start the [level-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - start: level-plug
          - tighten: level-plug
      - step: Run the [engine].
        do:
          - run: engine
      - step: Stop the [engine].
        do:
          - stop: engine
```
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Severity
from authoring.model.ends import Side
from authoring.model.fluid import Fluid
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.specification import When
from authoring.model.things import Equipment, FastenerGroup, Item
from authoring.proof.housing import filled_with
from authoring.proof.job import Job, job_of
from authoring.proof.linked import Linked
from authoring.proof.plugs import in_words, open_plug, plugs, sides_of_plug
from authoring.proof.settings import Setting
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N6", "N7")
ABOUT = ("set-running", "carried-out")

_Now = Mapping[Side, Setting]


class _Watched(Struct, frozen=True, eq=False):
    """A thing that must not be open or empty while something runs.

    `wrong` returns the setting by which it is; `said` the rest of the sentence for that, and `cure` what to do.
    """

    thing: str
    when: When
    sides: tuple[Side, ...]
    wrong: Callable[[_Now], Setting | None]
    said: Callable[[Setting], str]
    cure: str
    linked: Sequence[Linked] = ()


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each run, on some machine and way, with a plug open or a fluid drained."""
    equipment = library.scope(procedure).equipment
    job = job_of(procedure, library) if equipment is not None and equipment.fluids else None
    if equipment is None or job is None:
        return
    runs = [point for point in job.track.points if point.action is not None and point.action.kind.runs]
    for watched in _watched(equipment, job) if runs else ():
        yield from _run(watched, runs, job)


def _watched(equipment: Equipment, job: Job) -> Iterator[_Watched]:
    """Yield the plugs and fluids that a job names, or finds otherwise than whole."""
    for plug in plugs(equipment):
        if plug.open_while_running is None and _bears(sides_of_plug(plug.id, job.scope), job):
            yield _plug(plug, job)
    for fluid in equipment.fluids.values():
        if _bears([(fluid.id, "fluid")], job):
            yield _fluid(fluid, equipment)


def _bears(sides: Iterable[Side], job: Job) -> bool:
    things = {thing for thing, _ in sides}
    found = {need.thing for need in job.procedure.needs}
    return any(thing in job.track.naming or thing in found for thing in things)


def _plug(plug: Item | FastenerGroup, job: Job) -> _Watched:
    return _Watched(
        plug.id,
        plug.when,
        tuple(sides_of_plug(plug.id, job.scope)),
        lambda now: open_plug(plug.id, job.scope, now),
        in_words,
        f'Let a step before bring "{plug.id}" back for good, or say with "open-while-running" why it is out.',
    )


def _fluid(fluid: Fluid, equipment: Equipment) -> _Watched:
    return _Watched(
        fluid.id,
        fluid.when,
        ((fluid.id, "fluid"),),
        lambda now: now[fluid.id, "fluid"] if now[fluid.id, "fluid"].state == "drained" else None,
        lambda _: "drained",
        f'Fill "{fluid.id}" in a step before.',
        filled_with(fluid, equipment),
    )


def _run(watched: _Watched, runs: Sequence[Point], job: Job) -> Iterator[Fault]:
    story = job.story(watched.sides, runs, [watched.when], watched.linked)
    if story is None:
        return
    for point in runs:
        bad: Gathered[str] = Gathered()
        for held in story.before(point):
            setting = watched.wrong(held.settings)
            if setting is not None and not told_by_itself(point, [setting]):
                bad.note(watched.said(setting), held, held.cells & story.space.where(watched.when))
        for said, held, cells in bad.each():
            runner = point.action.what[0] if point.action is not None else ""
            yield fault(
                f'"{runner}" is set running while "{watched.thing}" is {said}',
                span_of(point, runner),
                watched.cure,
                (job, story, cells, held.path),
            )
