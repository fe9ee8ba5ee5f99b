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
from authoring.model.deeds import PUTS_ON, Deed, deeds, meant
from authoring.model.fitments import together
from authoring.model.lacking import lacking
from authoring.model.library import Library, Scope
from authoring.model.mentions import Mention, touched
from authoring.model.procedure import Procedure
from authoring.model.smallest import told
from authoring.model.things import Equipment, FastenerGroup, Item, Part, When
from authoring.rules.rule import Fault

# Steps are taken as they are written, though an outcome may skip or repeat some.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("T3", "P4")

_MOST_AT_RISK = "A"


class _Act(Struct, frozen=True, eq=False):
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
    job = list(enumerate(deeds(procedure, library)))
    acts = [act for place, deed in job if deed.procedure is procedure for act in _acts(place, deed, scope)]
    for name in dict.fromkeys(act.name for act in acts):
        near = _near(name, scope)
        holds = [(place, when) for place, deed in job for when in _held(deed, near, scope)]
        yield from _unchecked([act for act in acts if act.name == name], holds, scope.vehicle, scope)


def _acts(place: int, deed: Deed, scope: Scope) -> Iterator[_Act]:
    if deed.action.kind.name not in PUTS_ON:
        return
    for mention in touched(deed.action):
        if mention.role == "what":
            for name, when in meant(mention.name, scope.things.get(mention.name)):
                if _must_hold(name, deed, scope):
                    yield _Act(name, mention, together(deed.when, when), place)


def _must_hold(name: str, deed: Deed, scope: Scope) -> bool:
    thing = scope.things[name].thing if name in scope.things else None
    if isinstance(thing, FastenerGroup):
        return deed.action.kind.torque and thing.joint == _MOST_AT_RISK
    return isinstance(thing, Item | Part) and thing.critical is not None


def _near(name: str, scope: Scope) -> set[str]:
    """Return the names on which a hold point checks a thing: itself, what it holds, what it is held by."""
    groups = scope.equipment.fasteners.values() if scope.equipment is not None else ()
    return {name, *(group.on for group in groups if group.id == name and group.on)} | {
        group.id for group in groups if group.on == name
    }


def _held(deed: Deed, near: set[str], scope: Scope) -> Iterator[When]:
    if deed.action.hold:
        for name in deed.action.what:
            for one, when in meant(name, scope.things.get(name)):
                if one in near:
                    yield together(deed.when, deed.action.critical_when, when)


def _unchecked(
    acts: Sequence[_Act], holds: Sequence[tuple[int, When]], vehicle: Equipment, scope: Scope
) -> Iterator[Fault]:
    later: list[When] = []
    for act in reversed(acts):
        after = [when for place, when in holds if place > act.place]
        fewest = lacking(vehicle, scope.procedure.covers, [act.when], [*after, *later])
        if fewest is not None:
            # What is worked on again later is asked there, once.
            later.append(act.when)
            yield _fault(act, f" for {told(fewest, vehicle)}" if fewest else "", scope)


def _fault(act: _Act, whom: str, scope: Scope) -> Fault:
    named = scope.things[act.name]
    group = isinstance(named.thing, FastenerGroup)
    return Fault(
        f'"{act.name}" is {"a joint of class A" if group else "critical"}, '
        f"but no hold point on it follows this work{whom}.",
        act.mention.span,
        f'Add a later checkpoint on "{act.name}" with hold: true, such as a look by somebody else.',
        (Related(named.where.of("joint" if group else "critical"), "stated here"),),
    )
