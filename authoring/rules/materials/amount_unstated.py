"""Nobody is told how much of a consumable the job takes.

The apprentice fetches one rag where six are needed, or squeezes half a tube of sealant onto a face.
The stock file says under `take` how much one job takes, or the step that puts it on names an amount.

Wrong:

```yaml stock
consumables:
  rag: {name: lint-free rag, disposal: oily-waste bin}   #! amount-unstated
```

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        with: [rag]
        do:
          - clean: drop-box
```

Right:

```yaml stock
consumables:
  rag: {name: lint-free rag, disposal: oily-waste bin, take: two}
```

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.library import Library
from authoring.model.mentions import of_step
from authoring.model.procedure import Procedure
from authoring.model.things import Consumable
from authoring.rules.rule import Fault, Together

SEVERITY = Severity.WARNING
REQUIREMENTS = ("P1",)
ABOUT = ("used-up",)
TOGETHER = Together.ANY


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each consumable without `take` that some procedure uses without naming an amount."""
    known = library.stock.consumables if library.stock is not None else {}
    unstated = {name: one for name, one in known.items() if one.take is None}
    found: dict[str, Span] = {}
    for procedure in library.procedures.values() if unstated else ():
        for name, span in _used(procedure, unstated).items():
            found.setdefault(name, span)
    for name, span in found.items():
        yield Fault(
            f'Nobody is told how much of "{name}" a job takes.',
            unstated[name].where.span,
            'Add "take: ", such as take: two rags, or name an amount where it is applied.',
            (Related(span, "used here"),),
        )


def _used(procedure: Procedure, unstated: Mapping[str, Consumable]) -> dict[str, Span]:
    """Return the consumables of which a procedure names no amount, and where each is first used."""
    used: dict[str, Span] = {}
    for _, step in procedure.steps():
        for mention in of_step(step):
            if mention.name in unstated and mention.wants == "thing":
                used.setdefault(mention.name, mention.span)
    measured = {
        name
        for _, step in procedure.steps()
        for action in step.actions
        if "amount" in action.roles
        for name in action.what
    }
    return {name: span for name, span in used.items() if name not in measured}
