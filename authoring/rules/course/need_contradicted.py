"""A step needs a state, and the last thing done before it leaves another one.

Whoever reads "set to free" under a step finds the lever braked by the step above, and one of the two is wrong.
What a step or section `needs` is what the last action on the thing before it leaves, for the same machines and on the
same way through the job: set to that position, running or stopped, isolated or live, open or closed, raised or
lowered, on or off, held up or free, drained or filled.
Where nothing was done to the thing before, what the procedure itself needs holds.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  lever: {name: release lever, positions: {free: free, braked: braked}}
```
```yaml procedure
sections:
  - title: Fit
    steps:
      - step: Set the [lever] to braked.
        do:
          - set: {what: lever, position: braked}
      - step: Clean the [drop-box].
        needs: {lever: free}   #! need-contradicted
        do:
          - clean: drop-box
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  lever: {name: release lever, positions: {free: free, braked: braked}}
```
```yaml procedure
sections:
  - title: Fit
    steps:
      - step: Set the [lever] to free.
        do:
          - set: {what: lever, position: free}
      - step: Clean the [drop-box].
        needs: {lever: free}
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.course import Act, acts
from authoring.model.demands import Need
from authoring.model.ends import Change, Side, changes, side_of, touched_sides
from authoring.model.fitments import together
from authoring.model.library import Library
from authoring.model.procedure import Action, Procedure, Section, Step
from authoring.model.runs import runs
from authoring.model.space import Cells
from authoring.model.things import Item
from authoring.model.ways import Shown, Ways, ways_of
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("R2", "N11")
ABOUT = ("need",)

_ON = frozenset({"fitted", "started", "tight"})
_AGAINST = {
    "stopped": frozenset({"running"}),
    "running": frozenset({"stopped"}),
    "isolated": frozenset({"live"}),
    "proved-dead": frozenset({"live"}),
    "live": frozenset({"isolated"}),
    "supported": frozenset({"free"}),
    "chocked": frozenset({"free"}),
    "free": frozenset({"supported", "chocked"}),
    "raised": frozenset({"lowered"}),
    "lowered": frozenset({"raised"}),
    "open": frozenset({"closed"}),
    "closed": frozenset({"open"}),
    "removed": _ON,
    "fitted": frozenset({"removed"}),
    "drained": frozenset({"filled"}),
    "filled": frozenset({"drained"}),
}
"""For each state that may be needed, those that contradict it; any other, such as held or loose, may do."""


class _Asked(Struct, frozen=True, eq=False):
    """A need, the section and step that it stands before, and the number of that step; the section's own needs as well.

    `step` is None for the need of a section.
    """

    need: Need
    section: Section
    step: Step | None
    place: int


class _Left(Struct, frozen=True):
    """How a thing was left, where it says so, and the action that left it so; None for how the procedure begins."""

    state: str
    where: Span
    action: Action | None


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each need that some machine does not meet, as far as the steps before it tell."""
    asked = list(_asked(procedure))
    ways = ways_of(procedure, library) if asked else None
    if ways is None:
        return
    course = acts(procedure, library)
    for one in asked:
        if one.need.state in _AGAINST or _is_position(one.need, ways):
            yield from _of_need(one, course, ways, procedure)


def _asked(procedure: Procedure) -> Iterator[_Asked]:
    place = 0
    for section in procedure.sections:
        yield from (_Asked(need, section, None, place) for need in section.needs)
        for step in section.steps:
            yield from (_Asked(need, section, step, place) for need in step.needs)
            place += 1


def _is_position(need: Need, ways: Ways) -> bool:
    item = ways.vehicle.items.get(need.thing)
    return isinstance(item, Item) and need.state in item.positions


def _of_need(one: _Asked, course: Sequence[Act], ways: Ways, procedure: Procedure) -> Iterator[Fault]:
    sides = _sides(one.need, ways)
    mine = [act for act in course if act.place < one.place and not sides.isdisjoint(_touched(act))]
    if one.section.free and any(act.section is one.section for act in mine):
        return  # the order is free, and another rule tells that it must not be
    steps = one.section.steps if one.step is None else (one.step,)
    space = ways.space(mine, steps, [together(procedure.covers, one.section.when)])
    if space is None:
        return
    comes = 0
    for step in steps:
        comes |= ways.reached(step, space)
    bad: dict[_Left, Cells] = {}
    for done, cells in runs(ways.marked(mine, space), comes):
        last = _last(done, sides, procedure.needs)
        if last is not None and _contradicts(last.state, one.need, ways):
            bad[last] = bad.get(last, 0) | cells
    for last, concern in bad.items():
        yield _fault(one, last, ways.shown(concern, space))


def _touched(act: Act) -> frozenset[Side]:
    return touched_sides(act.action) | {side_of(need) for need in _leaves(act)}


def _leaves(act: Act) -> Sequence[Need]:
    """Return what the step of an action leaves beside; it belongs to the last of its actions."""
    return act.doing.leaves if act.action is act.doing.actions[-1] else ()


def _sides(need: Need, ways: Ways) -> frozenset[Side]:
    """Return what of the thing the state is about: a lever that is set to free was not held up before."""
    position = {(need.thing, "position")} if _is_position(need, ways) else set()
    return frozenset({side_of(need), *position})


def _last(done: Sequence[Act], sides: frozenset[Side], begin: Sequence[Need]) -> _Left | None:
    """Return how the actions that are done leave these sides of a thing, where the procedure begins so."""
    stated = {need: act.action for act in done for need in _leaves(act)}
    events: list[Action | Need] = [*begin]
    for act in done:
        events += (act.action, *_leaves(act))
    found = [change for change in changes(events) if change.side in sides]
    return _left(found[-1], stated) if found else None


def _left(change: Change, stated: Mapping[Need, Action]) -> _Left:
    by = change.by
    if isinstance(by, Need):
        action = stated.get(by)
        return _Left(change.state, action.where.span if action is not None else by.where.key(by.thing), action)
    return _Left(change.state, by.where.span, by)


def _contradicts(state: str, need: Need, ways: Ways) -> bool:
    if state == need.state:
        return False
    other_position = _is_position(need, ways) and state in ways.vehicle.items[need.thing].positions
    return other_position or state in _AGAINST.get(need.state, ())


def _fault(one: _Asked, last: _Left, shown: Shown) -> Fault:
    need = one.need
    who = "section" if one.step is None else "step"
    words = "the procedure begins with it" if last.action is None else f'"{last.action.kind.name}" leaves it'
    state = last.state.replace("-", " ")
    return Fault(
        f'The {who} needs "{need.thing}" {need.state.replace("-", " ")}, but {words} {state}{shown.whom}.',
        need.where.key(need.thing),
        f'Add a step before that brings "{need.thing}" into this state, or correct one of the two.',
        (Related(last.where, "left so here" if last.action is not None else "so at the beginning"),),
        shown.fitments,
    )
