"""A cover goes on over something that is not back.

The bolt that is only loose is forgotten once nobody sees it, and the cover comes off again on the road.
When something goes on or is closed that `covers` a thing, that thing is back, and so are what is part of it and the
fasteners on it: nothing is loose, started, off, tried, open, or held by an aid until something other than this cover.
What was discarded or replaced, or whose place is left empty, need not be back, nor what a modification leaves out or
replaces, nor what the procedure `needs` or `leaves` so.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  guard: {name: guard, covers: [level-plug]}
```
```yaml procedure
sections:
  - title: Plug
    steps:
      - step: Remove the [guard].
        do:
          - remove: guard
      - step: Loosen the [level-plug].
        with: [spanner]
        do:
          - loosen: level-plug
      - step: Tighten the [level-plug].
        when: {brake: drum}
        with: [wrench]
        do:
          - tighten: level-plug
      - step: Fit the [guard].
        do:
          - fit: guard   #! covered-over
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  guard: {name: guard, covers: [level-plug]}
```
```yaml procedure
sections:
  - title: Plug
    steps:
      - step: Remove the [guard].
        do:
          - remove: guard
      - step: Loosen the [level-plug].
        with: [spanner]
        do:
          - loosen: level-plug
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug
      - step: Fit the [guard].
        do:
          - fit: guard
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.specification import ALWAYS, When
from authoring.model.things import Item
from authoring.proof.beneath import Beneath, beneath
from authoring.proof.job import Job, job_of
from authoring.proof.settings import Setting
from authoring.proof.settled import SETTLED, left_out
from authoring.proof.track import Point
from authoring.proof.trapped import is_trapped, trapping_sides
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N1", "N5")
ABOUT = ("covered",)

_GOES_ON = frozenset({"fit", "seat", "connect", "close"})
_NOT_BACK: Mapping[str, str] = {
    "removed": "off",
    "loose": "loose",
    "started": "only started",
    "tried": "only tried",
    "held": "only held in its place",
    "open": "open",
}
_STATED = {"loose": "removed", "started": "removed"}
"""The state by which a procedure says that fasteners may stay as they are, where no state is called like that."""


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that is not back when a cover goes on over it, on some machine and way."""
    equipment = library.scope(procedure).equipment
    if equipment is None or not any(item.covers for item in equipment.items.values()):
        return
    job = job_of(procedure, library)
    if job is None:
        return
    for cover in equipment.items.values():
        points = [point for point in job.track.naming.get(cover.id, ()) if _goes_on(cover, point)]
        for one in beneath(cover, equipment, job.scope) if points and cover.covers else ():
            if any(name in job.track.naming for name in (one.thing, *one.around)):
                yield from _over(cover, one, [point for point in points if one.thing not in _placed(point)], job)


def _goes_on(cover: Item, point: Point) -> bool:
    return cover.id in _placed(point) and point.action is not None and point.action.kind.name in _GOES_ON


def _placed(point: Point) -> tuple[str, ...]:
    """Return what a point puts on or closes together."""
    return point.action.what if point.action is not None else ()


def _over(cover: Item, one: Beneath, points: Sequence[Point], job: Job) -> Iterator[Fault]:
    gone = left_out(one.thing, job)
    whens = [cover.when, *(_when(name, job) for name in (one.thing, *one.inside))]
    story = job.story([*one.sides(), *trapping_sides(one.thing, job)], points, [*whens, *gone]) if points else None
    if story is None:
        return
    there = ~story.space.either(gone)
    for when in whens:
        there &= story.space.where(when)
    for point in points:
        bad: Gathered[str] = Gathered()
        for held in story.before(point):
            left = _not_back(one, held.settings, point)
            if left is not None and not _is_said(one, left.state, point) and not told_by_itself(point, [left]):
                bad.note(_NOT_BACK[left.state], held, held.cells & there)
        for words, held, cells in bad.each():
            yield fault(
                f'"{cover.id}" goes over "{one.thing}", which is {words}',
                span_of(point, cover.id),
                f'Bring "{one.thing}" back in a step before, or say what becomes of it: discard, leave-empty, '
                '"replaces" of what is fitted instead, "leaves-out" of a modification, or "leaves" of the procedure.',
                (job, story, cells, held.path),
            )


def _when(name: str, job: Job) -> When:
    equipment = job.scope.equipment
    thing = (equipment.items.get(name) or equipment.fasteners.get(name)) if equipment is not None else None
    return thing.when if thing is not None else ALWAYS


def _not_back(one: Beneath, now: Mapping[Side, Setting], point: Point) -> Setting | None:
    """Return the setting by which a thing is not back when a cover goes on; None where it is, or need not be.

    The last change of it counts: what was opened may be fitted again.
    """
    placed = _placed(point)
    if not one.lies_there(now, placed):
        return None
    around = [now[name, "where"] for name in one.around]
    if any(setting.state in SETTLED for setting in around):
        return None
    off = next((setting for setting in around if setting.state == "removed"), None)
    if off is not None:
        return off if not one.inside else None
    last = max((now[one.thing, "where"], now[one.thing, "lid"]), key=lambda each: (each.number, each.state == "open"))
    if last.state == "held" and is_trapped(last, now, placed):
        return None
    return last if last.state in _NOT_BACK else None


def _is_said(one: Beneath, state: str, point: Point) -> bool:
    """Tell whether the job, or a procedure on the way to where the cover goes on, says that a thing is or stays so."""
    stays = {state, _STATED.get(state, state)}
    stated = [need for procedure in point.chain for need in (*procedure.needs, *procedure.leaves)]
    return any(need.thing in (one.thing, *one.around) and need.state in stays for need in stated)
