"""A step works on what is to be left alone.

Some bolts look like the ones beside them and hold something else together; once they are turned, it leaks.
What the equipment file calls untouched is neither loosened nor tightened by any step,
and a step does nothing to what it lists under `leave`.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  joint-bolts:
    name: joint bolts
    count: 4
    thread: M10 x 1.5
    untouched: They hold the two halves of the box together.
```
```yaml procedure
sections:
  - title: Open
    steps:
      - step: Loosen the [joint-bolts] and the [level-plug].
        leave: [level-plug]
        do:
          - loosen: [joint-bolts, level-plug]   #! touched-what-is-left-alone touched-what-is-left-alone
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
  joint-bolts:
    name: joint bolts
    count: 4
    thread: M10 x 1.5
    untouched: They hold the two halves of the box together.
```
```yaml procedure
sections:
  - title: Open
    steps:
      - step: Loosen the [level-plug].
        leave: [joint-bolts]
        do:
          - loosen: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.library import Library
from authoring.model.mentions import touched
from authoring.model.procedure import Action, Procedure, Step
from authoring.model.things import FastenerGroup
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N4", "N11")
ABOUT = ("left-alone",)

_TURNS = frozenset({"loosen", "remove", "ease", "discard", "fit", "start", "tighten", "trial-fit"})
_ONLY_SAYS = frozenset({"tell", "leave-empty", "mark"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each action on a group that is never touched, or on what its own step leaves alone."""
    things = library.scope(procedure).things
    for _, step in procedure.steps():
        for action in step.actions:
            for mention in touched(action):
                if mention.role != "what":
                    continue
                named = things.get(mention.name)
                group = named.thing if named is not None else None
                if isinstance(group, FastenerGroup) and group.untouched and action.kind.name in _TURNS:
                    yield Fault(
                        f'"{group.id}" is never touched, but this step works on it.',
                        mention.span,
                        "Take it out of the step, or name the group that is meant.",
                        (Related(group.where.of("untouched"), "why it is never touched"),),
                    )
                elif mention.name in step.leave and _works(action):
                    yield Fault(
                        f'The step says to leave "{mention.name}" alone, and does something to it.',
                        mention.span,
                        'Take it out of the action, or out of "leave".',
                        (Related(_place(step, mention.name), "to be left alone"),),
                    )


def _works(action: Action) -> bool:
    return not action.kind.checkpoint and action.kind.name not in _ONLY_SAYS


def _place(step: Step, name: str) -> Span:
    return step.where.of("leave", step.leave.index(name))
