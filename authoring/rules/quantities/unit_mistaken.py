"""A torque is odd for its bolt, or not that of like bolts, but in another unit it fits.

A torque that was copied in the wrong unit is wrong by a factor of nine to twelve, and the bolt shears or comes loose.
It is held against what a plain bolt of that thread and class takes; what friction and grade explain is not told.
No unit is named in which the bolt would be pulled beyond its proof load.
A single plug, which is one group of one without a length, closes a hole instead of clamping: little torque is no sign
there, and only one that is too much is told.
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
from authoring.model.specification import Specification
from authoring.model.things import Equipment, FastenerGroup
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.rules.rule import Fault
from authoring.workshop.clamp_force import nut_factor
from authoring.workshop.interval import interval_of
from authoring.workshop.meant_unit import (
    USUAL_NUT_FACTOR,
    bears,
    unit_that_makes,
    units_probably_meant,
    usual_torque_newton_metre,
)
from authoring.workshop.metric_thread import metric_thread

SEVERITY = Severity.WARNING
REQUIREMENTS = ("T1", "N3")
ABOUT = ("torque",)


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
    """Return that a torque is odd for its bolt, and in which units it would be usual; none of these for a plug."""
    thread = metric_thread(group.thread)
    if thread is None or group.strength is None or _turned_further(group):
        return None
    meant = units_probably_meant(number, torque.unit, thread, group.strength, nut_factor=_least_nut_factor(group))
    if not meant:
        return None
    usual = usual_torque_newton_metre(thread, group.strength) or 0.0
    if _is_plug(group):
        much = float(number * torque.unit.factor) > usual
        words = (
            f"{torque.text} is more than a bolt of {group.thread}, class {group.strength}, takes, and this is a plug."
        )
        return (words, ()) if much else None
    units = joined([unit.symbol for unit in meant], "or")
    words = f"{torque.text} is odd for {group.thread}, class {group.strength}; in {units} it would be usual."
    return words, ()


def _is_plug(group: FastenerGroup) -> bool:
    """Tell whether a group is a single plug: one, of which no length is stated."""
    return group.count == 1 and group.length is None


def _least_nut_factor(group: FastenerGroup) -> float:
    """Return the least K by the friction or nut factor that is stated, else the usual one: it pulls hardest."""
    thread = metric_thread(group.thread)
    friction, factor = _least(group.friction), _least(group.nut_factor)
    if friction and thread is not None:
        return nut_factor(thread, friction, friction)
    return factor or USUAL_NUT_FACTOR


def _least(stated: Specification | None) -> float:
    """Return the least number that is stated, or 0 where there is none."""
    reach = interval_of(stated.value) if stated is not None and stated.value is not None else None
    ends = [end for end in (reach.low, reach.high) if end is not None] if reach is not None else []
    return float(ends[0]) if ends else 0.0


def _unlike(group: FastenerGroup, torque: Quantity, number: Fraction, equipment: Equipment) -> _Said:
    """Return of which other statement of the same torque this one is off by just a unit, and where that stands."""
    thread, factor = metric_thread(group.thread), _least_nut_factor(group)
    for known, words, span in _known(group, torque, number, equipment):
        meant = unit_that_makes(number, torque.unit, known)
        borne = thread is None or group.strength is None or bears(known, thread, group.strength, factor)
        if meant is not None and borne:
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
    bolts = one is not other and not _is_plug(one) and not _is_plug(other)
    return bolts and threads[0] is not None and one.strength is not None and same and not turned


def _number(torque: Quantity) -> Fraction | None:
    """Return one number for the torque, in its unit: the nominal, or the middle or the one limit."""
    if torque.nominal is not None:
        return torque.nominal
    known = [limit for limit in (torque.low, torque.high) if limit is not None]
    return sum(known, Fraction(0)) / len(known) if known else None


def _turned_further(group: FastenerGroup) -> bool:
    """Tell whether the torque is a snug one before a turn."""
    return any(stage.unit.symbol in {"°", "turn"} for stage in group.stages)
