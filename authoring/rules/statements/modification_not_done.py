"""A modification is stated that no step carries out.

The card in the cab says that a hose was added, and the hose lies on the bench.
For the machines that a modification is for, some step fits each part that it adds.
Each thing that it leaves out is taken off, or its place left empty, and is not put back.
What it replaces comes off as well, and the new part is fitted.
What a procedure does that is carried out counts as well.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  cap: {name: cap}
```

```yaml procedure
modifications:
  hose:
    name: plug in place of the cap
    as-found: A cap closed the hole.
    as-left: The hole has a ring, and the cap is off.
    adds: [plug-ring]   #! modification-not-done
    leaves-out: [cap]   #! modification-not-done
    tell: [customer]
sections:
  - title: Change
    steps:
      - step: Remove the [cap].
        do:
          - remove: cap
      - step: Fit the [cap].
        do:
          - fit: cap
      - step: Tell the customer of the [hose].
        do:
          - tell: {what: hose, who: customer}
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  cap: {name: cap}
```

```yaml procedure
modifications:
  hose:
    name: plug in place of the cap
    as-found: A cap closed the hole.
    as-left: The hole has a ring, and the cap is off.
    adds: [plug-ring]
    leaves-out: [cap]
    tell: [customer]
sections:
  - title: Change
    steps:
      - step: Remove the [cap] and fit the [plug-ring].
        do:
          - remove: cap
          - fit: plug-ring
      - step: Tell the customer of the [hose].
        do:
          - tell: {what: hose, who: customer}
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.changes import Modification
from authoring.model.course import Act, acts
from authoring.model.fitments import together
from authoring.model.lacking import lack, laid_out, without
from authoring.model.library import Library, Scope
from authoring.model.on_and_off import PUTS_ON, TAKES_OFF, meant
from authoring.model.procedure import Procedure
from authoring.model.runs import last_done
from authoring.model.specification import When
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

# Steps are taken as they are written, though an outcome may skip or repeat some.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N1",)
ABOUT = ("modification",)

_LEAVES_OUT = TAKES_OFF | {"discard", "leave-empty"}


class _Thing(Struct, frozen=True):
    """A thing that comes or goes with a modification, how that is said, and where it stands."""

    name: str
    verb: str
    at: Span
    comes: bool


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing of a modification that the steps do not add or leave out."""
    scope = library.scope(procedure)
    if scope.vehicle is None:
        return
    job = acts(procedure, library)
    for change in procedure.modifications.values():
        for thing in _things(change):
            if thing.name in scope.things:  # any other is an unknown name
                tell = _not_added if thing.comes else _not_left_out
                yield from tell(change, thing, job, scope, scope.vehicle)


def _things(change: Modification) -> Iterator[_Thing]:
    """Yield all that comes with a modification, and all that goes."""
    at = change.where
    for place, name in enumerate(change.adds):
        yield _Thing(name, "adds", at.of("adds", place), comes=True)
    for place, name in enumerate(change.leaves_out):
        yield _Thing(name, "leaves out", at.of("leaves-out", place), comes=False)
    for old, new in change.replaces.items():
        yield _Thing(old, "replaces", at.key("replaces", old), comes=False)
        yield _Thing(new, f'puts in place of "{old}"', at.of("replaces", old), comes=True)


def _done(name: str, kinds: frozenset[str], job: Sequence[Act], scope: Scope) -> list[When]:
    """Return for which fitments something of these kinds is done to a thing, or to a choice that gives it."""
    return [
        together(act.when, when)
        for act in job
        if act.action.kind.name in kinds
        for what in act.action.what
        for one, when in meant(what, scope.things.get(what))
        if one == name
    ]


def _not_added(
    change: Modification, thing: _Thing, job: Sequence[Act], scope: Scope, vehicle: Equipment
) -> Iterator[Fault]:
    done = _done(thing.name, PUTS_ON, job, scope)
    missing = without(vehicle, scope.procedure.covers, [change.when], done)
    if missing is not None:
        yield Fault(
            f'The modification "{change.id}" {thing.verb} "{thing.name}", but no step fits it{missing.whom}.',
            thing.at,
            f'Add a step that fits "{thing.name}" for these machines, or leave it out here.',
            fitments=missing.fitments,
        )


def _not_left_out(
    change: Modification, thing: _Thing, job: Sequence[Act], scope: Scope, vehicle: Equipment
) -> Iterator[Fault]:
    mine = [act for act in job if thing.name in {*act.action.what, act.action.roles.get("replaces")}]
    space = laid_out(vehicle, scope.procedure.covers, [change.when, *(act.when for act in mine)])
    if space is None:
        return
    moves = [(act, space.where(act.when)) for act in mine if act.action.kind.name in _LEAVES_OUT | PUTS_ON]
    for last, bad in last_done(moves, space.where(change.when)):
        if last is not None and (last.action.kind.name not in PUTS_ON or thing.name not in last.action.what):
            continue
        missing = lack(space, bad)
        but = "no step takes it off" if last is None else "a step puts it back"
        yield Fault(
            f'The modification "{change.id}" {thing.verb} "{thing.name}", but {but}{missing.whom}.',
            thing.at,
            "Change the steps for these machines, or leave it out here.",
            () if last is None else (Related(last.action.where.span, "it is put back here"),),
            missing.fitments,
        )
