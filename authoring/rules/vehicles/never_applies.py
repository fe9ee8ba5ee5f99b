"""Something is written for machines that the procedure does not cover.

The step, section, part or message stands in the file but no reader ever meets it:
either `covers` or a `when` is wrong, and what the author meant to say is not said.
What counts is all of it together: `covers`, the section's `when` around the step, the step's around an outcome,
what an option or a choice of this job can be, and the combinations that the equipment file says never occur.

Wrong:

```yaml procedure
covers: {brake: [drum]}
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        when: {brake: disc}   #! never-applies
        with: [rag]
        do:
          - clean: drop-box
```

A section and a step in it that exclude each other.

```yaml procedure
sections:
  - title: Wipe
    when: {brake: drum}
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        when: {brake: disc}   #! never-applies
        with: [rag]
        do:
          - clean: drop-box
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

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.applicability import Applicability, known, of_equipment, of_procedure
from authoring.model.concern import concern
from authoring.model.fitments import said, together
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.space import possible
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("V1", "V4")
ABOUT = ("condition",)

_CURE = "Correct the condition, cover such machines, or leave this out."


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each condition that no machine in question can meet."""
    for equipment in library.equipment.values():
        for one in of_equipment(equipment):
            if one.keys[0] == "when" and known(one.when, equipment) and not possible(equipment, one.when):
                message = f"No machine is such as this asks for ({said(one.when, equipment)})."
                related = (Related(equipment.where.key("never"), "the combinations that never occur"),)
                yield Fault(message, one.span, 'Correct the condition, or "never".', related)
    for procedure in library.procedures.values():
        vehicle = library.scope(procedure).vehicle
        if vehicle is not None:
            yield from _in_procedure(procedure, vehicle)


def _in_procedure(procedure: Procedure, equipment: Equipment) -> Iterator[Fault]:
    covers = procedure.covers
    if not known(covers, equipment) or not possible(equipment, covers):
        return  # told at `covers`, once
    for one in of_procedure(procedure):
        if one.keys == ("covers",) or not (known(one.when, equipment) and known(one.around, equipment)):
            continue
        around = together(covers, one.around)
        if possible(equipment, around) and not possible(equipment, together(around, one.when)):
            yield _never(one, procedure, equipment)


def _never(one: Applicability, procedure: Procedure, equipment: Equipment) -> Fault:
    asks = said(one.when, equipment)
    fitments = concern(equipment.features, procedure.covers, (one.around, one.when))
    if one.around and not possible(equipment, together(one.around, one.when)):
        around = said(one.around, equipment)
        message = f"This applies to no machine: it asks for {asks}, and what it stands in for {around}."
        return Fault(message, one.span, _CURE, fitments=fitments)
    related = [Related(procedure.where.of("covers"), "what the procedure covers")] if procedure.covers else []
    if all(together(procedure.covers, one.around, one.when).values()):
        related.append(Related(equipment.where.key("never"), "the combinations that never occur"))
    message = f"No machine that this procedure covers is such as this asks for ({asks})."
    return Fault(message, one.span, _CURE, tuple(related), fitments)
