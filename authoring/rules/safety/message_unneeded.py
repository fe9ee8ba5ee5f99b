"""A safety message warns of a danger that nothing at its step or section has.

Steps move, and their warnings stay behind; whoever reads one in vain trusts the next one less.
A message of a kind of hazard is called where the hands touch something that has this kind, or come `near` it.
It is asked only where some thing of the machine has that kind; what the shop's policy demands is needed as well, and
so is a message of what is there `only-while` something runs, at the step that sets it running.

Wrong:

```yaml shop
hazards:
  hot: {name: hot surface, emergency: [Hold the burn under cool running water.]}
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe is hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets].
    sign: hot-surface
    of: hot
```
```yaml equipment
items:
  drop-box: {name: drop box}
  pipe: {name: exhaust pipe, hazards: [hot]}
```
```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Clean the [pipe].
        safety: [hot-pipe]
        with: [gauntlets]
        do:
          - clean: pipe
      - step: Clean the [drop-box].
        safety: [hot-pipe]   #! message-unneeded
        with: [gauntlets]
        do:
          - clean: drop-box
```

Right:

```yaml shop
hazards:
  hot: {name: hot surface, emergency: [Hold the burn under cool running water.]}
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe is hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets].
    sign: hot-surface
    of: hot
```
```yaml equipment
items:
  drop-box: {name: drop box}
  pipe: {name: exhaust pipe, hazards: [hot]}
```
```yaml procedure
sections:
  - title: Wipe
    steps:
      - step: Clean the [pipe].
        safety: [hot-pipe]
        with: [gauntlets]
        do:
          - clean: pipe
      - step: Clean the [drop-box].
        near: [pipe]
        safety: [hot-pipe]
        with: [gauntlets]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Collection, Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.demanding import demands
from authoring.model.in_force import speaks
from authoring.model.library import Library, Scope
from authoring.model.mentions import of_step
from authoring.model.on_and_off import wholes
from authoring.model.procedure import Procedure, Step
from authoring.model.things import FastenerGroup, Item, Message
from authoring.rules.rule import Fault
from authoring.source.document import Where

# Something that no file speaks of may be dangerous there; the author then says so with a reason.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("N9", "S7")
ABOUT = ("danger",)


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault for each message of a step or section whose kind of hazard nothing there has."""
    scope = library.scope(procedure)
    if scope.equipment is None:
        return
    kinds = {kind for item in scope.equipment.items.values() for kind in item.hazards}
    for section in procedure.sections:
        yield from _unneeded(section.where, section.safety, section.steps, kinds, scope)
        for step in section.steps:
            yield from _unneeded(step.where, step.safety, (step,), kinds, scope)


def _unneeded(
    where: Where,
    called: Collection[str],
    steps: Collection[Step],
    kinds: Collection[str],
    scope: Scope,
) -> Iterator[Fault]:
    messages = [(at, scope.safety[name]) for at, name in enumerate(called) if name in scope.safety]
    messages = [(at, one) for at, one in messages if one.of in kinds]
    if not messages:
        return
    there = {kind for step in steps for item in _items(step, scope) for kind in item.hazards}
    for at, message in messages:
        if message.of not in there and not _moves(message, steps, scope) and not _demanded(message, steps, scope):
            yield Fault(
                f'"{message.id}" warns of the hazard "{message.of}", which nothing that is touched or near here has.',
                where.of("safety", at),
                'Name what is dangerous under "near", or call the message where it is needed.',
            )


def _items(step: Step, scope: Scope) -> Iterator[Item]:
    """Yield the items that a step speaks of in any way, those that fasteners hold, and all they are part of."""
    for mention in of_step(step):
        named = scope.things.get(mention.name)
        thing = named.thing if named is not None else None
        name = thing.on if isinstance(thing, FastenerGroup) and thing.on is not None else mention.name
        for one in wholes(name, scope.things):
            item = scope.things[one].thing if one in scope.things else None
            if isinstance(item, Item):
                yield item


def _moves(message: Message, steps: Collection[Step], scope: Scope) -> bool:
    """Tell whether a step sets something running, and the hazard is there only while something does."""
    shop = scope.library.shop
    hazard = shop.hazards.get(message.of or "") if shop is not None else None
    runs = any(action.kind.runs for step in steps for action in step.actions)
    return runs and hazard is not None and hazard.only_while == "running"


def _demanded(message: Message, steps: Collection[Step], scope: Scope) -> bool:
    found = (one for one in demands(scope.procedure, scope.library) if one.step in steps)
    return any(speaks(one.policy, one.item, message, scope) for one in found)
