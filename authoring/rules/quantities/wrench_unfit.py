"""No wrench that the step lists can bring the fasteners to their torque.

A wrench is true only between a fifth of its full scale and the end of it, and it can be set only where it has a mark.
Whoever holds a wrench that is too weak, too strong or too coarse sets "about there", and the joint is made by luck.
The limits are held against the scale at the wrench: an adapter that lengthens it lets it be set lower.
Of several wrenches in a step one that fits is enough, and those of the shop that would fit are named.
A first stage has to lie in the range of one of them too, though not above a fifth of it: it only brings parts together.

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
from authoring.diagnostics.words import joined, quoted
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.wrenches import Held, Tightening, fit_of, fitting, overlong, tightenings, torque_of
from authoring.quantities.quantity import Quantity
from authoring.quantities.show import spell
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault
from authoring.workshop.wrench_fit import WrenchFault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T4",)
ABOUT = ("tightened",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each tightening to a torque that no wrench of its step can do."""
    for one in tightenings(procedure, library.scope(procedure)):
        if one.held and all(overlong(held) for held in one.held):
            continue  # a length was read wrong, which is told of by itself
        torque = torque_of(one.group)
        why = _reasons(one, torque) if torque is not None else []
        if why:
            others = fitting(one, library.stock)
            yield Fault(
                f'No wrench of this step can do the torque of "{one.group.id}": {joined(why)}.',
                one.mention.span,
                f"List {joined([quoted(tool.id) for tool in others], 'or')} under with instead."
                if others
                else "None in the stock can do it either: list one whose range and marks suit the torque.",
                (Related(one.group.where.of("torque", "value"), "the torque"),),
            )
        else:
            yield from _stages(one)


def _stages(one: Tightening) -> Iterator[Fault]:
    """Yield a fault for the first stage before the last that no wrench of the step can do."""
    torques = [at for at, stage in enumerate(one.group.stages) if stage.dimension is Dimension.TORQUE]
    for at in torques[:-1]:
        stage = one.group.stages[at]
        why = _reasons(one, stage, frozenset({WrenchFault.BELOW_A_FIFTH}))
        if why:
            yield Fault(
                f'No wrench of this step can do the {stage.text} that "{one.group.id}" gets first: {joined(why)}.',
                one.mention.span,
                "List a wrench for the first stages beside the one for the last.",
                (Related(one.group.where.of("stages", at), "the stage"),),
            )
            return


def _reasons(one: Tightening, torque: Quantity, allowed: frozenset[WrenchFault] = frozenset()) -> list[str]:
    """Return for each wrench why it is not the one; nothing where one fits, or where nothing can be said."""
    why = []
    for held in one.held:
        fit = fit_of(held, torque)
        faults = [fault for fault in fit.faults if fault not in allowed] if fit is not None else []
        if not faults:
            return []
        behind = f" with the {held.adapter.name}" if held.adapter is not None and held.ratio != 1 else ""
        why.append(f"of the {held.wrench.name}{behind}, {joined([_said(fault, held) for fault in faults])}")
    return why


def _said(fault: WrenchFault, held: Held) -> str:
    step = held.wrench.resolution
    if fault is WrenchFault.NO_MARK and step is not None:
        return f"none of its marks, one every {spell(step)}, lies between the limits"
    return fault.value
