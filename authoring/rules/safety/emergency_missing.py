"""Somebody may be badly hurt, and the shop does not say what to do first then.

In the first minute nobody reads a manual or asks around.
The shop file says under `emergency` what comes first whatever has happened: whom to call, and from where.
Where the shop registers hazards, each kind has its own first moves beside it, which a message cites under `of`;
a message that cites none is told for itself.

Wrong:

```yaml shop without emergency
shop: Fennel Lane Plant Workshop   #! emergency-missing
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets] and keep your arm clear of the pipe.
```

Right:

```yaml shop
shop: Fennel Lane Plant Workshop
emergency:
  - Call the first-aider from the telephone at the door.
safety:
  hot-pipe:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust pipe beside the level plug is hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets] and keep your arm clear of the pipe.
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.messages import messages_of
from authoring.model.signal_word import LASTING
from authoring.rules.rule import Fault, Together

SEVERITY = Severity.ERROR
REQUIREMENTS = ("S8",)
TOGETHER = Together.ANY


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield one fault for a shop without `emergency` whose library warns of lasting harm to people."""
    if library.shop is None or library.shop.emergency:
        return
    messages = (written.message for written in messages_of(library))
    grave = next((one for one in messages if one.harm == "person" and one.severity in LASTING), None)
    if grave is not None:
        yield Fault(
            f'The safety message "{grave.id}" warns of {_WORDS[grave.severity]}, '
            "but the shop does not say what to do first when it has happened.",
            library.shop.where.of("shop"),
            'Add "emergency: " to the shop file: whom to call, from where, and what else comes first.',
            (Related(grave.where.span, "the message"),),
        )


_WORDS = {"death": "death", "serious": "serious harm"}
