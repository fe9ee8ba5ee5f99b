"""A message about damage is stated like one about an injury.

Death and serious harm happen to people.
Stated for equipment or the environment they hide who is hurt, and the word on the page comes out too weak:
NOTICE where it should be WARNING.
A sign that shows a person (crushing, slipping, eye protection, gloves) does not belong to damage alone either.

Wrong:

```yaml shop
safety:
  hot-pipe:
    harm: equipment
    severity: death   #! harm-and-severity
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It melts the loom.
    avoidance: Keep the loom clear of the pipe.
```

A sign for people on damage alone.

```yaml shop
safety:
  hot-pipe:
    harm: equipment
    severity: moderate
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It melts the loom.
    avoidance: Keep the loom clear of the pipe.
    sign: gloves   #! harm-and-severity
```

Right:

```yaml shop
safety:
  hot-pipe:
    harm: equipment
    severity: moderate
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It melts the loom.
    avoidance: Keep the loom clear of the pipe.
    sign: hot-surface
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.messages import messages_of
from authoring.model.signal_word import LASTING
from authoring.model.things import Message
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("S1",)

_OF_PEOPLE = frozenset({"crushing", "slipping", "eye-protection", "gloves"})
_HARMED = {"equipment": "the equipment", "environment": "the environment"}


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each message whose harm and severity, or harm and sign, contradict each other."""
    for written in messages_of(library):
        message = written.message
        if message.harm in _HARMED:
            yield from _of_damage(message)


def _of_damage(message: Message) -> Iterator[Fault]:
    related = (Related(message.where.of("harm"), "what comes to harm"),)
    harmed = _HARMED[message.harm]
    if message.severity in LASTING:
        yield Fault(
            f'The severity "{message.severity}" is for people, but this message says that {harmed} comes to harm.',
            message.where.of("severity"),
            'If somebody can be hurt, write "harm: person"; for damage alone, write moderate or minor.',
            related,
        )
    elif message.sign in _OF_PEOPLE:
        yield Fault(
            f'The sign "{message.sign}" is about people, but this message says that {harmed} comes to harm.',
            message.where.of("sign"),
            'If somebody can be hurt, write "harm: person"; for damage alone, use another sign or leave it out.',
            related,
        )
