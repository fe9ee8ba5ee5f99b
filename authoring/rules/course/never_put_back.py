"""A thing comes off, is opened or shut down, and nothing says what becomes of it.

A bolt left in the tray and a plug left hanging are found on the road.
What is removed, disconnected, opened, loosened, isolated, held up, locked or raised is brought back by a later action
on every machine and way through the job, or its fate is told: it is discarded, its place is left empty, another one is
fitted that `replaces` it, a modification leaves it out or replaces it, or the procedure says under `leaves` that it
stays so.
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

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import Choice, FastenerGroup, Fluid
from authoring.proof.job import Job, job_of
from authoring.proof.settings import Setting
from authoring.proof.settled import is_settled, left_out, left_so, settling_sides
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of
from authoring.rules.rule import Fault

# What is kept may be meant for somebody; everything else is certain and told as an error.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N1", "H6")
ABOUT = ("undone",)

_TOLD: Mapping[str, Mapping[str, tuple[str, str, frozenset[str]]]] = {
    "where": {"removed": ("removed", "Fit", frozenset({"removed"}))},
    "lid": {"open": ("opened", "Close", frozenset({"open"}))},
    "energy": {"isolated": ("isolated", "Restore", frozenset({"isolated", "proved-dead"}))},
    "hold": {"supported": ("held up", "Release", frozenset({"supported", "chocked"}))},
    "lock": {"locked": ("locked", "Release", frozenset({"supported", "chocked"}))},
    "height": {"raised": ("raised", "Lower", frozenset({"raised"}))},
}
"""For each side the states that may not last: how it is told, the cure, and what under `leaves` lets it stay."""

_OF_FASTENERS: Mapping[str, tuple[str, str, frozenset[str]]] = {
    "removed": ("removed", "Tighten", frozenset({"removed"})),
    "loose": ("loosened", "Tighten", frozenset({"removed"})),
    "started": ("started", "Tighten", frozenset({"removed"})),
}

_ONE_PLACE = ("where", "lid", "energy")
"""The sides of which the last one that changed tells whether a thing is back: an open lid may be lifted off and fitted."""

_BACK = frozenset({"fitted", "held", "started", "tight", "closed", "live"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that some machine is left without, on some way through the job."""
    job = job_of(procedure, library)
    if job is None:
        return
    for thing, side in dict.fromkeys(_undone(job)):
        sides = _ONE_PLACE if side in _ONE_PLACE else (side,)
        story = job.story([*((thing, one) for one in sides), *settling_sides(thing, job.scope)], (), left_out(thing, job))
        if story is None:
            continue
        stays = story.space.either(left_out(thing, job))
        bad: Gathered[Point] = Gathered()
        for held in story.at_the_end():
            now = {one: held.settings[thing, one] for one in sides}
            by = _left(side, now)
            if by is not None and not is_settled(thing, job.scope, held.settings) and _is_ours(thing, by, now[side], job):
                bad.note(by, held, held.cells & ~stays)
        for point, held, cells in bad.each():
            told = _told(thing, side, held.settings[thing, side].state, job)
            ...


def _undone(job: Job) -> Iterator[tuple[str, str]]:
    """Yield each thing and side that some action leaves in a state that may not last."""
    for point in job.track.points:
        for role, name in point.action.names() if point.action is not None else ():
            for effect in point.action.kind.effects if point.action is not None else ():
                if effect.of == role and name in job.scope.things and effect.becomes in _states(name, effect.side, job):
                    yield name, effect.side
