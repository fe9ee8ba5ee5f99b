"""What lies at the bench was never taken off, or never goes back.

Whoever reads that the carrier lies at the bench looks for the step that took it off, and there is none.
What stands under `bench` was removed by a step before, or the procedure needs it removed from the start,
and a step afterwards fits it again, unless it is discarded, is left out by a modification, or the procedure says
under `leaves` that it stays off.
A part of a larger thing is off with that thing.

Wrong:

```yaml procedure
sections:
  - title: Clean the box
    bench: drop-box   #! bench-still-on
    steps:
      - do: [{clean: drop-box}]
  - title: Fit the box
    steps:
      - do: [{fit: drop-box}]
```

It never goes back.

```yaml procedure
sections:
  - title: Take the box off
    steps:
      - do: [{remove: drop-box}]
  - title: Clean the box
    bench: drop-box   #! bench-still-on
    steps:
      - do: [{clean: drop-box}]
```

Right:

```yaml procedure
sections:
  - title: Take the box off
    steps:
      - do: [{remove: drop-box}]
  - title: Clean the box
    bench: drop-box
    steps:
      - do: [{clean: drop-box}]
  - title: Fit the box
    steps:
      - do: [{fit: drop-box}]
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from authoring.diagnostics.diagnostic import Severity
from authoring.model.course import Act, acts
from authoring.model.lacking import lack, laid_out
from authoring.model.library import Library
from authoring.model.on_and_off import wholes
from authoring.model.procedure import Procedure, Section
from authoring.model.runs import last_done
from authoring.model.space import Cells, Space
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N1", "N5")
ABOUT = ("bench",)

_OFF = frozenset({"remove", "disconnect"})
_GONE = _OFF | {"discard"}
_ON = frozenset({"fit", "seat", "connect", "hold", "trial-fit"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each item at the bench that some machine has still on, or never on again."""
    scope = library.scope(procedure)
    vehicle = scope.vehicle
    if vehicle is None:
        return
    begins: list[tuple[Section, int]] = []
    steps = 0
    for section in procedure.sections:
        begins.append((section, steps))
        steps += len(section.steps)
    for bench in dict.fromkeys(section.bench for section in procedure.sections):
        if bench is not None and bench in vehicle.items:  # what is no item is told elsewhere
            mine = [(section, begin) for section, begin in begins if section.bench == bench]
            yield from _of_item(wholes(bench, scope.things), mine, procedure, library, vehicle)


def _of_item(
    names: list[str], mine: list[tuple[Section, int]], procedure: Procedure, library: Library, vehicle: Equipment
) -> Iterator[Fault]:
    bench = names[0]
    if any(need.thing in names and need.state == "removed" for need in procedure.needs):
        return  # it came to this job taken off, and where it goes then is the business of another
    course = [
        act
        for act in acts(procedure, library)
        if act.action.kind.name in _GONE | _ON and set(names) & {*act.action.what}
    ]
    for section, begin in mine:
        before = [act for act in course if act.place < begin]
        space = laid_out(vehicle, procedure.covers, [section.when, *(act.when for act in before)])
        mine_on = space.where(section.when) if space is not None else 0
        bad = mine_on & ~_rests(names, before, _GONE, space) if space is not None else 0
        if space is not None and bad:
            left = lack(space, bad, mine_on)
            yield Fault(
                f'"{bench}" is worked on at the bench, but nothing has taken it off before{left.whom}.',
                section.where.of("bench"),
                f'Remove "{bench}" in a step before, or write needs: {{{bench}: removed}} at the procedure.',
                fitments=left.fitments,
            )
            return
    whens = [section.when for section, _ in mine]
    space = laid_out(vehicle, procedure.covers, [*whens, *(act.when for act in course)])
    if space is None or _stays_off(names, procedure):
        return
    worked_on = space.either(whens)
    bad = worked_on & _rests(names, course, _OFF, space)
    if bad:
        left = lack(space, bad, worked_on)
        yield Fault(
            f'"{bench}" is worked on at the bench, and is never fitted afterwards{left.whom}.',
            mine[-1][0].where.of("bench"),
            f'Fit "{bench}" in a step afterwards, or write leaves: {{{bench}: removed}} at the procedure.',
            fitments=left.fitments,
        )


def _rests(names: list[str], course: Sequence[Act], states: frozenset[str], space: Space) -> Cells:
    """Return the machines on which the last thing done to one of the names is one of these actions."""
    found = 0
    for name in names:
        mine = [(act, space.where(act.when)) for act in course if name in act.action.what]
        for last, cells in last_done(mine, space.every):
            if last is not None and last.action.kind.name in states:
                found |= cells
    return found


def _stays_off(names: list[str], procedure: Procedure) -> bool:
    left_out = {name for change in procedure.modifications.values() for name in change.leaves_out}
    left = {need.thing for need in procedure.leaves if need.state == "removed"}
    return not set(names).isdisjoint(left_out | left)
