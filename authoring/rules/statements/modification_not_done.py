"""A modification is stated that no step carries out.

The card in the cab says that a hose was added, and the hose lies on the bench.
For the machines that a modification is for, some step fits each part that it adds.
Each thing that it leaves out is taken off, or its place left empty, and is not put back.
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

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.changes import Modification
from authoring.model.course import Act, acts
from authoring.model.fitments import may_hold, together
from authoring.model.lacking import lack, tried, without
from authoring.model.library import Library, Scope
from authoring.model.on_and_off import PUTS_ON, TAKES_OFF, meant
from authoring.model.procedure import Procedure
from authoring.model.smallest import Fitment
from authoring.model.things import Equipment, When
from authoring.rules.rule import Fault

# Steps are taken as they are written, though an outcome may skip or repeat some.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N1",)

_LEAVES_OUT = TAKES_OFF | {"discard", "leave-empty"}


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each thing of a modification that the steps do not add or leave out."""
    scope = library.scope(procedure)
    if scope.vehicle is None:
        return
    job = acts(procedure, library)
    for change in procedure.modifications.values():
        for place, name in enumerate(change.adds):
            if name in scope.things:  # any other is an unknown name
                yield from _not_added(change, place, _done(name, PUTS_ON, job, scope), scope.vehicle, procedure)
        for place, name in enumerate(change.leaves_out):
            if name in scope.things:
                yield from _not_left_out(change, place, job, scope.vehicle, procedure)


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
    change: Modification, place: int, done: Sequence[When], vehicle: Equipment, procedure: Procedure
) -> Iterator[Fault]:
    missing = without(vehicle, procedure.covers, [change.when], done)
    if missing is not None:
        name = change.adds[place]
        yield Fault(
            f'The modification "{change.id}" adds "{name}", but no step fits it{missing.whom}.',
            change.where.of("adds", place),
            f'Add a step that fits "{name}" for these machines, or leave it out here.',
            fitments=missing.fitments,
        )


def _not_left_out(
    change: Modification, place: int, job: Sequence[Act], vehicle: Equipment, procedure: Procedure
) -> Iterator[Fault]:
    name = change.leaves_out[place]
    mine = [act for act in job if name in act.action.what]
    fitments = tried(vehicle, procedure.covers, [change.when, *(act.when for act in mine)])
    concerned = [fitment for fitment in fitments if may_hold(change.when, fitment)]
    bad: dict[Act | None, list[Fitment]] = {}
    for fitment in concerned:
        last = _last([act for act in mine if may_hold(act.when, fitment)])
        if last is None or last.action.kind.name in PUTS_ON:
            bad.setdefault(last, []).append(fitment)
    for last, concern in bad.items():
        missing = lack(vehicle, procedure.covers, concern, [one for one in fitments if one not in concern])
        but = "no step takes it off" if last is None else "a step puts it back"
        yield Fault(
            f'The modification "{change.id}" leaves "{name}" out, but {but}{missing.whom}.',
            change.where.of("leaves-out", place),
            "Change the steps for these machines, or leave it out here.",
            () if last is None else (Related(last.action.where.span, "it is put back here"),),
            missing.fitments,
        )


def _last(mine: Sequence[Act]) -> Act | None:
    """Return what happens last to a thing that comes off or goes on."""
    return next((act for act in reversed(mine) if act.action.kind.name in _LEAVES_OUT | PUTS_ON), None)
