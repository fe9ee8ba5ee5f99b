"""A joint on which life depends is tightened, and nobody checks it.

A bolt that was forgotten looks like one that was tightened.
Where a failure puts life at risk (a joint of class A, a part or an item with `critical`), a hold point follows:
a checkpoint with `hold: true` on the fasteners, or on the item they hold.
A checkpoint in a procedure that is carried out later will do as well.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
    joint: A
```

```yaml procedure
sections:
  - title: Fit the plug
    steps:
      - step: Start the [level-plug] by hand and tighten it with the [wrench].
        with: [wrench]
        why: Nothing else keeps the oil off the brake.
        do:
          - start: level-plug
          - tighten: level-plug   #! joint-unchecked
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
    joint: A
```

```yaml procedure
sections:
  - title: Fit the plug
    steps:
      - step: Start the [level-plug] by hand and tighten it with the [wrench].
        with: [wrench]
        why: Nothing else keeps the oil off the brake.
        do:
          - start: level-plug
          - tighten: level-plug
      - step: Let somebody else look at the paint mark across the [level-plug].
        do:
          - inspect:
              what: level-plug
              hold: true
              outcomes:
                - {found: The mark is whole., then: go-on}
                - {found: There is no mark., then: stop}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.course import Act, acts
from authoring.model.fitments import together
from authoring.model.lacking import Lack, without
from authoring.model.library import Library, Scope
from authoring.model.mentions import Mention, touched
from authoring.model.on_and_off import PUTS_ON, meant
from authoring.model.procedure import Procedure
from authoring.model.specification import When
from authoring.model.things import Equipment, FastenerGroup, Item, Part
from authoring.rules.rule import Fault

# Steps are taken as they are written, though an outcome may skip or repeat some.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("T3", "P4")
ABOUT = ("critical",)

_MOST_AT_RISK = "A"


class _Work(Struct, frozen=True, eq=False):
    """Something put on that must be checked: its name, where it is put on, for which fitments, its place in the job."""

    name: str
    mention: Mention
    when: When
    place: int


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each work on a joint that some machine leaves without a hold point after it."""
    scope = library.scope(procedure)
    if scope.vehicle is None:
        return
    job = list(enumerate(acts(procedure, library)))
    works = [work for place, act in job if act.own for work in _works(place, act, scope)]
    for name in dict.fromkeys(work.name for work in works):
        near = _near(name, scope)
        holds = [(place, when) for place, act in job for when in _held(act, near, scope)]
        yield from _unchecked([work for work in works if work.name == name], holds, scope.vehicle, scope)


def _works(place: int, act: Act, scope: Scope) -> Iterator[_Work]:
    if act.action.kind.name not in PUTS_ON:
        return
    for mention in touched(act.action):
        if mention.role == "what":
            for name, when in meant(mention.name, scope.things.get(mention.name)):
                if _must_hold(name, act, scope):
                    yield _Work(name, mention, together(act.when, when), place)


def _must_hold(name: str, act: Act, scope: Scope) -> bool:
    thing = scope.things[name].thing if name in scope.things else None
    if isinstance(thing, FastenerGroup):
        return act.action.kind.torque and thing.joint == _MOST_AT_RISK
    return isinstance(thing, Item | Part) and thing.critical is not None


def _near(name: str, scope: Scope) -> set[str]:
    """Return the names on which a hold point checks a thing: itself, what it holds, what it is held by."""
    groups = scope.equipment.fasteners.values() if scope.equipment is not None else ()
    return {name, *(group.on for group in groups if group.id == name and group.on)} | {
        group.id for group in groups if group.on == name
    }


def _held(act: Act, near: set[str], scope: Scope) -> Iterator[When]:
    if act.action.hold:
        for name in act.action.what:
            for one, when in meant(name, scope.things.get(name)):
                if one in near:
                    yield together(act.when, act.action.critical_when, when)


def _unchecked(
    works: Sequence[_Work], holds: Sequence[tuple[int, When]], vehicle: Equipment, scope: Scope
) -> Iterator[Fault]:
    waiting = list(holds)
    settled: list[When] = []
    for work in reversed(works):
        while waiting and waiting[-1][0] > work.place:
            settled.append(waiting.pop()[1])
        lack = without(vehicle, scope.procedure.covers, [work.when], settled)
        if lack is not None:
            # What is worked on again later is asked there, once.
            settled.append(work.when)
            yield _fault(work, lack, scope)


def _fault(work: _Work, lack: Lack, scope: Scope) -> Fault:
    named = scope.things[work.name]
    group = isinstance(named.thing, FastenerGroup)
    return Fault(
        f'"{work.name}" is {"a joint of class A" if group else "critical"}, '
        f"but no hold point on it follows this work{lack.whom}.",
        work.mention.span,
        f'Add a later checkpoint on "{work.name}" with hold: true, such as a look by somebody else.',
        (Related(named.where.of("joint" if group else "critical"), "stated here"),),
        lack.fitments,
    )
