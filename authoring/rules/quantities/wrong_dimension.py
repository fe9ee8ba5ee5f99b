"""A value measures something else than its place takes.

An amount to pour is a volume and the time to wait is a time; a temperature there is a slip of the name,
and the reader would pour by the wrong number.

Wrong:

```yaml procedure
values:
  warm: {name: oil temperature, value: 45 to 55 °C, source: plate, at: line 7}
sections:
  - title: Work
    steps:
      - step: Wait [warm].
        do:
          - wait: warm   #! wrong-dimension
```

Right:

```yaml procedure
values:
  soak: {name: settling time, value: 5 min, source: plate, at: line 7}
sections:
  - title: Work
    steps:
      - step: Wait [soak].
        do:
          - wait: soak
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.nearest import did_you_mean
from authoring.diagnostics.words import joined
from authoring.model.library import Library, Scope
from authoring.model.mentions import Mention, touched
from authoring.model.procedure import Procedure
from authoring.model.things import Value
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("T1", "N13")

# Comparing spellings is slow, and a procedure has a handful of values of one dimension.
_MOST_COMPARED = 20


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each value that an action takes and that has another dimension than the action's place."""
    scope = library.scope(procedure)
    for _, step in procedure.steps():
        for action in step.actions:
            places = {"what": action.kind.what, **action.kind.roles}
            for mention in touched(action):
                place = places.get(mention.role)
                if place is not None and place.dimensions:
                    yield from _wrong(mention, place.dimensions, scope)


def _wrong(mention: Mention, dimensions: frozenset[Dimension], scope: Scope) -> Iterator[Fault]:
    value = _value(mention.name, scope)
    quantity = value.specification.value if value is not None else None
    if value is None or quantity is None or quantity.dimension in dimensions:
        return
    wanted = joined([f"a {one.value}" for one in Dimension if one in dimensions], "or")
    fitting = [name for name in scope.things if _dimension(name, scope) in dimensions]
    yield Fault(
        f'"{mention.name}" is a {quantity.dimension.value}, but "{mention.keys[0]}" takes {wanted}.',
        mention.span,
        did_you_mean(mention.name, fitting[:_MOST_COMPARED]) or f"Name a value that is {wanted}.",
        (Related(value.specification.where.of("value"), f'"{mention.name}" is stated here'),),
    )


def _value(name: str, scope: Scope) -> Value | None:
    named = scope.things.get(name)
    return named.thing if named is not None and isinstance(named.thing, Value) else None


def _dimension(name: str, scope: Scope) -> Dimension | None:
    value = _value(name, scope)
    quantity = value.specification.value if value is not None else None
    return quantity.dimension if quantity is not None else None
