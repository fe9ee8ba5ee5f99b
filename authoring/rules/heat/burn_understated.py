"""A surface burns at a touch, and what is said of it is less, or nothing.

The equipment file says how hot an item gets, what its surface is and how long a hand may rest on it.
From where burns begin (DIN EN 563, the forerunner of ISO 13732-1) it follows what a touch does at least:
skin that is burnt is a moderate injury or worse, never a minor one and never damage to the machine alone.
So the item has a kind of hazard, and the message that is called for it says no less.

Wrong:

```yaml shop
hazards:
  hot:
    name: hot surface
    emergency: [Hold the burn under cool running water.]
safety:
  warm-pipe:
    harm: person
    severity: minor   #! burn-understated
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It reddens the skin.
    avoidance: Keep your arm clear of the pipe.
    of: hot
```

```yaml equipment
items:
  drop-box: {name: drop box}
  exhaust-pipe:
    name: exhaust pipe
    hazards: [hot]
    hot: {value: at most 300 °C, source: plate, at: line 9, surface: bare-metal}
```

```yaml procedure
hazards: none
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        safety: [warm-pipe]
        near: [exhaust-pipe]
        with: [rag]
        do:
          - clean: drop-box
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
  drop-box: {name: drop box}
  exhaust-pipe:
    name: exhaust pipe
    hazards: [hot]
    hot: {value: at most 300 °C, source: plate, at: line 9, surface: bare-metal}
```

```yaml procedure
hazards: none
sections:
  - title: Wipe
    steps:
      - step: Wipe the [drop-box] dry with a [rag].
        safety: [hot-pipe]
        near: [exhaust-pipe]
        with: [rag, gauntlets]
        do:
          - clean: drop-box
```
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.cooling import harm_of
from authoring.model.library import Library
from authoring.model.signal_word import SEVERITIES
from authoring.model.things import Item, Message
from authoring.rules.rule import Fault
from authoring.workshop.burns import Touch

SEVERITY = Severity.WARNING
REQUIREMENTS = ("S7",)
ABOUT = ("hot",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each item that burns without a hazard, and for each message that says less than the burn."""
    burning = {
        equipment.id: [
            (item, harm)
            for item in equipment.items.values()
            if item.hot is not None and (harm := harm_of(item.hot)) is not None
        ]
        for equipment in library.equipment.values()
    }
    everything = [one for machine in burning.values() for one in machine]
    for item, _harm in everything:
        if not item.hazards:
            yield Fault(
                f'"{item.id}" burns at a touch, but the list of its hazards is missing.',
                item.where.of("hot"),
                'Add "hazards" with the kind of hazard it is, so that every step beside it must warn of it.',
            )
    yield from _in_messages(library.shop.safety if library.shop is not None else {}, everything)
    for procedure in library.procedures.values():
        yield from _in_messages(procedure.safety, burning.get(procedure.equipment, []))


def _in_messages(messages: Mapping[str, Message], burning: Sequence[tuple[Item, Touch]]) -> Iterator[Fault]:
    """Yield a fault for each message that says less than the burn of something on a machine where it is read."""
    for message in messages.values():
        for item, harm in burning:
            if message.of in item.hazards and _less(message, harm):
                yield _too_weak(message, item, harm)
                break


def _less(message: Message, harm: Touch) -> bool:
    return message.harm != "person" or SEVERITIES.index(message.severity) > SEVERITIES.index(harm.severity)


def _too_weak(message: Message, item: Item, harm: Touch) -> Fault:
    key = "harm" if message.harm != "person" else "severity"
    return Fault(
        f'A touch of "{item.id}" burns the skin, and "{message.id}" says less than that.',
        message.where.of(key),
        f'State "harm: person" and "severity: {harm.severity}", or what is worse.',
        (Related(item.where.of("hot"), "how hot it gets"),),
    )
