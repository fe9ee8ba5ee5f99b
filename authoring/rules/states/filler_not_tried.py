"""The oil is let out before anybody knows that the filler plug comes loose.

When the plug is stuck, or its hexagon rounds off, the box stands empty and the machine can no longer drive to where
the plug is drilled out.
It is common practice to loosen the filler before the drain; no standard was read that asks for it.
When a fluid is drained with `drain`, one of the fasteners that `fills` it was loosened, eased, removed or disconnected
in the job before, on every machine and way through it where the job gets one of them off after the draining.
Nothing is asked where something that `fills` it is an item, such as a cap, where what a plug is `on` is off, and where
no plug is opened while the fluid is out.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
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
          - drain: box-oil   #! filler-not-tried
      - step: Start the [drain-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - start: drain-plug
          - tighten: drain-plug
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

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
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
      - step: Loosen the [level-plug], so that it is known to come out.
        do:
          - loosen: level-plug
      - step: Remove the [drain-plug], and drain the [box-oil].
        do:
          - remove: drain-plug
          - drain: box-oil
      - step: Start the [drain-plug] by hand, and tighten it.
        with: [wrench]
        do:
          - start: drain-plug
          - tighten: drain-plug
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

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.words import joined
from authoring.model.ends import Side
from authoring.model.fluid import Fluid
from authoring.model.library import Library, Scope
from authoring.model.on_and_off import wholes
from authoring.model.procedure import Procedure
from authoring.model.space import Cells
from authoring.model.things import FastenerGroup, Item
from authoring.proof.brought import brought
from authoring.proof.covers import OFF
from authoring.proof.job import Job, job_of
from authoring.proof.linked import Linked
from authoring.proof.plugs import plugs
from authoring.proof.settings import Setting
from authoring.proof.story import Held, Story
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("N6",)
ABOUT = ("fluid-moved",)

_TRIES = frozenset({"loosen", "ease", "remove", "disconnect"})
_OPENS = frozenset({"loosen", "remove", "disconnect"})
_TRIED, _OUT = "tried", "let out"
"""Whether the job had a plug loose before, and where it let a fluid out last."""


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each draining after which some machine's filler is loosened for the first time."""
    equipment = library.scope(procedure).equipment
    through = [plug for plug in plugs(equipment) if plug.fills] if equipment is not None else []
    job = job_of(procedure, library) if through else None
    if equipment is None or job is None:
        return
    for fluid in equipment.fluids.values():
        fillers = [plug for plug in through if fluid.id in plug.fills]
        drained = any(point.does == "drain" for point in job.track.naming.get(fluid.id, ()))
        if fillers and drained:
            yield from _of_fluid(fluid, fillers, job)


def _of_fluid(fluid: Fluid, fillers: Sequence[Item | FastenerGroup], job: Job) -> Iterator[Fault]:
    own = [one for one in fillers if isinstance(one, FastenerGroup)]
    caps = [one.when for one in fillers if isinstance(one, Item)]
    opens = [point for one in own for point in job.track.naming.get(one.id, ()) if _opens(point, one)]
    if not opens:
        return
    now, out = (fluid.id, "fluid"), (fluid.id, _OUT)
    sides: list[Side] = [now, out]
    for one in own:
        sides += [(one.id, "where"), (one.id, _TRIED), *((name, "where") for name in _around(one, job.scope))]
    linked = [Linked(_TRIES, one.id, (one.id, _TRIED), _TRIED) for one in own]
    linked.append(Linked(frozenset({"drain"}), fluid.id, out, "let out"))
    whens = [when for one in own for when in (one.when, *brought(one, job))]
    story = job.story(sides, opens, [fluid.when, *caps, *whens], linked)
    if story is None:
        return
    bad: Gathered[tuple[Point, tuple[str, ...]]] = Gathered()
    for point in opens:
        for held in story.before(point):
            drained = held.settings[out]
            if not isinstance(drained.by, Point) or held.settings[now].state != "drained":
                continue
            cells = held.cells & story.space.where(fluid.when) & ~story.space.either(caps)
            names, untried = _untried(own, held, cells, (job, story))
            first = point.action is not None and not set(names).isdisjoint(point.action.what)
            if first and not told_by_itself(drained.by, [Setting("removed", point)]):
                bad.note((drained.by, names), held, untried)
    for (at, names), held, cells in bad.each():
        quoted = [f'"{name}"' for name in names]
        yield fault(
            f'"{fluid.id}" is drained before anybody knows whether {joined(quoted, "or")}, '
            f"through which it is filled, comes loose",
            span_of(at, fluid.id),
            f"Loosen {joined(quoted, 'or')} in an action before.",
            (job, story, cells, held.path),
        )


def _opens(point: Point, plug: FastenerGroup) -> bool:
    return point.does in _OPENS and point.action is not None and plug.id in point.action.what


def _around(plug: FastenerGroup, scope: Scope) -> list[str]:
    """Return what a plug is on, and what that is part of."""
    return wholes(plug.on, scope.things) if plug.on is not None and plug.on in scope.things else []


def _untried(
    own: Sequence[FastenerGroup], held: Held, cells: Cells, told: tuple[Job, Story]
) -> tuple[tuple[str, ...], Cells]:
    """Return the plugs that are as tight as the machine came, and on which machines there is no other."""
    job, story = told
    names: list[tuple[str, Cells]] = []
    for one in own:
        there = story.space.where(one.when) & ~story.space.either(brought(one, job))
        now, tried = held.settings[one.id, "where"], held.settings[one.id, _TRIED]
        off = any(held.settings[name, "where"].state in OFF for name in _around(one, job.scope))
        if now.state == "tight" and not isinstance(now.by, Point) and tried.state != _TRIED and not off:
            names.append((one.id, there))
        else:
            cells &= ~story.space.where(one.when)
    some = 0
    for _, there in names:
        some |= there
    return tuple(name for name, there in names if there & cells), cells & some
