"""Which tools of a step are gauges, how far each may be off, and which readings it lets pass."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from msgspec import Struct

from authoring.model.library import Scope
from authoring.model.procedure import Action, Choice, ChoicePart, Step
from authoring.model.things import Shop, Tool, Value, Window
from authoring.quantities.quantity import Form, Quantity
from authoring.quantities.units import Dimension, Unit
from authoring.workshop.gauges import Rule, Separation, acceptance, on_the_scale, spread_of, told_apart
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, interval_of

_BY_EYE = 2
_DIFFERENCES = {Dimension.TEMPERATURE: Dimension.TEMPERATURE_DIFFERENCE}


class Gauge(Struct, frozen=True, eq=False):
    """A tool that measures: the unit of its scale, its smallest step, and how far a reading may be off.

    `resolution` and `spread` are plain numbers in `unit`; `spread` is a half-width, plus or minus.
    `share` is an accuracy that is stated as a share of the reading, or 0.
    `stated` says that an accuracy is stated, so that the spread is more than what reading alone blurs.
    """

    tool: Tool
    unit: Unit
    resolution: Fraction
    spread: Fraction
    share: Fraction
    stated: bool
    reach: Interval | None

    def own(self, sizes: Iterable[Quantity]) -> list[Interval]:
        """Return sizes as plain numbers of the gauge's unit."""
        return [in_unit(interval_of(size), self.unit) for size in sizes]

    def shows(self, sizes: Sequence[Quantity]) -> bool:
        """Tell whether the gauge measures what these sizes are of, and its scale holds every end of them."""
        if any(size.dimension is not self.unit.dimension for size in sizes):
            return False
        ends = [end for size in self.own(sizes) for end in (size.low, size.high) if end is not None]
        return self.reach is None or all(end in self.reach for end in ends)

    def blur(self, *sizes: Interval) -> Fraction:
        """Return how far a reading near these sizes may be off: the amount, or the share of the largest end."""
        ends = [abs(end) for size in sizes for end in (size.low, size.high) if end is not None]
        return max(self.spread, self.share * max(ends, default=Fraction(0)))


def gauges(step: Step, scope: Scope) -> Iterator[Gauge]:
    """Yield the gauges among the tools of a step; a tool whose smallest step nobody stated is none."""
    for name in step.uses:
        named = scope.things.get(name)
        if named is not None and isinstance(named.thing, Tool):
            gauge = gauge_of(named.thing)
            if gauge is not None:
                yield gauge


def gauge_of(tool: Tool) -> Gauge | None:
    """Return a tool as a gauge, or None where it states no step, or one that is not above zero."""
    step = tool.resolution
    if step is None or step.nominal is None:
        return None
    read = spread_of(step.nominal, _BY_EYE if tool.by_eye else 1)
    if isinstance(read, Impossible):
        return None
    value = tool.accuracy.value if tool.accuracy is not None else None
    amount, share = _amount(value, step), _share(value)
    reach = tool.range.value if tool.range is not None else None
    ends = in_unit(interval_of(reach), step.unit) if reach is not None and reach.dimension is step.dimension else None
    spread = read if amount is None else amount
    return Gauge(tool, step.unit, step.nominal, spread, share, amount is not None or share > 0, ends)


def gauge_for(sizes: Sequence[Quantity], step: Step, scope: Scope) -> Gauge | None:
    """Return the finest gauge of a step that shows these sizes, or None; the sizes are of one dimension."""
    fit = [gauge for gauge in gauges(step, scope) if sizes and gauge.shows(sizes)]
    return min(fit, key=lambda gauge: gauge.blur(*gauge.own(sizes)) * gauge.unit.factor, default=None)


def measured(action: Action, scope: Scope) -> Iterator[tuple[Window, Quantity]]:
    """Yield each window with limits that a checkpoint measures against; a value without limits is not judged."""
    named = scope.things.get(action.roles.get("value", "")) if action.kind.checkpoint else None
    value = named.thing if named is not None else None
    for window in value.windows if isinstance(value, Value) else ():
        quantity = window.specification.value
        if quantity is not None and quantity.form not in (Form.VALUE, Form.ABOUT):
            yield window, quantity


def in_unit(interval: Interval, unit: Unit) -> Interval:
    """Return an interval in base units as plain numbers of a unit."""
    ends = [None if end is None else (end - unit.offset) / unit.factor for end in (interval.low, interval.high)]
    return Interval(*ends)


def in_base(interval: Interval, unit: Unit) -> Interval:
    """Return an interval of plain numbers of a unit in base units."""
    ends = [None if end is None else end * unit.factor + unit.offset for end in (interval.low, interval.high)]
    return Interval(*ends)


def rule_of(shop: Shop | None) -> Rule:
    """Return the shop's decision rule; simple acceptance where it states none."""
    return Rule.GUARDED if shop is not None and shop.decision_rule == "guarded" else Rule.SIMPLE


def readings(limits: Quantity, gauge: Gauge, rule: Rule) -> Interval | Impossible:
    """Return the lowest and the highest reading that pass, in the gauge's unit and on its scale."""
    wanted = in_unit(interval_of(limits), gauge.unit)
    inside = acceptance(wanted, gauge.blur(wanted), rule)
    return inside if isinstance(inside, Impossible) else on_the_scale(inside, gauge.resolution)


class Pair(Struct, frozen=True, eq=False):
    """Two parts of a choice and how well a gauge tells them apart, in the dimension that does it best.

    `separation` and `blur`, what a reading may be off there, are in the gauge's unit.
    `dimension` is empty for a choice that names none.
    """

    smaller: ChoicePart
    larger: ChoicePart
    dimension: str
    separation: Separation
    blur: Fraction


def pairs(choice: Choice, gauge: Gauge) -> Iterator[Pair]:
    """Yield each two parts of a choice that state sizes, with what the gauge makes of the best deciding dimension."""
    for place, one in enumerate(choice.parts):
        for other in choice.parts[place + 1 :]:
            found = [pair for name in _deciding(choice) if (pair := _pair(one, other, name, gauge)) is not None]
            if found:
                yield max(found, key=lambda pair: pair.separation.gap)


def _deciding(choice: Choice) -> list[str]:
    """Return the dimensions that decide; "" is the one size of a choice that names no dimensions."""
    return [name for name, measured in choice.dimensions.items() if measured.decides] or [""]


def _pair(one: ChoicePart, other: ChoicePart, dimension: str, gauge: Gauge) -> Pair | None:
    sizes = [_size(part, dimension) for part in (one, other)]
    first, second = (
        in_unit(interval_of(size), gauge.unit) if size is not None and size.dimension is gauge.unit.dimension else None
        for size in sizes
    )
    if first is None or second is None:
        return None
    blur = gauge.blur(first, second)
    apart = told_apart(first, second, blur)
    if isinstance(apart, Impossible):
        return None
    swapped = first.high is None or (second.high is not None and second.high < first.high)
    smaller, larger = (other, one) if swapped else (one, other)
    return Pair(smaller, larger, dimension, apart, blur)


def _size(part: ChoicePart, dimension: str) -> Quantity | None:
    stated = part.sizes.get(dimension) if dimension else part.stated
    return stated.value if stated is not None else None


def _amount(accuracy: Quantity | None, step: Quantity) -> Fraction | None:
    """Return a stated accuracy as a number in the unit of the scale: the most that is stated."""
    most = most_off(accuracy)
    if accuracy is None or most is None or accuracy.dimension not in (step.dimension, _DIFFERENCES.get(step.dimension)):
        return None
    return most * accuracy.unit.factor / step.unit.factor


def _share(accuracy: Quantity | None) -> Fraction:
    most = most_off(accuracy)
    if accuracy is None or most is None or accuracy.dimension is not Dimension.RATIO:
        return Fraction(0)
    return most * accuracy.unit.factor


def most_off(accuracy: Quantity | None) -> Fraction | None:
    """Return the most that a tool may be off, in the unit as typed; None where only a least is stated."""
    if accuracy is None:
        return None
    return accuracy.nominal if accuracy.high is None else accuracy.high


def sizes_of(choice: Choice) -> list[Quantity]:
    """Return every size by which the parts of a choice are told apart."""
    stated = [_size(part, name) for part in choice.parts for name in _deciding(choice)]
    return [size for size in stated if size is not None]
