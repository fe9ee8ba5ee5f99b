"""An action finds done already what it is to do.

Who is told to open what is open looks for another lid, and opens the wrong one; or the step that closes it was lost.
It counts what the same procedure has done before, on every machine and way, and how the machine comes.
What is disconnected may be removed as well, and what is fitted be connected.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  hatch: {name: hatch}
```
```yaml procedure
sections:
  - title: Look
    steps:
      - step: Open the [hatch].
        do:
          - open: hatch
      - step: Close the [hatch].
        when: {brake: drum}
        do:
          - close: hatch
      - step: Open the [hatch].
        do:
          - open: hatch   #! without-effect
      - step: Close the [hatch].
        do:
          - close: hatch
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  hatch: {name: hatch}
```
```yaml procedure
sections:
  - title: Look
    steps:
      - step: Open the [hatch].
        do:
          - open: hatch
      - step: Close the [hatch].
        do:
          - close: hatch
      - step: Open the [hatch].
        do:
          - open: hatch
      - step: Close the [hatch].
        do:
          - close: hatch
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Severity
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup, Item
from authoring.proof.brought import brought
from authoring.proof.covers import OFF
from authoring.proof.job import Job, job_of
from authoring.proof.settings import Setting
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N11",)


class _Vain(Struct, frozen=True):
    """On which side and in which states an action finds a thing as it leaves it.

    `beside` are actions that leave it in such a state and yet leave this one something to do.
    """

    side: str
    states: frozenset[str]
    beside: frozenset[str] = frozenset()


_VAIN = {
    "remove": _Vain("where", OFF, frozenset({"disconnect"})),
    "disconnect": _Vain("where", OFF),
    "fit": _Vain("where", frozenset({"fitted", "tight"})),
    "connect": _Vain("where", frozenset({"fitted"}), frozenset({"fit", "seat"})),
    "hold": _Vain("where", frozenset({"held"})),
    "loosen": _Vain("where", frozenset({"loose", "removed"})),
    "start": _Vain("where", frozenset({"started", "tight"})),
    "open": _Vain("lid", frozenset({"open"})),
    "close": _Vain("lid", frozenset({"closed"})),
    "isolate": _Vain("energy", frozenset({"isolated", "proved-dead"})),
    "restore": _Vain("energy", frozenset({"live"})),
    "lock": _Vain("lock", frozenset({"locked"})),
    "release": _Vain("hold", frozenset({"free"})),
}
_WORDS = {"removed": "off", "fitted": "on", "proved-dead": "isolated"}


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each action that on some machine and way does nothing more to a thing."""
    job = job_of(procedure, library)
    if job is None:
        return
    asked: dict[Side, list[Point]] = {}
    for point in job.track.points:
        if point.own and point.action is not None and point.action.kind.name in _VAIN:
            for name in point.action.what:
                asked.setdefault((name, _VAIN[point.action.kind.name].side), []).append(point)
    for side, points in asked.items():
        named = job.scope.things.get(side[0])
        if named is not None and isinstance(named.thing, Item | FastenerGroup):
            yield from _in_vain(named.thing, side, points, job)


def _in_vain(thing: Item | FastenerGroup, side: Side, points: Sequence[Point], job: Job) -> Iterator[Fault]:
    new = brought(thing, job)
    story = job.story([side], points, [thing.when, *new])
    if story is None:
        return
    there = story.space.where(thing.when)
    for point in points:
        bad: Gathered[str] = Gathered()
        verb = point.action.kind.name if point.action is not None else ""
        for held in story.before(point):
            now = held.settings[side]
            if _does_nothing(_VAIN[verb], held.settings, side) and _of_this(now):
                cells = held.cells & there
                bad.note(now.state, held, cells if now.by is not None else cells & ~story.space.either(new))
        for state, held, cells in bad.each():
            yield fault(
                f'"{verb}" finds "{thing.id}" {_WORDS.get(state, state)} already',
                span_of(point, thing.id),
                'Leave it out, or let a step before or "needs" of the procedure tell that it is otherwise.',
                (job, story, cells, held.path),
            )


def _does_nothing(vain: _Vain, now: Mapping[Side, Setting], side: Side) -> bool:
    """Tell whether a thing is as an action leaves it; what is not held up may be locked, and is released then."""
    setting = now[side]
    by = setting.by.action if isinstance(setting.by, Point) else None
    if setting.state not in vain.states or (by is not None and by.kind.name in vain.beside):
        return False
    return vain.side != "hold" or now[side[0], "lock"].state != "locked"


def _of_this(setting: Setting) -> bool:
    """Tell whether the job itself left a thing so, or found it so: two procedures may well ask for the same."""
    return not isinstance(setting.by, Point) or setting.by.own
