"""Energy is given back while something that was disconnected is not connected.

A plug that hangs free sparks against the frame, and a pump that starts throws its oil out of the open hose.
What was disconnected is connected, fitted, seated or held again before a `restore`, on every machine and way through
the job; what only comes off with `remove` carries no energy, and is not asked about.
Nothing is asked where it was discarded, replaced or left empty on purpose, where a modification leaves it out or
replaces it, and where the procedure says under `leaves` or `needs` that it is off.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  isolator: {name: battery isolator}
  lamp-plug: {name: plug of the lamp}
```
```yaml procedure
sections:
  - title: Clean
    steps:
      - step: Turn off the [isolator].
        do:
          - isolate: isolator
      - step: Disconnect the [lamp-plug].
        do:
          - disconnect: lamp-plug
      - step: Turn on the [isolator].
        do:
          - restore: isolator   #! restored-while-open
      - step: Connect the [lamp-plug].
        do:
          - connect: lamp-plug
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  isolator: {name: battery isolator}
  lamp-plug: {name: plug of the lamp}
```
```yaml procedure
sections:
  - title: Clean
    steps:
      - step: Turn off the [isolator].
        do:
          - isolate: isolator
      - step: Disconnect the [lamp-plug].
        do:
          - disconnect: lamp-plug
      - step: Connect the [lamp-plug].
        do:
          - connect: lamp-plug
      - step: Turn on the [isolator].
        do:
          - restore: isolator
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.on_and_off import PUTS_ON
from authoring.model.procedure import Procedure
from authoring.model.specification import ALWAYS
from authoring.model.things import Item
from authoring.proof.job import Job, job_of
from authoring.proof.linked import Linked
from authoring.proof.settled import is_settled, left_out, left_so, settling_sides
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N7",)
ABOUT = ("given-back", "carried-out")

_JOINT = "joint"
"""The side of a thing that tells whether it is parted; to take it off then leaves it parted."""

_PARTS = frozenset({"disconnect"})
_JOINS = frozenset({*PUTS_ON, "restore"})
_OFF = frozenset({"removed"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing that is parted when energy comes back on some machine and way."""
    job = job_of(procedure, library)
    if job is None:
        return
    given = [point for point in job.track.points if point.does == "restore"]
    parts = [point.action for point in job.track.points if point.action is not None and point.does in _PARTS]
    parted = [name for action in parts for name in action.what] if given else []
    for thing in dict.fromkeys(parted):
        if thing in job.scope.things and not left_so(thing, _OFF, job):
            yield from _given(thing, given, job)


def _given(thing: str, given: Sequence[Point], job: Job) -> Iterator[Fault]:
    joint = (thing, _JOINT)
    gone, named = left_out(thing, job), job.scope.things[thing].thing
    there = named.when if isinstance(named, Item) else ALWAYS
    linked = [Linked(_PARTS, thing, joint, "removed"), Linked(_JOINS, thing, joint, "fitted")]
    story = job.story([joint, *settling_sides(thing, job.scope)], given, [there, *gone], linked)
    if story is None:
        return
    for point in given:
        if point.action is None or thing in point.action.what:
            continue
        bad: Gathered[None] = Gathered()
        for held in story.before(point):
            setting = held.settings[joint]
            apart = setting.state == "removed" and not is_settled(thing, job.scope, held.settings)
            if apart and not told_by_itself(point, [setting]):
                bad.note(None, held, held.cells & story.space.where(there) & ~story.space.either(gone))
        for _, held, cells in bad.each():
            source = point.action.what[0]
            yield fault(
                f'"{source}" gives energy back while "{thing}" is disconnected',
                span_of(point, source),
                f'Connect "{thing}" in a step before, or say what becomes of it.',
                (job, story, cells, held.path),
            )
