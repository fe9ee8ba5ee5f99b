"""Something is proved dead while nothing is cut off yet.

The instrument shows nothing because nobody has switched it on, and what is trusted to be dead starts beside a hand.
Where a job isolates a source of energy, or needs one isolated, one is isolated on every machine and way through the job
when something is proved dead; what is disconnected is cut off as well.
Nothing is asked on machines for which the job isolates nothing, nor of a pressure, which is let off and not cut off.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  engine: {name: engine}
  isolator: {name: battery isolator}
```
```yaml procedure
sections:
  - title: Clean
    steps:
      - step: Prove the [engine] dead.
        do:
          - prove-dead:
              what: engine   #! proved-before-isolated
              way: seen
              outcomes:
                - {found: No lamp lights., then: go-on}
                - {found: A lamp lights., then: stop}
      - step: Turn off the [isolator].
        do:
          - isolate: isolator
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
      - step: Turn on the [isolator].
        do:
          - restore: isolator
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  engine: {name: engine}
  isolator: {name: battery isolator}
```
```yaml procedure
sections:
  - title: Clean
    steps:
      - step: Turn off the [isolator].
        do:
          - isolate: isolator
      - step: Prove the [engine] dead.
        do:
          - prove-dead:
              what: engine
              way: seen
              outcomes:
                - {found: No lamp lights., then: go-on}
                - {found: A lamp lights., then: stop}
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
      - step: Turn on the [isolator].
        do:
          - restore: isolator
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.words import joined
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.specification import ALWAYS, When
from authoring.model.things import Item, Value
from authoring.proof.job import Job, job_of
from authoring.proof.settings import Setting
from authoring.proof.track import Point
from authoring.quantities.units import Dimension
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N7",)
ABOUT = ("proved-dead", "carried-out")

_CUT_OFF = frozenset({"isolated", "proved-dead"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each proof that some machine comes to, on some way, with every source of energy live."""
    job = job_of(procedure, library)
    if job is None:
        return
    proofs = [point for point in job.track.points if point.does == "prove-dead" and not _of_pressure(point, job)]
    sources = _sources(job) if proofs else {}
    if sources:
        yield from _proved([point for point in proofs if not _asks(point)], sources, job)


def _of_pressure(point: Point, job: Job) -> bool:
    """Tell whether a pressure is proved to be gone: its value, or all that is stated of the thing, is one."""
    things = job.scope.library.scope(point.procedure).things
    action = point.action
    if action is None:
        return False
    value = things.get(action.roles.get("value", ""))
    if value is not None and isinstance(value.thing, Value):
        limit = value.thing.specification.value
        return limit is not None and limit.dimension is Dimension.PRESSURE
    items = [things[name].thing for name in action.what if name in things]
    return all(isinstance(one, Item) and set(one.facts) == {"pressure"} for one in items)


def _sources(job: Job) -> Mapping[str, list[When]]:
    """Return each source of energy that the job isolates or needs isolated, and for which machines."""
    found: dict[str, list[When]] = {}
    for need in job.procedure.needs:
        if need.state in _CUT_OFF:
            found.setdefault(need.thing, []).append(ALWAYS)
    for point in job.track.points:
        for name in _cuts_off(point):
            found.setdefault(name, []).append(point.when)
    return found


def _cuts_off(point: Point) -> list[str]:
    """Return what a point isolates, or needs to be isolated."""
    isolated = point.action.what if point.action is not None and point.does == "isolate" else ()
    return [*isolated, *(need.thing for need in point.needs if need.state in _CUT_OFF)]


def _beside(other: Point, point: Point) -> bool:
    """Tell whether two points stand in the same procedure that the job leads to, however deep in it."""
    return not point.own and other.chain[:2] == point.chain[:2] and other.within[:1] == point.within[:1]


def _asks(point: Point) -> bool:
    """Tell whether the step, its section, or a procedure that it is carried out in needs a source to be isolated."""
    needs = [need for one in point.chain[1:] for need in one.needs]
    needs += point.section.needs if point.section is not None else ()
    needs += point.step.needs if point.step is not None else ()
    return any(need.state in _CUT_OFF for need in needs)


def _proved(proofs: Sequence[Point], sources: Mapping[str, list[When]], job: Job) -> Iterator[Fault]:
    parting = [point.action for point in job.track.points if point.action is not None and point.does == "disconnect"]
    parted = list(dict.fromkeys(name for action in parting for name in action.what))
    sides: list[Side] = [*((one, "energy") for one in sources), *((one, "where") for one in parted)]
    whens = [when for those in sources.values() for when in those]
    story = job.story(sides, proofs, whens)
    if story is None:
        return
    isolating = story.space.either(whens)
    for point in proofs:
        isolates = any(_beside(other, point) and _cuts_off(other) for other in job.track.points)
        bad: Gathered[None] = Gathered()
        for held in story.before(point):
            settings = [held.settings[side] for side in sides]
            if not any(map(_is_cut_off, settings)) and not (isolates and told_by_itself(point, settings)):
                bad.note(None, held, held.cells & isolating)
        for _, held, cells in bad.each():
            thing = point.action.what[0] if point.action is not None else ""
            names = joined([f'"{one}"' for one in sources], "or")
            yield fault(
                f'"{thing}" is proved dead while no source of energy is isolated',
                span_of(point, thing),
                f"Isolate {names} in a step before.",
                (job, story, cells, held.path),
            )


def _is_cut_off(setting: Setting) -> bool:
    by = setting.by
    return setting.state in _CUT_OFF or (setting.state == "removed" and isinstance(by, Point))
