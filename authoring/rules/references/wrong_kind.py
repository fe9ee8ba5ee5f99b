"""A name stands for a thing of a kind that does not fit there.

Nobody can tighten an oil or drain a bolt: either the action or the name is the wrong one,
and whatever the right one would bring (a torque, a tool in the list) is missing from the booklet.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [box-oil].
        do:
          - clean: box-oil   #! wrong-kind
      - step: Clean the [drop-box].
        with: [level-plug]   #! wrong-kind
        do:
          - clean: drop-box
```

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Clean the [drop-box] with a [rag].
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.nearest import one_slip
from authoring.diagnostics.words import joined
from authoring.model.action_kind import Kind
from authoring.model.library import Library, Named, Scope
from authoring.model.mentions import Mention
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A6", "R1")

# Comparing spellings is slow; where so many names are wrong at once, no nearest one would be the cure.
_MOST_COMPARED = 50


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each known name of a wrong kind; a name stated twice may be either of the two."""
    scope = library.scope(procedure)
    compared: set[str] = set()
    for mention in scope.mentions:
        thing = scope.things.get(mention.name) if mention.kinds and mention.wants == "thing" else None
        if thing is None or thing.kind in mention.kinds:
            continue
        if not any(other.kind in mention.kinds for other in scope.everything() if other.id == mention.name):
            compared.add(mention.name)
            yield _wrong(mention, thing, scope, compare=len(compared) <= _MOST_COMPARED)


def _wrong(mention: Mention, thing: Named, scope: Scope, *, compare: bool) -> Fault:
    wanted = joined([kind.value for kind in Kind if kind in mention.kinds], "or")
    things = scope.things.values() if compare else ()
    fitting = [other.id for other in things if other.kind in mention.kinds and "." not in other.id]
    return Fault(
        f'"{mention.name}" is {thing.kind.value}, but "{mention.keys[0]}" takes {wanted}.',
        mention.span,
        one_slip(mention.name, fitting) or f"Name {wanted} here, or use what fits {thing.kind.value}.",
        (Related(thing.where.span, f'"{mention.name}" is stated here'),),
    )
