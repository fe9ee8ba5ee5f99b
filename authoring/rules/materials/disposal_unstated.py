"""Something that is drained or used up has no way to be disposed of.

Old oil without an address ends in the nearest drain.
A fluid that a step drains and a consumable that a step uses say under `disposal` where they go; the closing count
prints it.

Wrong:

```yaml stock
consumables:
  rag: {name: lint-free rag, take: one}   #! disposal-unstated
```

Right:

```yaml stock
consumables:
  rag: {name: lint-free rag, disposal: oily-waste bin, take: one}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.fluid import Fluid
from authoring.model.library import Library, Named
from authoring.model.things import Consumable
from authoring.rules.rule import Fault, Together

SEVERITY = Severity.WARNING
REQUIREMENTS = ("P5",)
ABOUT = ("fluid-moved", "used-up")
TOGETHER = Together.ANY


def check(library: Library, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each drained fluid and each used consumable without a way to be disposed of; once each."""
    told: set[object] = set()
    for named in _left_over(library):
        if isinstance(named.thing, Fluid | Consumable) and named.thing.disposal is None and named.thing not in told:
            told.add(named.thing)
            yield Fault(
                f'Where "{named.id}" goes when the job is done is not stated.',
                named.where.span,
                'Add "disposal" to it, such as: disposal: oily-waste bin.',
            )


def _left_over(library: Library) -> Iterator[Named]:
    for procedure in library.procedures.values():
        things = library.scope(procedure).things
        for _, step in procedure.steps():
            used = [*step.uses, *(name for action in step.actions for name in action.what if _leaves(action.kind.name))]
            yield from (things[name] for name in used if name in things)


def _leaves(action: str) -> bool:
    return action in {"drain", "apply"}
