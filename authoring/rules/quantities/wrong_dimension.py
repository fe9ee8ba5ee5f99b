"""A value measures something else than its place takes.

An amount to pour is a volume and the time to wait is a time; a temperature there is a slip of the name,
and the reader would pour by the wrong number.
So are a deadline that is no time, a distance to stay clear by that is no length, a force that is none, and a state
that no thing can be in, such as an amount of time.
All windows of one value measure the same thing.

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

from collections.abc import Iterator, Mapping

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.diagnostics.nearest import did_you_mean
from authoring.diagnostics.words import joined, quoted
from authoring.model.action_kind import Kind
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

# What a value may measure at the keys that are not an action's own.
_AT_KEYS = {
    "by": frozenset({Dimension.LENGTH}),
    "force": frozenset({Dimension.FORCE, Dimension.TORQUE, Dimension.PRESSURE}),
    "within": frozenset({Dimension.TIME}),
}
# A thing can be so warm, so full, so far open or under such a load; it cannot be in a time, a torque or a number.
_OF_A_STATE = frozenset(Dimension) - {Dimension.TIME, Dimension.TORQUE, Dimension.COUNT}
_VALUE = frozenset({Kind.VALUE})


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each value whose windows, or whose place, ask for another dimension."""
    for equipment in library.equipment.values():
        yield from _windows(equipment.values)
    for procedure in library.procedures.values():
        yield from _windows(procedure.values)
        if procedure.equipment in library.equipment:
            yield from _in_procedure(procedure, library.scope(procedure))


def _windows(values: Mapping[str, Value]) -> Iterator[Fault]:
    for value in values.values():
        read = [(window.where, window.specification.value) for window in value.windows]
        known = [(where, quantity) for where, quantity in read if quantity is not None]
        for where, quantity in known[1:]:
            if quantity.dimension is not known[0][1].dimension:
                yield Fault(
                    f'One window of "{value.id}" is a {known[0][1].dimension.value}, this one a '
                    f"{quantity.dimension.value}.",
                    where.of("value"),
                    "Let all windows of a value measure the same thing.",
                    (Related(known[0][0].of("value"), "the other window"),),
                )


def _in_procedure(procedure: Procedure, scope: Scope) -> Iterator[Fault]:
    for mention in scope.mentions:
        if mention.role == "state":
            yield from _wrong(mention, f'the state of "{mention.keys[0]}"', _OF_A_STATE, scope)
        elif mention.role in _AT_KEYS and mention.kinds == _VALUE:
            yield from _wrong(mention, quoted(mention.role), _AT_KEYS[mention.role], scope)
    for _, step in procedure.steps():
        for action in step.actions:
            places = {"what": action.kind.what, **action.kind.roles}
            for mention in touched(action):
                place = places.get(mention.role)
                if place is not None and place.dimensions:
                    yield from _wrong(mention, f'"{mention.keys[0]}"', place.dimensions, scope)


def _wrong(mention: Mention, place: str, dimensions: frozenset[Dimension], scope: Scope) -> Iterator[Fault]:
    value = _value(mention.name, scope)
    quantity = value.specification.value if value is not None else None
    if value is None or quantity is None or quantity.dimension in dimensions:
        return
    wanted = joined([f"a {one.value}" for one in Dimension if one in dimensions], "or")
    fitting = [name for name in scope.things if _dimension(name, scope) in dimensions]
    yield Fault(
        f'"{mention.name}" is a {quantity.dimension.value}, but {place} takes {wanted}.',
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
