"""Somebody is to be told of a modification, and no step tells them.

The next technician looks for the cap that is gone, and the customer blocks the end of a hose that is new.
For each of those whom a modification lists under `tell`, a step of the job tells them: of the modification, or of
a thing that it adds or leaves out.

Wrong:

```yaml procedure
modifications:
  waxed-box:
    name: waxed drop box
    as-found: The drop box was bare.
    as-left: The drop box is waxed.
    tell: [customer, next-technician]   #! modification-untold
sections:
  - title: Tell
    steps:
      - step: Tell the customer of the [waxed-box].
        do:
          - tell: {what: waxed-box, who: customer}
```

Right:

```yaml procedure
modifications:
  waxed-box:
    name: waxed drop box
    as-found: The drop box was bare.
    as-left: The drop box is waxed.
    tell: [customer, next-technician]
sections:
  - title: Tell
    steps:
      - step: Tell the customer and the next technician of the [waxed-box].
        do:
          - tell: {what: waxed-box, who: customer}
          - tell: {what: waxed-box, who: next-technician}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.course import acts
from authoring.model.lacking import without
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("N1",)
ABOUT = ("modification",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each hearer of a modification whom the steps do not tell, for some machine that it is for."""
    vehicle = library.scope(procedure).vehicle
    if vehicle is None or not procedure.modifications:
        return
    telling = [act for act in acts(procedure, library) if act.action.kind.name == "tell"]
    for change in procedure.modifications.values():
        names = {change.id, *change.adds, *change.leaves_out, *change.replaces, *change.replaces.values()}
        for place, hearer in enumerate(change.tell):
            told = [
                act.when
                for act in telling
                if act.action.details.get("who") == hearer and not names.isdisjoint(act.action.what)
            ]
            missing = without(vehicle, procedure.covers, [change.when], told)
            if missing is not None:
                who = hearer.replace("-", " ")
                yield Fault(
                    f'No step tells the {who} of the modification "{change.id}"{missing.whom}.',
                    change.where.of("tell", place),
                    f"Add a step with tell: {{what: {change.id}, who: {hearer}}}.",
                    fitments=missing.fitments,
                )
