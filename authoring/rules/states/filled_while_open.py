"""A fluid is poured in while a plug out of which it runs is not back.

What goes in at the top runs over the floor, and into the drain of the yard.
Each item and each fastener that `drains` the fluid is back on every machine and way through the job: not off, loose,
only tried or held, nor open.
A plug that is only started keeps a fluid in that is let out again before the plug is tightened, as for a flushing.
A plug that both drains and `fills` the fluid is where it goes in, and may be out.
What was discarded, replaced or left empty on purpose is not waited for.

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
values:
  refill: {name: refill amount, value: 1.1 L, source: bench-book, at: page 9}
sections:
  - title: Change the oil
    steps:
      - step: Remove the [drain-plug], and drain the [box-oil].
        do:
          - remove: drain-plug
          - drain: box-oil
      - step: Pour in [refill] of [box-oil].
        do:
          - fill: {what: box-oil, amount: refill}   #! filled-while-open
      - step: Start the [drain-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - start: drain-plug
          - tighten: drain-plug
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
values:
  refill: {name: refill amount, value: 1.1 L, source: bench-book, at: page 9}
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
      - step: Pour in [refill] of [box-oil].
        do:
          - fill: {what: box-oil, amount: refill}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.model.fluid import Fluid
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.space import Cells
from authoring.model.things import Equipment, FastenerGroup, Item
from authoring.proof.housing import letting_out, mates, pouring
from authoring.proof.job import Job, job_of
from authoring.proof.linked import Linked
from authoring.proof.plugs import in_words, open_plug, plugs, sides_of_plug
from authoring.proof.story import Story
from authoring.proof.track import Jump, Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N6",)
ABOUT = ("fluid-moved", "carried-out")


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each pouring on some machine and way that has a plug of the fluid open."""
    equipment = library.scope(procedure).equipment
    drains = [plug for plug in plugs(equipment) if plug.drains] if equipment is not None else []
    job = job_of(procedure, library) if drains else None
    if equipment is None or job is None:
        return
    for fluid in equipment.fluids.values():
        poured = [
            point
            for point in job.track.naming.get(fluid.id, ())
            if point.does in pouring() and point.action is not None and fluid.id in point.action.what
        ]
        for plug in drains if poured else ():
            if fluid.id in plug.drains and fluid.id not in plug.fills:
                yield from _poured(fluid, plug, poured, job)
                yield from _by_hand(fluid, plug, equipment, job)


def _poured(fluid: Fluid, plug: Item | FastenerGroup, poured: Sequence[Point], job: Job) -> Iterator[Fault]:
    story = job.story(sides_of_plug(plug.id, job.scope), poured, [fluid.when, plug.when])
    if story is None:
        return
    there = story.space.where(fluid.when) & story.space.where(plug.when)
    for point in poured:
        bad: Gathered[str] = Gathered()
        for held in story.before(point):
            setting = open_plug(plug.id, job.scope, held.settings)
            if setting is not None and setting.state != "started" and not told_by_itself(point, [setting]):
                bad.note(in_words(setting), held, held.cells & there)
        for words, held, cells in bad.each():
            yield _fault(fluid, plug, (point, words), (job, story, cells, held.path))


def _by_hand(fluid: Fluid, plug: Item | FastenerGroup, equipment: Equipment, job: Job) -> Iterator[Fault]:
    """Yield where a fluid is poured in above a plug that is only started, and is still in when that is tightened."""
    where, inside = (plug.id, "where"), (plug.id, "inside")
    tightened = [point for point in job.track.naming.get(plug.id, ()) if point.does == "tighten"]
    linked = [
        Linked(pouring(), fluid.id, inside, "filled"),
        *(Linked(letting_out(), one.id, inside, "drained") for one in (fluid, *mates(fluid, equipment))),
        Linked(frozenset({"start"}), plug.id, inside, "drained"),
    ]
    story = job.story([where, inside], tightened, [fluid.when, plug.when], linked)
    if story is None:
        return
    bad: Gathered[Point] = Gathered()
    there = story.space.where(fluid.when) & story.space.where(plug.when)
    for held in (*(one for point in tightened for one in story.before(point)), *story.at_the_end()):
        poured, now = held.settings[inside], held.settings[where]
        still_in = now.state == "started" and poured.state == "filled"
        if still_in and isinstance(poured.by, Point) and not told_by_itself(poured.by, [now]):
            bad.note(poured.by, held, held.cells & there)
    for point, held, cells in bad.each():
        yield _fault(fluid, plug, (point, "only started"), (job, story, cells, held.path))


def _fault(
    fluid: Fluid,
    plug: Item | FastenerGroup,
    found: tuple[Point, str],
    told: tuple[Job, Story, Cells, Sequence[Point | Jump]],
) -> Fault:
    point, words = found
    return fault(
        f'"{fluid.id}" is poured in while "{plug.id}", out of which it runs, is {words}',
        span_of(point, fluid.id),
        f'Let a step before bring "{plug.id}" back for good, so that the fluid stays in.',
        told,
    )
