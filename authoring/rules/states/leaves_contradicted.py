"""The job says that it leaves a thing in a state, and ends with it in another.

Whoever takes the machine over reads what is left raised, isolated or in neutral, and relies on it.
What a procedure states under `leaves` is how the thing stands at the end, on every machine and way through the job
that does anything to it.
Where nothing is done to it, it comes so, or the job finds it so (`needs`); some way of the job must bring it there
where it comes otherwise.
What is left off, open, isolated, held up, raised, running or drained though the job says otherwise is told by
`never-put-back` and `drained-not-filled`.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  lever: {name: range lever, positions: {low: low range, neutral: neutral}}
  guard: {name: guard}
```
```yaml procedure
leaves:
  lever: neutral   #! leaves-contradicted
  guard: removed   #! leaves-contradicted
sections:
  - title: Clean
    steps:
      - step: Set the [lever] to neutral.
        do:
          - set: {what: lever, position: neutral}
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
      - step: Set the [lever] to low range.
        when: {brake: drum}
        do:
          - set: {what: lever, position: low}
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  lever: {name: range lever, positions: {low: low range, neutral: neutral}}
  guard: {name: guard}
```
```yaml procedure
leaves:
  lever: neutral
  guard: removed
sections:
  - title: Clean
    steps:
      - step: Remove the [guard].
        do:
          - remove: guard
      - step: Set the [lever] to low range.
        when: {brake: drum}
        do:
          - set: {what: lever, position: low}
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
      - step: Set the [lever] to neutral.
        do:
          - set: {what: lever, position: neutral}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.demands import Need
from authoring.model.fluid import Fluid
from authoring.model.library import Library
from authoring.model.on_and_off import wholes
from authoring.model.procedure import Procedure
from authoring.model.space import Cells
from authoring.model.specification import When
from authoring.model.things import FastenerGroup, Item
from authoring.proof.against import can_be_contradicted, changed_last, contradicts
from authoring.proof.covers import is_off
from authoring.proof.job import Job, job_of
from authoring.proof.settings import Setting, sides_of
from authoring.proof.settled import settling_sides
from authoring.proof.story import Held, Story
from authoring.proof.track import Point
from authoring.rules.along import Gathered, fault
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V3", "N1")
ABOUT = ("left-so",)

_OWED = frozenset({"removed", "open", "isolated", "supported", "locked", "raised", "running", "drained"})
"""What an action leaves so is owed to the machine, and other rules tell of it."""


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each state that some machine is said to be left in, and is not."""
    stated = [need for need in procedure.leaves if can_be_contradicted(need, library.scope(procedure))]
    job = job_of(procedure, library) if stated else None
    if job is None:
        return
    for need in stated:
        named = job.scope.things.get(need.thing)
        if named is not None and isinstance(named.thing, Item | FastenerGroup | Fluid):
            yield from _of_state(need, named.thing.when, job)


def _of_state(need: Need, when: When, job: Job) -> Iterator[Fault]:
    sides = sides_of(need, job.scope)
    story = job.story((*sides, *settling_sides(need.thing, job.scope)), (), [when])
    if story is None:
        return
    asked = story.space.where(when)
    held_so = [(held, changed_last(held.settings, sides)) for held in story.at_the_end() if held.cells & asked]
    if all(_is_against(last, need, held, job) and not _is_done(last) for held, last in held_so):
        yield from (_fault(need, last, held, (job, story, asked)) for held, last in held_so[:1])
        return
    bad: Gathered[Setting] = Gathered()
    for held, last in held_so:
        if _is_done(last) and _is_against(last, need, held, job) and not _is_owed(last, need, job):
            bad.note(last, held, held.cells & asked)
    for last, held, cells in bad.each():
        yield _fault(need, last, held, (job, story, cells))


def _is_done(last: Setting) -> bool:
    """Tell whether something in the job left it so; else the machine comes so, or the job finds it so."""
    return isinstance(last.by, Point)


def _is_against(last: Setting, need: Need, held: Held, job: Job) -> bool:
    """Tell whether a thing cannot be left as it is said; a part is off where its whole is."""
    with_its_whole = need.state == "removed" and any(is_off(one, held.settings) for one in _around(need, job))
    return contradicts(last, need, job.scope) and not with_its_whole


def _around(need: Need, job: Job) -> list[str]:
    return wholes(need.thing, job.scope.things)[1:]


def _is_owed(last: Setting, need: Need, job: Job) -> bool:
    """Tell whether some action leaves the thing in a state of which another rule tells."""
    made = (
        (effect.side, effect.becomes)
        for point in job.track.naming.get(need.thing, ())
        if point.action is not None and need.thing in point.action.what
        for effect in point.action.effects("what")
    )
    return last.state in _OWED and any(state == last.state for _, state in made)


def _fault(need: Need, last: Setting, held: Held, told: tuple[Job, Story, Cells]) -> Fault:
    states = [state.replace("-", " ") for state in (need.state, last.state)]
    beside = (Related(last.by.where.key(need.thing), "so at the beginning"),) if isinstance(last.by, Need) else ()
    return fault(
        f'"leaves" says that "{need.thing}" is left {states[0]}, but {_who(last)} {states[1]}',
        need.where.key(need.thing),
        f'Let a step bring "{need.thing}" into this state before the job ends, or correct "leaves".',
        (*told, held.path),
        beside=beside,
    )


def _who(last: Setting) -> str:
    if isinstance(last.by, Point):
        by = f'"{last.by.does}"' if last.by.does else "a step" if last.by.step is not None else last.by.procedure.number
        return f"{by} leaves it"
    comes = "the job begins with it" if isinstance(last.by, Need) else "the machine comes with it"
    return f"nothing brings it there, and {comes}"
