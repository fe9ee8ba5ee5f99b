"""No wrench that the step lists can bring the fasteners to their torque.

A wrench is true only between a fifth of its full scale and the end of it, and it can be set only where it has a mark.
Whoever holds a wrench that is too weak, too strong or too coarse sets "about there", and the joint is made by luck.
Of several wrenches in a step one that fits is enough; an adapter makes the matter one for the bench.

Wrong:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  gauntlets: {name: heat gauntlets}
  wrench:
    name: torque wrench
    range: {value: 40 to 210 N·m, source: bench-book, at: page 2}
    resolution: 10 N·m
```
```yaml procedure
sections:
  - title: Tighten
    steps:
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug   #! wrench-unfit
```

Right:

```yaml stock
tools:
  spanner: {name: 19 mm ring spanner}
  gauntlets: {name: heat gauntlets}
  wrench:
    name: torque wrench
    range: {value: 10 to 100 N·m, source: bench-book, at: page 2}
    resolution: 0.5 N·m
```
```yaml procedure
sections:
  - title: Tighten
    steps:
      - step: Tighten the [level-plug].
        with: [wrench]
        do:
          - tighten: level-plug
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.words import joined
from authoring.model.library import Library, Scope
from authoring.model.mentions import touched
from authoring.model.procedure import Procedure
from authoring.model.things import FastenerGroup, Tool
from authoring.model.wrenches import fit_of, wrenches
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T4",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each tightening to a torque that no wrench of its step can do."""
    scope = library.scope(procedure)
    for _, step in procedure.steps():
        tools = wrenches(step, scope)
        if not tools or any(tool.adapter is not None for tool in tools):
            continue
        for action in step.actions:
            for mention in touched(action) if action.kind.torque else ():
                named = scope.things.get(mention.name)
                if named is not None and isinstance(named.thing, FastenerGroup):
                    why = _reasons(named.thing, tools, scope)
                    if why:
                        yield Fault(
                            f'No wrench of this step can do the torque of "{named.id}": {joined(why)}.',
                            mention.span,
                            "List a wrench whose range and marks suit the torque.",
                            (Related(named.where.of("torque", "value"), "the torque"),),
                        )


def _reasons(group: FastenerGroup, tools: list[Tool], scope: Scope) -> list[str]:
    """Return for each wrench why it is not the one; nothing where one fits, or where nothing can be said."""
    why = []
    for tool in tools:
        fit = fit_of(tool, group)
        if fit is None or fit.fits:
            return []
        faults = joined([fault.value for fault in fit.faults])
        why.append(f"of the {scope.things[tool.id].words}, {faults}")
    return why
