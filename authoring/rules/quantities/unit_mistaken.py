"""A torque is odd for its bolt, or not that of like bolts, but in another unit it fits.

A torque that was copied in the wrong unit is wrong by a factor of nine to twelve, and the bolt shears or comes loose.
It is held against what a plain bolt of that thread and class takes; what friction and grade explain is not told.
N·m for lbf·ft makes a third more or less, and no bolt shows that.
It is told where the same number in the other unit is the last stage of that group, or the torque of other bolts of the
same thread, class and state of threads on the machine.

Wrong:

```yaml equipment
fasteners:
  level-plug:
    name: level plug
    count: 1
    thread: M18 x 1.5
    on: drop-box
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}
  cover-bolts:
    name: cover bolts
    count: 4
    thread: M8 x 1.25
    class: "8.8"
    on: drop-box
    torque: {value: 215 N·m, source: plate, at: line 6}   #! unit-mistaken torque-without-limits
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
  cover-bolts:
    name: cover bolts
    count: 4
    thread: M8 x 1.25
    class: "8.8"
    on: drop-box
    torque: {value: 215 ± 15 lbf·in, source: plate, at: line 6}
```
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import TypeAlias

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.diagnostics.words import joined
from authoring.model.library import Library
from authoring.model.things import Equipment, FastenerGroup
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault
from authoring.workshop.meant_unit import unit_that_makes, units_probably_meant
from authoring.workshop.metric_thread import metric_thread

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T1", "N3")


def check(equipment: Equipment, _library: Library) -> Iterator[Fault]:
    """Yield a fault for each torque of a bolt with a class that another unit would explain."""
    for group in equipment.fasteners.values():
        torque = group.torque.value if group.torque is not None else None
        number = _number(torque) if torque is not None else None
        if torque is None or number is None or torque.dimension is not Dimension.TORQUE:
            continue
        words, related = _odd(group, torque, number) or _unlike(group, torque, number, equipment)
        if words:
            cure = "Read the value and its unit in the source once more."
            yield Fault(words, group.where.of("torque", "value"), cure, related)


_Said: TypeAlias = tuple[str, tuple[Related, ...]]


def _odd(group: FastenerGroup, torque: Quantity, number: Fraction) -> _Said | None:
    """Return that a torque is odd for its bolt, and in which units it would be usual."""
    thread = metric_thread(group.thread)
    if thread is None or group.strength is None or _turned_further(group):
        return None
    meant = units_probably_meant(number, torque.unit, thread, group.strength)
    units = joined([unit.symbol for unit in meant], "or")
    words = f"{torque.text} is odd for {group.thread}, class {group.strength}; in {units} it would be usual."
    return (words, ()) if meant else None


def _unlike(group: FastenerGroup, torque: Quantity, number: Fraction, equipment: Equipment) -> _Said:
    """Return of which other statement of the same torque this one is off by just a unit, and where that stands."""
    for known, words, span in _known(group, torque, number, equipment):
        meant = unit_that_makes(number, torque.unit, known)
        if meant is not None:
            return f"{torque.text} is not {words}; in {meant.symbol} it would be.", (Related(span, words),)
    return "", ()


def _known(
    group: FastenerGroup, torque: Quantity, number: Fraction, equipment: Equipment
) -> Iterator[tuple[Fraction, str, Span]]:
    """Yield in N·m what a torque should be: its own last stage, and what like bolts have.

    Of two that each explain the other the later one is told.
    """
    stages = [at for at, stage in enumerate(group.stages) if stage.dimension is Dimension.TORQUE]
    if stages:
        last = group.stages[stages[-1]]
        reached = _number(last)
        if reached is not None:
            yield reached * last.unit.factor, "the torque of its own last stage", group.where.of("stages", stages[-1])
    later = False
    for other in equipment.fasteners.values():
        later = later or other is group
        theirs = other.torque.value if other.torque is not None else None
        reached = _number(theirs) if theirs is not None and _alike(group, other) else None
        if theirs is None or reached is None:
            continue
        if later and unit_that_makes(reached, theirs.unit, number * torque.unit.factor) is not None:
            continue
        words = f'the torque of "{other.id}", bolts of the same thread and class'
        yield reached * theirs.unit.factor, words, other.where.of("torque", "value")


def _alike(one: FastenerGroup, other: FastenerGroup) -> bool:
    threads = metric_thread(one.thread), metric_thread(other.thread)
    same = threads[0] == threads[1] and one.strength == other.strength and one.threads == other.threads
    turned = _turned_further(one) or _turned_further(other)
    return one is not other and threads[0] is not None and one.strength is not None and same and not turned


def _number(torque: Quantity) -> Fraction | None:
    """Return one number for the torque, in its unit: the nominal, or the middle or the one limit."""
    if torque.nominal is not None:
        return torque.nominal
    known = [limit for limit in (torque.low, torque.high) if limit is not None]
    return sum(known, Fraction(0)) / len(known) if known else None


def _turned_further(group: FastenerGroup) -> bool:
    """Tell whether the torque is a snug one before a turn."""
    return any(stage.unit.symbol in {"°", "turn"} for stage in group.stages)
