"""Two parts of the stock have the same number.

The stores hand out by the number, and for one of the two they hand out the other.
A small ring under a large plug drips.
Capitals, spaces and hyphens make no difference; a number without a digit, such as "none", is none.

Wrong:

```yaml stock
parts:
  plug-ring: {name: M18 sealing ring, number: FL-P-018, one-time: true}
  drain-ring: {name: M22 sealing ring, number: FL-P-018, one-time: true}   #! number-twice
```

Right:

```yaml stock
parts:
  plug-ring: {name: M18 sealing ring, number: FL-P-018, one-time: true}
  drain-ring: {name: M22 sealing ring, number: FL-P-022, one-time: true}
```
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.library import Library
from authoring.model.things import Part
from authoring.rules.rule import Fault

SEVERITY = Severity.ERROR
REQUIREMENTS = ("A6", "P3")


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each part whose number an earlier part of the stock has already."""
    first: dict[str, Part] = {}
    for part in library.stock.parts.values() if library.stock is not None else ():
        number = "".join(part.number.casefold().replace("-", "").split())
        if not any(sign.isdecimal() for sign in number):
            continue
        other = first.setdefault(number, part)
        if other is not part:
            yield Fault(
                f'"{part.id}" has the number {part.number}, and so has "{other.id}".',
                part.where.of("number"),
                "Read both numbers again. Where it is one part, keep one of the two entries.",
                (Related(other.where.of("number"), "the same number"),),
            )
