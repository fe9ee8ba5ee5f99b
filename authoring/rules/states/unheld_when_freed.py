"""The last fasteners of something heavy come out, and nothing holds it.

The guard tips with the last bolt and lands on whoever has turned that bolt out.
When the last fasteners that hold an item of a stated mass are removed, the item is held, on every machine and way
through the job: a step before supports, raises, locks or holds it; a helper keeps it (`while`, or two `persons` at the
step); the step takes it off; or what is needed says that it is supported.
Fasteners that are loosened, or started by hand, hold it still; and what lies on the bench falls on nobody.
Beyond the mass from which the default `heavy-lift` asks for two persons it is an error, and below a warning, since
something light may well stay where it is; a hand beside the wrench does for that.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  guard: {name: guard, mass: {value: 34 kg, source: plate, at: line 7}}
fasteners:
  level-plug: {name: level plug, count: 1, thread: M18 x 1.5, on: drop-box, tightened: By hand.}
  bolts: {name: guard bolts, count: 6, thread: M8 x 1.25, on: guard, tightened: By hand.}
```
```yaml procedure
persons: 2
sections:
  - title: Guard
    steps:
      - step: Support the [guard].
        when: {brake: drum}
        do:
          - support: guard
      - step: Remove the [bolts].
        do:
          - remove: bolts   #! unheld-when-freed
      - step: Remove the [guard].
        persons: 2
        do:
          - remove: guard
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  guard: {name: guard, mass: {value: 34 kg, source: plate, at: line 7}}
fasteners:
  level-plug: {name: level plug, count: 1, thread: M18 x 1.5, on: drop-box, tightened: By hand.}
  bolts: {name: guard bolts, count: 6, thread: M8 x 1.25, on: guard, tightened: By hand.}
```
```yaml procedure
persons: 2
sections:
  - title: Guard
    steps:
      - step: Support the [guard].
        do:
          - support: guard
      - step: Remove the [bolts].
        do:
          - remove: bolts
      - step: Remove the [guard].
        persons: 2
        do:
          - remove: guard
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Severity
from authoring.model.effects import HELD_UP
from authoring.model.ends import Side
from authoring.model.library import Library
from authoring.model.on_and_off import TAKES_OFF, wholes
from authoring.model.policies import top
from authoring.model.policy_defaults import DEFAULTS
from authoring.model.procedure import Procedure, Step
from authoring.model.space import Cells
from authoring.model.specification import When
from authoring.model.things import FastenerGroup, Item
from authoring.proof.brought import brought
from authoring.proof.covers import is_off
from authoring.proof.holders import holders
from authoring.proof.job import Job, job_of
from authoring.proof.settings import Setting
from authoring.proof.story import Held, Story
from authoring.proof.track import Point
from authoring.quantities.quantity import Quantity
from authoring.rules.along import Gathered, fault, span_of, told_by_itself
from authoring.rules.rule import Fault

# What is light may well stay where it is, and hurts nobody.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N17", "N7")
ABOUT = ("weighed",)

_IN = frozenset({"tight", "loose", "started", "fitted", "tried"})
"""How fasteners are that hold an item, be it by a few threads."""

_HELD: Mapping[str, frozenset[str]] = {
    "hold": HELD_UP,
    "lock": frozenset({"locked"}),
    "height": frozenset({"raised"}),
}
"""What holds an item beside its fasteners, by side; what is raised by itself hangs on whatever raised it."""

_HANDS = 2


class _Weighed(Struct, frozen=True, eq=False):
    """An item of a stated mass, what it is part of, the fasteners that hold it, and when a modification brings each."""

    item: Item
    names: Sequence[str]
    groups: Sequence[FastenerGroup]
    new: Mapping[str, Sequence[When]]

    @property
    def heavy(self) -> bool:
        """Whether it is beyond the mass from which the default asks for two persons."""
        return top(_mass(self.item)) > top(DEFAULTS["heavy-lift"].bounds["heavier-than"])

    def sides(self) -> Iterator[Side]:
        """Yield the sides that tell what holds it."""
        yield from ((one, "where") for one in (*self.names, *(group.id for group in self.groups)))
        yield from ((self.item.id, side) for side in _HELD)

    def whens(self) -> Iterator[When]:
        """Yield the conditions on which it, and each group, is there."""
        yield from (self.item.when, *(group.when for group in self.groups))
        yield from (when for whens in self.new.values() for when in whens)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each removal of fasteners that on some machine and way sets something heavy free."""
    equipment = library.scope(procedure).equipment
    weighed = [one for one in equipment.items.values() if _mass(one) is not None] if equipment is not None else []
    job = job_of(procedure, library) if weighed else None
    if equipment is None or job is None:
        return
    for item in weighed:
        groups = list(holders(item.id, equipment))
        new = {group.id: brought(group, job) for group in groups}
        one = _Weighed(item, wholes(item.id, job.scope.things), groups, new)
        points = {point for group in groups for point in job.track.naming.get(group.id, ()) if point.does == "remove"}
        asked = [point for point in sorted(points, key=lambda point: point.number) if not _is_kept(one, point)]
        if asked:
            yield from _of_item(one, asked, job)


def _mass(item: Item) -> Quantity | None:
    return item.facts["mass"].value if "mass" in item.facts else None


def _is_kept(one: _Weighed, point: Point) -> bool:
    """Tell whether somebody keeps an item where its fasteners come out, or takes it off in the same step."""
    whole = point.procedure.needs if not point.own else ()
    needs = (*whole, *(point.section.needs if point.section is not None else ()))
    needs = (*needs, *(need for step in point.steps for need in step.needs))
    stated = any(need.thing == one.item.id and need.state in HELD_UP for need in needs)
    return stated or any(_helps(one, step) for step in point.steps)


def _helps(one: _Weighed, step: Step) -> bool:
    hands = step.holding is not None and one.item.id in step.holding.hold
    by_one = hands and step.holding is not None and step.holding.by == "other-hand" and one.heavy
    taken = any(action.kind.name in TAKES_OFF and not set(one.names).isdisjoint(action.what) for action in step.actions)
    return (hands and not by_one) or (step.persons or 1) >= _HANDS or taken


def _of_item(one: _Weighed, points: Sequence[Point], job: Job) -> Iterator[Fault]:
    story = job.story(one.sides(), points, one.whens())
    if story is None:
        return
    mass = _mass(one.item)
    weighs = mass.text if mass is not None else ""
    for point in points:
        bad: Gathered[None] = Gathered()
        out = [group for group in one.groups if point.action is not None and group.id in point.action.what]
        for held in story.before(point):
            if not _is_held(one, held.settings) and not told_by_itself(point, held.settings.values()):
                bad.note(None, held, _freed(one, out, held, story))
        for _, held, cells in bad.each():
            yield fault(
                f'"{one.item.id}" weighs {weighs}, and nothing holds it without "{out[0].id}"',
                span_of(point, out[0].id),
                f'Support "{one.item.id}" in a step before, let a helper keep it ("while", or "persons: 2" at the '
                "step), or take it off in this step.",
                (job, story, cells, held.path),
                Severity.ERROR if one.heavy else None,
            )


def _is_held(one: _Weighed, now: Mapping[Side, Setting]) -> bool:
    """Tell whether something else holds an item, or it is on the machine no more."""
    if now[one.item.id, "where"].state != "fitted" or any(is_off(name, now) for name in one.names):
        return True
    return any(now[one.item.id, side].state in states for side, states in _HELD.items())


def _freed(one: _Weighed, out: Sequence[FastenerGroup], held: Held, story: Story) -> Cells:
    """Return on which machines and ways one of the groups that come out is in, and none of those that stay is."""
    free = stay = 0
    for group in one.groups:
        cells = _in(one, group, held, story)
        free, stay = (free | cells, stay) if group in out else (free, stay | cells)
    return held.cells & story.space.where(one.item.when) & free & ~stay


def _in(one: _Weighed, group: FastenerGroup, held: Held, story: Story) -> Cells:
    """Return on which machines a group is there, and holds."""
    now = held.settings[group.id, "where"]
    cells = story.space.where(group.when) if now.state in _IN else 0
    return cells if now.by is not None else cells & ~story.space.either(one.new[group.id])
