"""A step touches or comes near a danger that the procedure does not warn of.

The equipment file says which hazards a thing has: it is hot, it turns, it comes down.
A procedure that touches it, or names it under `near`, calls a safety message of that kind: at the step,
at its section, or for the whole job.
A message at an earlier or a later step is not read before this one.
Where the shop's policy demands the message, that is told instead (`policy-unmet`).
A hazard that is there `only-while` something runs asks for none while all stands.
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

from collections.abc import Iterable, Iterator, Mapping

from msgspec import Struct

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.fitments import together
from authoring.model.in_force import in_force, told_by_policy
from authoring.model.lacking import without
from authoring.model.library import Library, Scope
from authoring.model.mentions import Mention, of_step, touched
from authoring.model.procedure import Procedure, Step
from authoring.model.running import going
from authoring.model.specification import When
from authoring.model.things import Hazard, Item, Message
from authoring.rules.rule import Fault

# A thing may be harmless in this job, such as a pipe that has cooled; the author says so with a reason.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("S7", "N9")
ABOUT = ("danger",)


class _Touch(Struct, frozen=True, eq=False):
    """One mention of a dangerous item in an action or under `near`, for which fitments, and what is said there.

    `said` gives, for each kind of hazard, for which fitments a message of it is in force at the step.
    """

    item: Item
    mention: Mention
    step: Step
    when: When
    said: Mapping[str, list[When]]


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each item and hazard of which some machine is not warned at the step that touches it."""
    scope = library.scope(procedure)
    registered = library.shop.hazards if library.shop is not None else {}
    told: set[tuple[str, str]] = set()
    elsewhere = told_by_policy(procedure, library)
    moving = {one.step for one in going(procedure.steps(), procedure.needs) if one.may_run}
    for touch in _touches(procedure, library):
        for name in touch.item.hazards:
            hazard = registered.get(name)  # any other is an unknown name
            if hazard is None or (touch.item.id, name) in told or (touch.step.id, touch.item.id, name) in elsewhere:
                continue
            if hazard.only_while is None or touch.step in moving:
                faults = list(_unsaid(hazard, touch, scope))
                told |= {(touch.item.id, name) for _ in faults}
                yield from faults


def _touches(procedure: Procedure, library: Library) -> Iterator[_Touch]:
    scope = library.scope(procedure)
    for section, step in procedure.steps():
        met = [mention for action in step.actions for mention in touched(action)]
        if step.near:
            met += [mention for mention in of_step(step) if mention.role == "near"]
        items = [(mention, _item(mention.name, scope)) for mention in met]
        dangerous = [(mention, item) for mention, item in items if item is not None and item.hazards]
        if dangerous:
            said = _said(in_force(procedure, section, step, library))
            when = together(section.when, step.when)
            yield from (_Touch(item, mention, step, when, said) for mention, item in dangerous)


def _item(name: str, scope: Scope) -> Item | None:
    named = scope.things.get(name)
    return named.thing if named is not None and isinstance(named.thing, Item) else None


def _said(messages: Iterable[Message]) -> Mapping[str, list[When]]:
    """Return, for each kind of hazard, for which fitments a message of it is among these."""
    said: dict[str, list[When]] = {}
    for message in messages:
        if message.of is not None:
            said.setdefault(message.of, []).append(message.when)
    return said


def _unsaid(hazard: Hazard, touch: _Touch, scope: Scope) -> Iterator[Fault]:
    if scope.vehicle is None:
        return
    lack = without(scope.vehicle, scope.procedure.covers, [touch.when], touch.said.get(hazard.id, []))
    if lack is None:
        return
    yield Fault(
        f'"{touch.item.id}" has the hazard "{hazard.id}" ({hazard.name}), '
        f"but no safety message of that kind is called{lack.whom}.",
        touch.mention.span,
        f'List a message with "of: {hazard.id}" under "safety" of the step or its section, or under "hazards".',
        (Related(touch.item.where.of("hazards"), "the hazards that it has"),),
        lack.fitments,
    )
