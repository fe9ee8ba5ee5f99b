"""A thing comes off, is opened or set running, and nothing says what becomes of it.

A bolt left in the tray and a plug left hanging are found on the road, and an engine left running by whoever comes next.
What is removed, disconnected, opened, loosened, isolated, held up, locked or raised is brought back by a later action,
and what is set running is stopped by one, on every machine and way through the job; or its fate is told: it is
discarded, its place is left empty, another one is fitted that `replaces` it, a modification leaves it out or replaces
it, or the procedure says under `leaves` that it stays so.
Fasteners are back when they are tightened; those that are only started come off on the road.
What the job finds so (`needs`), and a job that is stopped, ask for nothing.
It is an error, and a warning where the thing was laid aside with `keep`, since that may be for somebody to take along.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  isolator: {name: battery isolator}
```
```yaml procedure
sections:
  - title: Clean
    steps:
      - step: Turn off the [isolator].
        do:
          - isolate: isolator   #! never-put-back
      - step: Remove the [level-plug].
        do:
          - remove: level-plug   #! never-put-back
      - step: Start the [level-plug] by hand and tighten it.
        when: {brake: drum}
        with: [wrench]
        do:
          - start: level-plug
          - tighten: level-plug
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  isolator: {name: battery isolator}
```
```yaml procedure
leaves: {isolator: isolated}
sections:
  - title: Clean
    steps:
      - step: Turn off the [isolator].
        do:
          - isolate: isolator
      - step: Remove the [level-plug].
        do:
          - remove: level-plug
      - step: Start the [level-plug] by hand and tighten it.
        with: [wrench]
        do:
          - start: level-plug
          - tighten: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from msgspec import Struct

from authoring.diagnostics.diagnostic import Severity
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.on_and_off import PUTS_ON
from authoring.model.procedure import Action, Procedure
from authoring.model.things import FastenerGroup, Part
from authoring.proof.job import Job, job_of
from authoring.proof.settings import Setting, there
from authoring.proof.settled import is_settled, left_out, left_so, settling_sides
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of
from authoring.rules.rule import Fault

# What is kept may be meant for somebody; everything else is certain and told as an error.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N1", "H6")
ABOUT = ("undone", "set-running", "carried-out")


class _Left(Struct, frozen=True):
    """How a thing is left in a state that may not last, its cure, and the states under `leaves` that let it stay so."""

    words: str
    cure: str
    stays: frozenset[str]


_LEFT: Mapping[tuple[str, str], _Left] = {
    ("where", "removed"): _Left("removed", "Fit", frozenset({"removed"})),
    ("lid", "open"): _Left("opened", "Close", frozenset({"open"})),
    ("energy", "isolated"): _Left("isolated", "Restore", frozenset({"isolated", "proved-dead"})),
    ("hold", "supported"): _Left("held up", "Release", frozenset({"supported", "chocked"})),
    ("lock", "locked"): _Left("locked", "Release", frozenset({"supported", "chocked"})),
    ("height", "raised"): _Left("raised", "Lower", frozenset({"raised"})),
    ("motion", "running"): _Left("set running", "Stop", frozenset({"running"})),
}
"""The states of items and parts that may not last, by side."""

_FASTENERS_LEFT: Mapping[tuple[str, str], _Left] = {
    ("where", state): _Left(words, "Tighten", frozenset({"removed"}))
    for state, words in (("removed", "removed"), ("loose", "loosened"), ("started", "started"))
}
"""Those of fasteners, which are back only when they are tight."""

_ONE_PLACE = ("where", "lid", "energy")
"""The sides of which the one that changed last tells whether a thing is back: what was opened may be fitted again."""

_FATE = (
    'or say what becomes of it: discard, leave-empty, "replaces" of what is fitted instead, "leaves-out" of a '
    'modification, or "leaves" of the procedure'
)
_STAYS_RUNNING = 'or write under "leaves" of the procedure that it runs on'


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that some machine is left without, on some way through the job."""
    job = job_of(procedure, library)
    if job is not None:
        for thing, side in dict.fromkeys(_undone(job)):
            yield from _of_side(thing, side, job)


def _undone(job: Job) -> Iterator[Side]:
    """Yield each side of a thing that some action leaves in a state that may not last."""
    for point in job.track.points:
        if point.action is not None:
            for role, name in point.action.names():
                left = _left(name, job)
                for effect in point.action.kind.effects:
                    if effect.of == role and (effect.side, effect.becomes) in left:
                        yield name, effect.side


def _left(thing: str, job: Job) -> Mapping[tuple[str, str], _Left]:
    if thing not in job.scope.things:
        return {}
    return _FASTENERS_LEFT if isinstance(job.scope.things[thing].thing, FastenerGroup) else _LEFT


def _of_side(thing: str, side: str, job: Job) -> Iterator[Fault]:
    together = _ONE_PLACE if side in _ONE_PLACE else (side,)
    gone = left_out(thing, job)
    comes = there(thing, job.scope)
    story = job.story((*((thing, one) for one in together), *settling_sides(thing, job.scope)), (), (*gone, comes))
    if story is None or _is_new(thing, job):
        return
    owed = story.space.where(comes) & ~story.space.either(gone)
    bad: Gathered[tuple[Point, _Left]] = Gathered()
    for held in story.at_the_end():
        setting = held.settings[thing, side]
        left = _left(thing, job).get((side, setting.state))
        by = setting.by
        if left is None or not isinstance(by, Point) or is_settled(thing, job.scope, held.settings):
            continue
        if _changed_last(side, together, thing, held.settings) and not _is_said(thing, left, by, job):
            bad.note((by, left), held, held.cells & owed)
    for (point, left), held, cells in bad.each():
        kept = any(one.does == "keep" and one.number > point.number for one in job.track.naming[thing])
        yield fault(
            f'"{thing}" is {left.words} here {"and kept, but" if kept else "and"} is never {_back(side)}',
            span_of(point, thing),
            f'{left.cure} "{thing}" in a later step, {_STAYS_RUNNING if side == "motion" else _FATE}.',
            (job, story, cells, held.path),
            None if kept else Severity.ERROR,
        )


def _back(side: str) -> str:
    return "stopped" if side == "motion" else "brought back"


def _is_new(thing: str, job: Job) -> bool:
    """Tell whether a thing is a part of the stock that the job itself fits first: it owes the machine nothing."""
    if thing not in job.scope.things or not isinstance(job.scope.things[thing].thing, Part):
        return False
    moved = [point for point in job.track.naming[thing] if point.action is not None and _moves(point.action)]
    return not moved or moved[0].does in PUTS_ON | {"trial-fit"}


def _moves(action: Action) -> bool:
    return any(effect.side == "where" and effect.of == "what" for effect in action.kind.effects)


def _changed_last(side: str, together: tuple[str, ...], thing: str, now: Mapping[Side, Setting]) -> bool:
    """Tell whether no other of these sides of a thing was changed after this one."""
    mine = now[thing, side].number
    return all(now[thing, other].number <= mine for other in together)


def _is_said(thing: str, left: _Left, by: Point, job: Job) -> bool:
    """Tell whether it is said that a thing stays so, or whether the procedure in which it is left so tells it itself.

    What is carried out leaves to the job only what each procedure on the way says that it leaves.
    """
    inner = by.chain[1:]
    said = [any(need.thing == thing and need.state in left.stays for need in one.leaves) for one in inner]
    return left_so(thing, left.stays, job) or not all(said)
