"""What a gauge lets pass, and from which reading on a look-alike is the other part."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from authoring.booklet.phrases import aside, doubt
from authoring.booklet.plan import Volume
from authoring.booklet.step_parts import Aside
from authoring.booklet.words import Text, Words
from authoring.model.gauging import Gauge, Pair, gauge_for, in_base, measured, pairs, readings, rule_of
from authoring.model.procedure import Action, Choice, Step
from authoring.quantities.show import spell
from authoring.quantities.units import Dimension
from authoring.workshop.gauges import Distinction, Rule
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, exactly, quantity_of


def passing(action: Action, step: Step, volume: Volume) -> Iterator[Text]:
    """Yield which readings of the step's gauge pass a checkpoint, where the shop keeps a guard band."""
    scope = volume.scope
    if rule_of(scope.library.shop) is not Rule.GUARDED:
        return
    for window, limits in measured(action, scope):
        gauge = gauge_for(limits.dimension, step, scope) if volume.holds(window.when) else None
        inside = readings(limits, gauge, Rule.GUARDED) if gauge is not None else None
        if gauge is None or inside is None or isinstance(inside, Impossible):
            continue
        unsure = doubt("gauges.acceptance", "gauges.spread")
        read = f" a reading of {_on_scale(inside, gauge)}{unsure and f'{unsure},'}"
        yield (
            Words("Passes:", "strong"),
            Words(f"{read} on the {gauge.tool.name}, which may be off by {_off(gauge)}."),
        )


def telling(action: Action, step: Step, volume: Volume) -> Iterator[Aside]:
    """Yield from which reading on a measured part is the next larger one of its choice."""
    # With a value it is something else that is measured of the part, such as how deep it sits.
    sized = action.kind.name == "measure" and "value" not in action.roles
    gauge = gauge_for(Dimension.LENGTH, step, volume.scope) if sized else None
    for name in action.what if gauge is not None else ():
        choice = volume.scope.things[name].thing
        if isinstance(choice, Choice) and gauge is not None:
            yield from _tells(choice, gauge, volume)


def _tells(choice: Choice, gauge: Gauge, volume: Volume) -> Iterator[Aside]:
    for pair in _neighbours(pairs(choice, gauge)):
        smaller, larger = (volume.scope.things[part.part].words for part in (pair.smaller, pair.larger))
        named = choice.dimensions.get(pair.dimension)
        what = f"{named.name}: " if named is not None else ""
        middle = pair.separation.middle
        sure = doubt("gauges.told_apart")
        if pair.separation.distinction is Distinction.ALWAYS and middle is not None:
            limit = _on_scale(exactly(middle), gauge)
            told = f"{what}below {limit} it is the {smaller}, above it the {larger}. Every reading decides{sure}."
            yield aside("Tells", told)
        elif pair.separation.distinction is Distinction.NEVER_WRONG:
            yield aside("Tells", f"{what}a reading between the two sizes decides nothing: take a finer gauge.")


def _neighbours(found: Iterable[Pair]) -> Iterator[Pair]:
    """Yield the pairs of parts that no third part lies between: the nearest larger one of each."""
    nearest: dict[tuple[str, str], Pair] = {}
    for pair in found:
        key = (pair.smaller.part, pair.dimension)
        if key not in nearest or pair.separation.gap < nearest[key].separation.gap:
            nearest[key] = pair
    yield from nearest.values()


def _on_scale(interval: Interval, gauge: Gauge) -> str:
    places = gauge.tool.resolution.places if gauge.tool.resolution is not None else 0
    ends = [
        None if end is None else end * gauge.unit.factor + gauge.unit.offset for end in (interval.low, interval.high)
    ]
    return spell(quantity_of(Interval(*ends), gauge.unit, places))


def _off(gauge: Gauge) -> str:
    stated = gauge.tool.accuracy.value if gauge.tool.accuracy is not None else None
    if stated is not None:
        return spell(stated)
    places = gauge.tool.resolution.places if gauge.tool.resolution is not None else 0
    places += (gauge.spread * 10**places).denominator > 1
    return spell(quantity_of(in_base(exactly(gauge.spread), gauge.unit), gauge.unit, places))
