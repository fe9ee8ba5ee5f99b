"""A question about fitments has more answers than are tried.

Each part choice and condition is proved for every combination of the features it names.
Beyond 4096 combinations that takes too long, so nothing is claimed about it, and this says so.
Twelve features of two values make as many; a choice that depends on more is better asked in two.

Wrong:

```yaml equipment
features:
  brake: {name: parking brake, tell: Look behind the rear wheel., values: {drum: drum brake, disc: disc brake}}
  batch: {name: batch, tell: Read the plate., values: {a: A, b: B, c: C, d: D, e: E, f: F, g: G, h: H}}
  axle: {name: axle, tell: Read the plate., values: {a: A, b: B, c: C, d: D, e: E, f: F, g: G, h: H}}
  tyre: {name: tyre, tell: Read its side., values: {a: A, b: B, c: C, d: D, e: E, f: F, g: G, h: H}}
  seat: {name: seat, tell: Look below it., values: {a: A, b: B, c: C, d: D, e: E, f: F, g: G, h: H}}
```

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015}
```

```yaml procedure
choices:
  ring:   #! too-many-fitments
    name: ring of the plug
    question: Which machine is it?
    parts:
      - part: plug-ring
        when: {brake: drum, batch: a, axle: a, tyre: a, seat: a}
        tell: It is narrow.
      - part: wide-ring
        when: {brake: disc}
        tell: It is wide.
```

Right:

```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        when: {brake: disc}
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.applicability import known, of_equipment, of_procedure
from authoring.model.choosing import features_of
from authoring.model.fitments import LIMIT, together, too_many
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1", "V4")
ABOUT = ("condition",)

_CURE = "Ask for fewer features at once, or cover fewer values."


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each choice and condition about which nothing can be proved."""
    for equipment in library.equipment.values():
        for one in of_equipment(equipment):
            if one.keys[0] == "when" and known(one.when, equipment) and too_many(equipment, one.when, one.when):
                yield Fault(_message("This condition"), one.span, _CURE)
    for procedure in library.procedures.values():
        vehicle = library.scope(procedure).vehicle
        if vehicle is not None:
            yield from _in_procedure(procedure, vehicle)


def _in_procedure(procedure: Procedure, equipment: Equipment) -> Iterator[Fault]:
    for choice in procedure.choices.values():
        if too_many(equipment, procedure.covers, features_of(procedure, choice)):
            yield Fault(_message(f'The choice "{choice.id}"'), choice.where.span, _CURE)
    for one in of_procedure(procedure):
        whole = together(procedure.covers, one.around, one.when)
        if too_many(equipment, whole, whole):
            yield Fault(_message("This condition"), one.span, _CURE)


def _message(subject: str) -> str:
    return f"{subject} depends on more than {LIMIT} combinations of features, so it cannot be proved."
