"""A step touches or comes near a danger that the procedure does not warn of.

The equipment file says which hazards a thing has: it is hot, it turns, it comes down.
A procedure that touches it, or names it under `near`, calls a safety message of that kind: at the step,
at its section, or for the whole job.
The message must be called for every machine for which the thing is touched or near.

Wrong:

```yaml shop
hazards:
  hot:
    name: hot surface
    emergency: [Hold the burn under cool running water.]
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets] and keep your arm clear of the pipe.
    of: hot
```

```yaml equipment
items:
  drop-box: {name: drop box, hazards: [hot]}
```

```yaml procedure
hazards: none
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        with: [rag]
        do:
          - clean: drop-box   #! hazard-unsaid
```

Right:

```yaml shop
hazards:
  hot:
    name: hot surface
    emergency: [Hold the burn under cool running water.]
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets] and keep your arm clear of the pipe.
    of: hot
```

```yaml equipment
items:
  drop-box: {name: drop box, hazards: [hot]}
```

```yaml procedure
hazards: none
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        safety: [hot-pipe]
        with: [rag]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from msgspec import Struct

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.fitments import may_hold, together
from authoring.model.lacking import without
from authoring.model.library import Library, Scope
from authoring.model.mentions import Mention, of_step, touched
from authoring.model.procedure import Procedure
from authoring.model.specification import When
from authoring.model.things import Hazard, Item
from authoring.rules.rule import Fault

# A thing may be harmless in this job, such as a pipe that has cooled; the author says so with a reason.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("S7", "N9")


class _Touch(Struct, frozen=True, eq=False):
    """One mention of a dangerous item in an action or under `near`, and for which fitments."""

    item: Item
    mention: Mention
    when: When


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each item and hazard of which some machine that the item is touched on is not warned."""
    scope = library.scope(procedure)
    registered = library.shop.hazards if library.shop is not None else {}
    touches: dict[tuple[str, str], list[_Touch]] = {}
    for touch in _touches(procedure, scope):
        for hazard in touch.item.hazards:
            touches.setdefault((touch.item.id, hazard), []).append(touch)
    if touches:
        said = _warned(procedure, scope)
        for (_, hazard), mine in touches.items():
            if hazard in registered:  # any other is an unknown name
                yield from _unsaid(registered[hazard], mine, said, scope)


def _touches(procedure: Procedure, scope: Scope) -> Iterator[_Touch]:
    for section, step in procedure.steps():
        when = together(section.when, step.when)
        met = [mention for action in step.actions for mention in touched(action)]
        if step.near:
            met += [mention for mention in of_step(step) if mention.role == "near"]
        for mention in met:
            named = scope.things.get(mention.name)
            if named is not None and isinstance(named.thing, Item) and named.thing.hazards:
                yield _Touch(named.thing, mention, when)


def _warned(procedure: Procedure, scope: Scope) -> Mapping[str, list[When]]:
    """Return, for each kind of hazard, for which fitments a message of it is called."""
    called: list[tuple[str, When]] = [(name, {}) for name in procedure.hazards or ()]
    for section, step in procedure.steps():
        called += [(name, section.when) for name in section.safety]
        called += [(name, together(section.when, step.when)) for name in step.safety]
    said: dict[str, list[When]] = {}
    for name, when in called:
        message = scope.safety.get(name)
        if message is not None and message.of is not None:
            said.setdefault(message.of, []).append(together(message.when, when))
    return said


def _unsaid(hazard: Hazard, touches: Sequence[_Touch], said: Mapping[str, list[When]], scope: Scope) -> Iterator[Fault]:
    if scope.vehicle is None:
        return
    asked = [touch.when for touch in touches]
    lack = without(scope.vehicle, scope.procedure.covers, asked, said.get(hazard.id, []))
    if lack is None:
        return
    first = next(touch for touch in touches if may_hold(touch.when, lack.fewest))
    yield Fault(
        f'"{first.item.id}" has the hazard "{hazard.id}" ({hazard.name}), '
        f"but no safety message of that kind is called{lack.whom}.",
        first.mention.span,
        f'List a message with "of: {hazard.id}" under "safety" of the step or its section, or under "hazards".',
        (Related(first.item.where.of("hazards"), "the hazards that it has"),),
        lack.fitments,
    )
