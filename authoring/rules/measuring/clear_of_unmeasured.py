"""A distance to stay clear is stated, and nobody measures it.

A hose that lies nearer to the pipe than it may looks like one that does not, and it gets hard within a season.
Where `clear-of` says with `by` how far, an action after it measures that value, in the job or in what it carries out,
on every machine; a measurement that may be skipped does not count.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  hose: {name: breather hose}
values:
  gap: {name: gap to the box, value: at least 25 mm, source: bench-book, at: page 19}
```

```yaml procedure
sections:
  - title: Fit
    steps:
      - step: Fit the [hose].
        do:
          - fit: {what: hose, clear-of: [{of: drop-box, by: gap}]}   #! clear-of-unmeasured
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  hose: {name: breather hose}
values:
  gap: {name: gap to the box, value: at least 25 mm, source: bench-book, at: page 19}
```

```yaml procedure
sections:
  - title: Fit
    steps:
      - step: Fit the [hose].
        do:
          - fit: {what: hose, clear-of: [{of: drop-box, by: gap}]}
      - step: Measure the distance of the [hose] from the box.
        do:
          - measure:
              what: hose
              value: gap
              outcomes:
                - {found: The distance lies inside the window., then: go-on}
                - {found: It is less., then: put-right, say: Move the hose.}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.course import acts
from authoring.model.lacking import without
from authoring.model.library import Library, Scope
from authoring.model.procedure import Procedure
from authoring.model.things import Value
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("H2",)
ABOUT = ("distance",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each distance to stay clear that some machine has, and that nothing after it measures."""
    scope = library.scope(procedure)
    course = acts(procedure, library)
    for place, act in enumerate(course):
        for clear in act.action.manner.clear_of if act.own else ():
            if clear.by is None or scope.vehicle is None or not _is_distance(clear.by, scope):
                continue
            measured = [
                later.when
                for later in course[place + 1 :]
                if later.action.kind.name == "measure"
                and later.action.roles.get("value") == clear.by
                and not later.optional
            ]
            lack = without(scope.vehicle, procedure.covers, [act.when], measured)
            if lack is not None:
                yield Fault(
                    f'"{clear.of}" is to stay "{clear.by}" away, and nothing after it measures that{lack.whom}.',
                    clear.where.of("by"),
                    f'Let a later step measure "{clear.by}", or leave the distance out where a look will do.',
                    fitments=lack.fitments,
                )


def _is_distance(name: str, scope: Scope) -> bool:
    """Tell whether a name stands for a length; anything else has its own rule."""
    value = scope.things[name].thing if name in scope.things else None
    stated = [one.specification.value for one in value.windows] if isinstance(value, Value) else []
    return any(one is not None and one.dimension is Dimension.LENGTH for one in stated)
