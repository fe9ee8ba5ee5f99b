"""A name stands for nothing.

A step that calls a thing by a name nobody knows cannot be followed, and whatever hangs on the name
(a torque, a tool, a caution) silently falls away.
This covers names in brackets, in actions, in lists of tools, safety messages and figures, the procedure's equipment,
and the names in `covers` and `on` of an equipment file.

Wrong:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Remove the [levle-plug].   #! unknown-name
        do:
          - remove: levle-plug   #! unknown-name
```

An equipment file names its own things as well.

```yaml equipment
items:
  drop-box: {name: drop box}
  belly-pan: {name: belly pan, covers: [drain-plug]}   #! unknown-name
```

Right:

```yaml procedure
sections:
  - title: Work
    steps:
      - step: Remove the [level-plug].
        do:
          - remove: level-plug
```

```yaml equipment
items:
  drop-box: {name: drop box}
  belly-pan: {name: belly pan, covers: [level-plug]}
```
"""

from __future__ import annotations

from collections.abc import Collection, Iterator

from authoring.diagnostics.diagnostic import Severity, Span
from authoring.diagnostics.nearest import did_you_mean
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A6", "R1")


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each mention of a name that stands for nothing; one in a shared message is told once."""
    if library.partial:
        return  # the name may well stand in the file that could not be read
    for equipment in library.equipment.values():
        yield from _in_equipment(equipment)
    told: set[Span] = set()
    for procedure in library.procedures.values():
        for fault in _in_procedure(procedure, library):
            if fault.span not in told:
                told.add(fault.span)
                yield fault


def _in_equipment(equipment: Equipment) -> Iterator[Fault]:
    known = {*equipment.items, *equipment.fasteners}
    for item in equipment.items.values():
        for place, name in enumerate(item.covers):
            if name not in known:
                yield _unknown("item or fastener group", name, known, item.where.of("covers", place))
    for group in equipment.fasteners.values():
        if group.on is not None and group.on not in equipment.items:
            yield _unknown("item", group.on, equipment.items, group.where.of("on"))


def _in_procedure(procedure: Procedure, library: Library) -> Iterator[Fault]:
    if procedure.equipment not in library.equipment:
        yield _unknown("equipment", procedure.equipment, library.equipment, procedure.where.of("equipment"))
        return  # every name of that equipment would be told as well
    scope = library.scope(procedure)
    for mention in scope.mentions:
        if mention.wants == "message":
            if mention.name not in scope.safety:
                yield _unknown("safety message", mention.name, scope.safety, mention.span)
        elif mention.name not in scope.things:
            yield _unknown("thing", mention.name, scope.things, mention.span)


def _unknown(sort: str, name: str, known: Collection[str], span: Span) -> Fault:
    cure = did_you_mean(name, known) or f"Write the name of {_one(sort)} that is stated, or state it under this name."
    return Fault(f"No {sort} is called “{name}”.", span, cure)


def _one(sort: str) -> str:
    return f"an {sort}" if sort[0] in "aeiou" else f"a {sort}"
