"""A part that looks like another is fitted, and nobody has checked which one it is.

The wrong one goes in as well, and what it then does shows on the road.
Before a choice with `if-wrong`, or with sizes, is fitted, the part in the hand is measured, inspected or compared, for
every machine for which it is fitted.
The checkpoint names the choice, or one of its parts.

Wrong:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015, one-time: true}
```

```yaml procedure
choices:
  ring:
    name: ring of the plug
    question: How large is the old ring?
    if-wrong: It goes in as well, and leaks when it is warm.
    parts:
      - part: plug-ring
        when: {brake: drum}
        tell: It is narrow.
      - part: wide-ring
        when: {brake: disc}
        tell: It is wide.
sections:
  - title: Fit the ring
    steps:
      - step: Fit the [ring].
        do:
          - fit: ring   #! wrong-part-unchecked
```

Right:

```yaml stock
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015, one-time: true}
```

```yaml procedure
choices:
  ring:
    name: ring of the plug
    question: How large is the old ring?
    if-wrong: It goes in as well, and leaks when it is warm.
    parts:
      - part: plug-ring
        when: {brake: drum}
        tell: It is narrow.
      - part: wide-ring
        when: {brake: disc}
        tell: It is wide.
sections:
  - title: Fit the ring
    steps:
      - step: Look at the lip of the new [ring].
        do:
          - inspect:
              what: ring
              outcomes:
                - {found: It is as the table says., then: go-on}
                - {found: It is another one., then: stop}
      - step: Fit the [ring].
        do:
          - fit: ring
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.course import Act, acts
from authoring.model.lacking import without
from authoring.model.library import Library
from authoring.model.procedure import Choice, Procedure
from authoring.model.specification import When
from authoring.model.things import Equipment
from authoring.rules.rule import Fault

# Steps are taken as they are written, though an outcome may skip or repeat some.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N2",)
ABOUT = ("look-alike",)

_CHECKS = frozenset({"measure", "inspect", "compare"})
_FITS = frozenset({"fit", "seat", "hold"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for the first fitting of each choice that some machine reaches without a check."""
    vehicle = library.scope(procedure).vehicle
    if vehicle is None:
        return
    job = [act for act in acts(procedure, library) if act.own]
    for choice in procedure.choices.values():
        if choice.if_wrong is not None or any(part.sizes or part.stated is not None for part in choice.parts):
            yield from list(_unchecked(choice, job, procedure, vehicle))[:1]


def _unchecked(choice: Choice, job: list[Act], procedure: Procedure, vehicle: Equipment) -> Iterator[Fault]:
    names = {choice.id, *(name for part in choice.parts for name in (part.part, *part.equal))}
    checked: list[When] = []
    for act in job:
        kind = act.action.kind.name
        if kind in _CHECKS and not names.isdisjoint({*act.action.what, *act.action.roles.values()}):
            checked.append(act.when)
        if kind not in _FITS or choice.id not in act.action.what:
            continue
        lack = without(vehicle, procedure.covers, [act.when], checked)
        if lack is not None:
            yield Fault(
                f'"{choice.id}" is fitted here, but nobody has checked before that it is the right one{lack.whom}.',
                act.action.where.span,
                f'Add a step before this one that measures, inspects or compares "{choice.id}".',
                (Related(choice.where.span, "the parts that look alike"),),
                lack.fitments,
            )
