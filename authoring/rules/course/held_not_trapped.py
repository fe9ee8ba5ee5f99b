"""A thing is held up until another traps it, and that other one is never fitted.

Grease and magnets hold for minutes: what is only held comes down later, inside the machine or on the road.
What stands under `until` of a hold is fitted, connected, closed, started or tightened afterwards,
for the same machines, or the thing that is held is taken off again.

Wrong:

```yaml equipment
items:
  drop-box: {name: drop box}
  washer: {name: washer}
  lid: {name: lid}
```
```yaml procedure
sections:
  - title: Fit the washer
    steps:
      - step: Fit the [lid].
        do:
          - fit: lid
      - step: Stick the [washer] to the drop box.
        do:
          - hold: {what: washer, until: lid}   #! held-not-trapped
```

Right:

```yaml equipment
items:
  drop-box: {name: drop box}
  washer: {name: washer}
  lid: {name: lid}
```
```yaml procedure
sections:
  - title: Fit the washer
    steps:
      - step: Stick the [washer] to the drop box.
        do:
          - hold: {what: washer, until: lid}
      - step: Fit the [lid].
        do:
          - fit: lid
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.course import Act, acts
from authoring.model.lacking import without
from authoring.model.library import Library, Scope
from authoring.model.procedure import Choice, Procedure
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("N1", "N5")
ABOUT = ("held",)

_TRAPS = frozenset({"fit", "seat", "connect", "close", "start", "tighten"})
_TAKES_OFF = frozenset({"remove", "disconnect", "discard"})


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each hold after which some machine never gets what traps the thing."""
    scope = library.scope(procedure)
    if scope.vehicle is None:
        return
    course = acts(procedure, library)
    for place, act in enumerate(course):
        until = act.action.roles.get("until") if act.own and act.action.kind.name == "hold" else None
        if until is None or until not in scope.things:
            continue  # an unknown name is told elsewhere
        rest = [later.when for later in course[place + 1 :] if _ends(later, act, until, scope)]
        left = without(scope.vehicle, procedure.covers, [act.when], rest)
        if left is not None:
            yield Fault(
                f'"{until}" is to trap what is held here, and is never fitted afterwards{left.whom}.',
                act.action.where.of("until"),
                f'Fit "{until}" in a later step, or name under "until" what does trap it.',
                fitments=left.fitments,
            )


def _ends(later: Act, act: Act, until: str, scope: Scope) -> bool:
    name = later.action.kind.name
    if name in _TAKES_OFF:
        return not set(act.action.what).isdisjoint(later.action.what)
    return name in _TRAPS and not _meant(until, scope).isdisjoint(
        one for what in later.action.what for one in _meant(what, scope)
    )


def _meant(name: str, scope: Scope) -> set[str]:
    """Return a name and, for a choice, the names of its parts."""
    named = scope.things.get(name)
    parts = named.thing.parts if named is not None and isinstance(named.thing, Choice) else ()
    return {name, *(one for part in parts for one in (part.part, *part.equal))}
