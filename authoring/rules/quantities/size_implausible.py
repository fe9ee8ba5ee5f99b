"""A size is stated that no such thing has.

A length in the wrong unit, or with a digit too many, reads like any other, and the bolt is not found, or the wrong one.
Only what is far from anything in a workshop is told:

- the length of metric bolts, but not of plugs: below half their diameter, or above 30 times (ISO 4014, 4017, 4762)
- from a metric bolt to the next one: below 1.4 times their diameter (ISO 4032, 4762)
- the circle, or the places, on which fasteners stand: more than 5 m across (common practice)
- the range of a gauge: fewer than five of its smallest steps (common practice)
- the length of a torque wrench: below 0.1 m, or above 3 m (common practice)
- the capacity for a fluid: below 1 mL, or above 1000 L (common practice)

The tables of those standards run from about 1.3 to 10 times the diameter, and their narrowest heads and nuts are 1.5
times as wide as the thread, so that nearer ones touch; both are from memory, and the bounds leave room around them.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M8 x 1.25
    on: drop-box
    length: 35 in   #! size-implausible
    torque: {value: 22 ± 2 N·m, source: plate, at: line 5}
```

Right:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  lid-bolts:
    name: lid bolts
    count: 4
    thread: M8 x 1.25
    on: drop-box
    length: 35 mm
    torque: {value: 22 ± 2 N·m, source: plate, at: line 5}
```
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction

from authoring.diagnostics.diagnostic import Severity, Span
from authoring.model.fastening import Positions
from authoring.model.fluid import Fluid
from authoring.model.library import Library
from authoring.model.things import FastenerGroup, Tool
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault
from authoring.workshop.interval import Interval, interval_of
from authoring.workshop.metric_thread import metric_thread

SEVERITY = Severity.WARNING
REQUIREMENTS = ("A5", "T1")

_MM = 1000
_SHORTEST, _LONGEST = Fraction(1, 2), Fraction(30)  # times the diameter
_CLOSEST = 1.4  # times the diameter, between the middles of neighbours
_WIDEST = 5  # m
_UNIT_MM = {"mm": 1.0, "in": 25.4}
_FEWEST_STEPS = 5
_WRENCHES = Interval(Fraction(1, 10), Fraction(3))  # m
_CAPACITIES = Interval(Fraction(1, 1_000_000), Fraction(1))  # m³
_CURE = "Read the number and its unit again."


def check(library: Library, _: Library) -> Iterator[Fault]:
    """Yield a fault for each size of fasteners, fluids and tools that lies beyond its bounds."""
    for equipment in library.equipment.values():
        for group in equipment.fasteners.values():
            yield from _length(group)
            yield from _pattern(group)
        for fluid in equipment.fluids.values():
            yield from _capacity(fluid)
    for tool in library.stock.tools.values() if library.stock is not None else ():
        yield from _scale(tool)
        yield from _wrench(tool)


def _length(group: FastenerGroup) -> Iterator[Fault]:
    thread = metric_thread(group.thread)
    if thread is None or group.length is None or group.drains or group.fills:
        return  # the thread of a large plug is short
    usual = Interval(_SHORTEST * thread.diameter_mm / _MM, _LONGEST * thread.diameter_mm / _MM)
    if _beyond(group.length, usual, Dimension.LENGTH):
        bounds = "usual are 0.5 to 30 times its diameter"
        yield _fault(
            f"{group.length.text} is no length for a bolt of {group.thread}; {bounds}.", group.where.of("length")
        )


def _pattern(group: FastenerGroup) -> Iterator[Fault]:
    stated, thread = group.positions, metric_thread(group.thread)
    found = _reach(stated, group.count) if stated is not None else None
    if stated is None or found is None:
        return
    size, apart = found
    where = stated.where.of("places" if stated.places else "circle")
    if size > _WIDEST * _MM:
        yield _fault(f'"{group.id}" would stand {size / _MM:.0f} m apart, which is wider than any part.', where)
    elif thread is not None and 0 < apart < _CLOSEST * float(thread.diameter_mm):
        message = (
            f'Two of "{group.id}" would stand {apart:.1f} mm apart: the heads of {group.thread} are wider than that.'
        )
        yield _fault(message, where)


def _reach(stated: Positions, count: int) -> tuple[float, float] | None:
    """Return how large a pattern is, and how far its nearest neighbours are apart, both in mm; None for no pattern."""
    if stated.places:
        scale = _UNIT_MM.get(stated.unit or "")
        return None if scale is None else (_extent(stated) * scale, _nearest(stated) * scale)
    if stated.circle is None or stated.circle.dimension is not Dimension.LENGTH:
        return None
    reach = interval_of(stated.circle)
    if reach.low is None or reach.high is None:
        return None
    apart = float(reach.high * _MM) * math.sin(math.pi / count) if count > 1 else 0.0
    return float(reach.low * _MM), apart


def _extent(stated: Positions) -> float:
    """Return how far the places reach, across or upwards."""
    across = [right for right, _ in stated.places]
    upwards = [up for _, up in stated.places]
    return max(max(across) - min(across), max(upwards) - min(upwards))


def _nearest(stated: Positions) -> float:
    """Return the distance between the nearest two places that are not one; 0 for a single place."""
    places = sorted(set(stated.places))
    nearest = math.inf
    for at, one in enumerate(places):
        for other in places[at + 1 :]:
            if other[0] - one[0] >= nearest:
                break
            nearest = min(nearest, math.dist(one, other))
    return nearest if nearest < math.inf else 0.0


def _capacity(fluid: Fluid) -> Iterator[Fault]:
    stated = fluid.capacity
    if stated is not None and stated.value is not None and _beyond(stated.value, _CAPACITIES, Dimension.VOLUME):
        message = f"{stated.value.text} is no amount for a machine: it would hold less than 1 mL, or more than 1000 L."
        yield _fault(message, stated.where.of("value"))


def _scale(tool: Tool) -> Iterator[Fault]:
    reach, step = tool.range.value if tool.range is not None else None, tool.resolution
    if reach is None or step is None or step.nominal is None or step.dimension is not reach.dimension:
        return
    ends = interval_of(reach)
    if ends.low is None or ends.high is None:
        return
    if step.nominal * step.unit.factor * _FEWEST_STEPS > ends.high - ends.low:
        message = (
            f"A scale of {reach.text} has fewer than {_FEWEST_STEPS} steps of {step.text}, which measures nothing."
        )
        yield _fault(message, tool.where.of("resolution"))


def _wrench(tool: Tool) -> Iterator[Fault]:
    if tool.length is not None and _beyond(tool.length, _WRENCHES, Dimension.LENGTH):
        message = f"{tool.length.text} is no length for a torque wrench; usual are 0.1 to 3 m."
        yield _fault(message, tool.where.of("length"))


def _beyond(quantity: Quantity, usual: Interval, dimension: Dimension) -> bool:
    """Tell whether all that a quantity may be lies outside what is usual; a wrong dimension has its own rule."""
    if quantity.dimension is not dimension:
        return False
    stated = interval_of(quantity)
    below = stated.high is not None and usual.low is not None and stated.high < usual.low
    above = stated.low is not None and usual.high is not None and stated.low > usual.high
    return below or above


def _fault(message: str, span: Span) -> Fault:
    return Fault(message, span, _CURE)
