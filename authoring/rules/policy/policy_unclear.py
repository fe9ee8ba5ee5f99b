"""A policy names no situation, demands nothing, or places a message that does not fit.

A demand that can never be met, or is met by everything, protects nobody.
A policy says which situation it means: a kind of hazard, or from which fact of a thing on, or while something runs or
is up.
It demands a message of a kind of hazard, something to wear, a hold point or persons.
The message that it has placed is a message of the shop, of that kind of hazard, and states what the policy demands.

Wrong:

```yaml shop
hazards:
  hot:
    name: hot surface
    emergency: [Hold the burn under cool running water.]
  turning:
    name: turning parts
    emergency: [Stop the engine.]
safety:
  hot-pipe:
    harm: person
    severity: minor
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Keep your arm clear of the pipe.
    of: hot
  turning-shafts:
    harm: person
    severity: serious
    likelihood: could
    hazard: The shafts turn.
    consequence: They catch a sleeve.
    avoidance: Button your sleeves.
    of: turning
policy:
  always:   #! policy-unclear
    wear: [gauntlets]
    why: Gauntlets are good.
  heavy:   #! policy-unclear
    heavier-than: 20 kg
    why: Heavy things are heavy.
  loud:
    heavier-than: 20 kg
    persons: 2
    severity: serious   #! policy-unclear
    why: Heavy things are heavy.
  shafts:   #! policy-unused
    hazard: turning
    message: hot-pipe   #! policy-unclear
    why: A shaft catches a sleeve.
  burns:   #! policy-unused
    hazard: hot
    severity: serious
    message: hot-pipe   #! policy-unclear
    why: A burn of the hand costs a week of work.
```

```yaml equipment
items:
  drop-box: {name: drop box}
  exhaust-pipe: {name: pipe, hazards: [hot, turning]}
  lid:
    name: lid
    mass: {value: 21 kg, source: plate, at: line 8}
```

```yaml procedure
persons: 2
hazards: none
sections:
  - title: Wipe
    steps:
      - step: Wipe the [lid] dry with a [rag].
        with: [rag, gauntlets]
        do:
          - clean: lid
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
    avoidance: Keep your arm clear of the pipe.
    of: hot
policy:
  hot-by-hand:
    hazard: hot
    severity: serious
    message: hot-pipe
    why: A burn of the hand costs a week of work.
```

```yaml equipment
items:
  drop-box: {name: drop box}
  exhaust-pipe: {name: pipe, hazards: [hot]}
```

```yaml procedure
hazards: none
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        with: [rag]
        near: [exhaust-pipe]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity, Span
from authoring.model.library import Library
from authoring.model.policy import Policy
from authoring.model.policy_defaults import DEFAULTS
from authoring.model.signal_word import LIKELIHOODS, SEVERITIES
from authoring.model.stated import stated
from authoring.model.things import Message, Shop
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("S1", "S7")
ABOUT = ("shop-policy",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each policy of the shop that is met by all, demands nothing or places what does not fit."""
    if library.shop is None:
        return
    for policy in library.shop.policy.values():
        yield from _meaningless(policy)
        if policy.message is not None and policy.message in library.shop.safety:
            yield from _unfit(policy, library.shop.safety[policy.message], library.shop)


def _meaningless(policy: Policy) -> Iterator[Fault]:
    default = DEFAULTS.get(policy.id)
    if policy.where is None or default is not None:
        return  # a default has a situation and a demand already, and what is changed of it is asked elsewhere
    if policy.hazard is None and not policy.bounds and policy.only_while is None:
        yield Fault(
            f'The policy "{policy.id}" names no situation, so every step would meet it.',
            policy.where.key(),
            'Add "hazard", a bound such as "heavier-than", or "only-while".',
        )
    if not (policy.hazard or policy.wear or policy.hold or policy.persons):
        yield Fault(
            f'The policy "{policy.id}" demands nothing.',
            policy.where.key(),
            'Add "hazard", so that a message of that kind is demanded, or "wear", "hold" or "persons".',
        )
    elif policy.hazard is None:
        for key in ("severity", "likelihood", "message"):
            if stated(policy.where, key):
                yield Fault(
                    f'The policy "{policy.id}" speaks of a message, but not of which kind of hazard it is.',
                    policy.where.of(key),
                    f'Add "hazard" with a kind of the register, or leave "{key}" out.',
                )


def _unfit(policy: Policy, message: Message, shop: Shop) -> Iterator[Fault]:
    if policy.where is None:
        return
    at = policy.where.of("message")
    if policy.hazard is not None and message.of != policy.hazard:
        yield _fault(policy, message, f'is not of the hazard "{policy.hazard}"', at)
    elif policy.hazard is None and policy.id in DEFAULTS and not _of_default(message, DEFAULTS[policy.id], shop):
        yield _fault(policy, message, f"is not of {DEFAULTS[policy.id].sort or 'a kind that it asks for'}", at)
    elif _less(message.severity, policy.severity, SEVERITIES) or _less(
        message.likelihood, policy.likelihood, LIKELIHOODS
    ):
        yield _fault(policy, message, "says less than it demands", at)


def _of_default(message: Message, default: Policy, shop: Shop) -> bool:
    kinds = {one.of for one in shop.safety.values() if one.sign == default.sign}
    return bool(default.sort) and (message.sign == default.sign or (message.of is not None and message.of in kinds))


def _less(stated: str, asked: str | None, order: tuple[str, ...]) -> bool:
    return asked is not None and order.index(stated) > order.index(asked)


def _fault(policy: Policy, message: Message, what: str, at: Span) -> Fault:
    return Fault(
        f'The policy "{policy.id}" places the message "{message.id}", which {what}.',
        at,
        "Name a message that fits, or change what the message states.",
    )
