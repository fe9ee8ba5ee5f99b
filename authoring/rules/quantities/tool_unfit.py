"""A step turns fasteners and lists nothing that turns them.

Whoever stands below the machine with the wrong socket rounds the corners, or walks back to the board.
Fasteners that say under `turned-with` what turns them, any one of several, are held against what the step lists under
`with`: where it loosens, removes or tightens them.
It is an error where the step lists what turns other fasteners of the machine and none that it turns itself.
What was only started, or is loose already, comes out by hand; what is eased may be tapped, and there only the wrong
tool is told.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    turned-with: [spanner]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
```
```yaml procedure
sections:
  - title: Open
    steps:
      - step: Remove the [level-plug].
        safety: [hot-pipe]
        with: [gauntlets]
        do:
          - remove: level-plug   #! tool-unfit
      - step: Start the [level-plug] by hand.
        do:
          - start: level-plug
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug   #! tool-unfit
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    fills: [box-oil]
    turned-with: [spanner]
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
```
```yaml procedure
sections:
  - title: Open
    steps:
      - step: Remove the [level-plug].
        safety: [hot-pipe]
        with: [spanner, gauntlets]
        do:
          - remove: level-plug
      - step: Start the [level-plug] by hand.
        do:
          - start: level-plug
      - step: Tighten the [level-plug].
        with: [spanner, wrench]
        do:
          - tighten: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.words import joined, quoted
from authoring.model.calls import calls, waits_for
from authoring.model.library import Library, Scope
from authoring.model.mentions import Mention, touched
from authoring.model.procedure import Action, Procedure, Step
from authoring.model.things import FastenerGroup, Tool
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("A2",)
ABOUT = ("turned-with",)

_BY_HAND_AFTER = frozenset({"start", "loosen", "ease"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each group that a step turns with none of the tools that turn it."""
    scope = library.scope(procedure)
    if scope.equipment is None or not any(group.turned_with for group in scope.equipment.fasteners.values()):
        return
    slack = _slack_before(procedure, library)
    for _, step in procedure.steps():
        turned: dict[str, tuple[Action, Mention, FastenerGroup]] = {}
        for action in step.actions:
            for mention in touched(action):
                named = scope.things.get(mention.name)
                group = named.thing if named is not None and mention.role == "what" else None
                if not isinstance(group, FastenerGroup):
                    continue
                if action.kind.torque or (_takes_off(action) and group.id not in slack):
                    turned.setdefault(group.id, (action, mention, group))
                if action.kind.torque:
                    slack.discard(group.id)
                elif action.kind.name in _BY_HAND_AFTER:
                    slack.add(group.id)
        yield from _unfit(step, turned.values(), scope)


def _takes_off(action: Action) -> bool:
    return action.kind.loosens or action.kind.name == "ease"


def _slack_before(procedure: Procedure, library: Library) -> set[str]:
    """Return what a procedure that is carried out, or comes before, may leave loose or started."""
    slack: set[str] = set()
    for mention in (*calls(procedure, library), *waits_for(procedure, library)):
        other = library.procedures.get(mention.name)
        for _, step in other.steps() if other is not None else ():
            slack.update(name for one in step.actions if one.kind.name in _BY_HAND_AFTER for name in one.what)
    return slack


def _unfit(step: Step, turned: Iterable[tuple[Action, Mention, FastenerGroup]], scope: Scope) -> Iterator[Fault]:
    wrong = _of_others(step, [group for _, _, group in turned], scope)
    for action, mention, group in turned:
        fitting = [name for name in group.turned_with if _is_tool(name, scope)]
        if not fitting or not set(fitting).isdisjoint(step.uses) or (action.kind.name == "ease" and not wrong):
            continue  # of a name that stands for no tool another rule tells
        able = joined([quoted(name) for name in fitting], "or")
        where = (Related(group.where.of("turned-with"), "what turns it"),)
        if wrong:
            listed = joined([quoted(name) for name in wrong], "and")
            message = f'This step turns "{group.id}" and lists {listed}, but only {able} turns it.'
            yield Fault(message, mention.span, f"List {able} under with instead.", where, severity=Severity.ERROR)
        else:
            message = f'"{group.id}" is turned with {able}, but this step lists nothing that turns it.'
            yield Fault(message, mention.span, f"Add {able} under with.", where)


def _of_others(step: Step, turned: list[FastenerGroup], scope: Scope) -> list[str]:
    """Return the tools of a step that turn other fasteners of the machine, none of the step's, and do nothing else."""
    groups = scope.equipment.fasteners.values() if scope.equipment is not None else ()
    others = {name for group in groups for name in group.turned_with}
    busy = {name for group in turned for name in group.turned_with}
    busy |= {name for action in step.actions for name in action.roles.values()}
    return [name for name in step.uses if name in others and name not in busy]


def _is_tool(name: str, scope: Scope) -> bool:
    return name in scope.things and isinstance(scope.things[name].thing, Tool)
