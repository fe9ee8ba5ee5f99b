"""A name stands for nothing.

A step that calls a thing by a name nobody knows cannot be followed, and whatever hangs on the name
(a torque, a tool, a caution) silently falls away.
This covers names in brackets, in actions, in lists of tools, safety messages and figures, the procedure's equipment,
the names in `covers` and `on` of an equipment file, and those in the shop's policy.

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
  sender: {name: sender}
  belly-pan: {name: belly pan, covers: [sender]}
```
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from functools import lru_cache

from authoring.diagnostics.diagnostic import Severity, Span
from authoring.diagnostics.nearest import one_slip
from authoring.diagnostics.words import joined
from authoring.model.action_kind import Kind
from authoring.model.library import Library, of_equipment, of_stock
from authoring.model.mentions import Mention, of_policies
from authoring.model.mentions import of_equipment as mentions_of_equipment
from authoring.model.procedure import Procedure
from authoring.model.things import Equipment
from authoring.rules.rule import Fault, Together

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A6", "R1")
TOGETHER = Together.ANY

# Comparing spellings is slow; where so many names are wrong at once, no nearest one would be the cure.
_MOST_COMPARED = 50
_IN_STOCK = frozenset({Kind.PART, Kind.TOOL, Kind.CONSUMABLE})


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each mention of a name that stands for nothing; one in a shared message is told once."""
    if library.partial:
        return  # the name may well stand in the file that could not be read
    yield from _in_policies(library)
    for equipment in library.equipment.values():
        yield from _in_equipment(equipment, library)
    told: set[Span] = set()
    for procedure in library.procedures.values():
        for fault in _in_procedure(procedure, library):
            if fault.span not in told:
                told.add(fault.span)
                yield fault


def _in_equipment(equipment: Equipment, library: Library) -> Iterator[Fault]:
    machine = {named.id: named.kind for named in of_equipment(equipment)}
    stock = {named.id: named.kind for named in of_stock(library.stock)} if library.stock is not None else {}
    for mention in mentions_of_equipment(equipment):
        known = machine if mention.kinds.isdisjoint(_IN_STOCK) else stock
        if mention.wants == "hazard":
            yield from _hazard(mention, library)
        elif known.get(mention.name) not in mention.kinds:
            fitting = [name for name, kind in known.items() if kind in mention.kinds]
            wanted = joined([kind.value.partition(" ")[2] for kind in Kind if kind in mention.kinds], "or")
            yield _unknown(wanted, mention.name, fitting, mention.span)


def _in_policies(library: Library) -> Iterator[Fault]:
    """Yield a fault for each name in the shop's policy that stands for nothing in the shop or its stock."""
    if library.shop is None:
        return
    known = {named.id: named.kind for named in of_stock(library.stock)} if library.stock is not None else {}
    for mention in of_policies(library.shop):
        if mention.wants == "hazard":
            yield from _hazard(mention, library)
        elif mention.wants == "message" and mention.name not in library.shop.safety:
            yield _unknown("safety message", mention.name, library.shop.safety, mention.span)
        elif mention.wants == "thing" and known.get(mention.name) not in mention.kinds:
            fitting = [name for name, kind in known.items() if kind in mention.kinds]
            yield _unknown("tool or consumable", mention.name, fitting, mention.span)


def _hazard(mention: Mention, library: Library) -> Iterator[Fault]:
    known = library.shop.hazards if library.shop is not None else {}
    if mention.name not in known:
        yield _unknown("kind of hazard", mention.name, known, mention.span)


def _in_procedure(procedure: Procedure, library: Library) -> Iterator[Fault]:
    if procedure.equipment not in library.equipment:
        yield _unknown("equipment", procedure.equipment, library.equipment, procedure.where.of("equipment"))
        return  # every name of that equipment would be told as well
    scope = library.scope(procedure)
    offered = [name for name in scope.things if "." not in name]  # an id with a dot is not the author's
    compared: set[str] = set()
    for mention in scope.mentions:
        if mention.wants == "hazard":
            yield from _hazard(mention, library)
            continue
        if mention.role == "state":
            continue  # what is no state is told by its own rule
        message = mention.wants == "message"
        if mention.name in (scope.safety if message else scope.things):
            continue
        compared.add(mention.name)
        known = scope.safety if message else offered
        sort = "safety message" if message else "thing"
        yield _unknown(sort, mention.name, known if len(compared) <= _MOST_COMPARED else (), mention.span)


def _unknown(sort: str, name: str, known: Collection[str], span: Span) -> Fault:
    cure = (
        _nearest(name, tuple(known)) or f"Write the name of {_one(sort)} that is stated, or state it under this name."
    )
    return Fault(f'No {sort} is called "{name}".', span, cure)


# A name that was changed in one place is unknown in many.
_nearest = lru_cache(maxsize=64)(one_slip)


def _one(sort: str) -> str:
    return f"an {sort}" if sort[0] in "aeiou" else f"a {sort}"
