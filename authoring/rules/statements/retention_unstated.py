"""Nobody knows how long filled-in booklets are kept.

A filled-in booklet is the only proof of what was done, measured and signed on a machine.
Without a rule one is thrown away in the week in which it is asked for, and others are kept for ever.
The shop file says under `retention` how long, and where (ISO 9001:2015, 7.5, asks for retention to be settled).

Wrong:

```yaml shop without retention
shop: Fennel Lane Plant Workshop   #! retention-unstated
```

Right:

```yaml shop
shop: Fennel Lane Plant Workshop
retention: In the folder of the machine, until it is sold.
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.rules.rule import Fault

SEVERITY = Severity.WARNING
REQUIREMENTS = ("C6",)


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield one fault for a shop that does not say how long filled-in booklets are kept."""
    if library.shop is not None and library.shop.retention is None:
        yield Fault(
            "The shop does not say how long filled-in booklets are kept.",
            library.shop.where.of("shop"),
            'Add "retention: " with how long they are kept, and where.',
        )
