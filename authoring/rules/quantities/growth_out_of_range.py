"""No oil has the expansion or the density that is stated for a fluid.

How far a level moves with warmth is worked out from it, and a coefficient in per cent instead of a share makes that a
hundred times too much.
`expansion` is a share for each kelvin, and mineral oils have about 0.0007; `density` is that of a petroleum oil at
15 °C, for which alone the formula behind it was made.

Wrong:

```yaml equipment
fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil of our grade 2
    expansion: {value: "0.07", source: plate, at: line 7}   #! growth-out-of-range
```

Right:

```yaml equipment
fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil of our grade 2
    expansion: {value: "0.0007", source: plate, at: line 7}
```
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from authoring.diagnostics.diagnostic import Severity
from authoring.model.library import Library
from authoring.model.specification import Specification
from authoring.model.things import Equipment
from authoring.rules.rule import Fault
from authoring.workshop.expansion import volume_at
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import interval_of
from authoring.workshop.oil_density import expansion_of_oil

SEVERITY = Severity.WARNING
REQUIREMENTS = ("N13",)
ABOUT = ("growth",)

_ROOM = Fraction(29_315, 100)
_COLD = Fraction(22_315, 100)
"""20 °C and -50 °C: no oil shrinks to nothing between them."""


def check(equipment: Equipment, _: Library) -> Iterator[Fault]:
    """Yield a fault for each expansion and density with which nothing can be worked out."""
    for fluid in equipment.fluids.values():
        for end in _ends(fluid.density):
            yield from _fault(expansion_of_oil(end), fluid.density)
        for end in _ends(fluid.expansion):
            yield from _fault(volume_at(_COLD, Fraction(1), _ROOM, end), fluid.expansion)


def _ends(stated: Specification | None) -> list[Fraction]:
    """Return the limits that are stated, each once."""
    quantity = stated.value if stated is not None else None
    if quantity is None:
        return []
    span = interval_of(quantity)
    return list(dict.fromkeys(end for end in (span.low, span.high) if end is not None))


def _fault(worked_out: Fraction | Impossible, stated: Specification | None) -> Iterator[Fault]:
    if isinstance(worked_out, Impossible) and stated is not None:
        yield Fault(worked_out.reason, stated.where.of("value"), worked_out.cure)
