"""What a gauge lets pass, and which readings are which of the look-alikes."""

from __future__ import annotations

from collections.abc import Iterator

from authoring.booklet.phrases import aside, doubt
from authoring.booklet.plan import Volume
from authoring.booklet.step_parts import Aside
from authoring.booklet.words import Text, Words
from authoring.model.gauging import Gauge, gauge_for, in_base, measured, pairs, readings, rule_of, sizes_of
from authoring.model.procedure import Action, Choice, ChoicePart, Step
from authoring.quantities.show import spell
from authoring.workshop.gauges import Rule
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, exactly, quantity_of


def passing(action: Action, step: Step, volume: Volume) -> Iterator[Text]:
    """Yield which readings of the step's gauge pass a checkpoint, where the shop keeps a guard band."""
    scope = volume.scope
    if rule_of(scope.library.shop) is not Rule.GUARDED:
        return
    for window, limits in measured(action, scope):
        gauge = gauge_for([limits], step, scope) if volume.holds(window.when) else None
        inside = readings(limits, gauge, Rule.GUARDED) if gauge is not None else None
        if gauge is None or inside is None or isinstance(inside, Impossible):
            continue
        off = f"which may be off by {_off(gauge)}{doubt('gauges.acceptance', 'gauges.spread')}"
        read = f" a reading of {_on_scale(inside, gauge)} on the {gauge.tool.name}, {off}."
        yield (Words("Passes:", "strong"), Words(read))


def telling(action: Action, step: Step, volume: Volume) -> Iterator[Aside]:
    """Yield, for each choice that a step measures, which readings are which part."""
    # With a value it is something else that is measured of the part, such as how deep it sits.
    if action.kind.name != "measure" or "value" in action.roles:
        return
    for name in action.what:
        choice = volume.scope.things[name].thing
        if isinstance(choice, Choice):
            gauge = gauge_for(sizes_of(choice), step, volume.scope)
            yield from _tells(choice, gauge, volume) if gauge is not None else ()


def _tells(choice: Choice, gauge: Gauge, volume: Volume) -> Iterator[Aside]:
    """Yield a line for each dimension that tells two of the parts apart better than any other."""
    for dimension in dict.fromkeys(pair.dimension for pair in pairs(choice, gauge)):
        told = [
            f"{_on_scale(inside, gauge)} is the {volume.scope.things[part.part].words}"
            for part in choice.parts
            if (inside := _accepted(part, dimension, gauge, volume)) is not None
        ]
        named = choice.dimensions.get(dimension)
        what = f"{named.name} " if named is not None else ""
        rests = f"it may be off by {_off(gauge)}{doubt('gauges.told_apart')}"
        yield aside(
            "Tells",
            f"{what}on the {gauge.tool.name} ({rests}): {'; '.join(told)}. Any other reading is none of these.",
        )


def _accepted(part: ChoicePart, dimension: str, gauge: Gauge, volume: Volume) -> Interval | None:
    """Return the readings that pass for one part, by the shop's decision rule."""
    stated = part.sizes.get(dimension) if dimension else part.stated
    if stated is None or stated.value is None:
        return None
    inside = readings(stated.value, gauge, rule_of(volume.scope.library.shop))
    return None if isinstance(inside, Impossible) else inside


def _on_scale(interval: Interval, gauge: Gauge) -> str:
    places = gauge.tool.resolution.places if gauge.tool.resolution is not None else 0
    return spell(quantity_of(in_base(interval, gauge.unit), gauge.unit, places))


def _off(gauge: Gauge) -> str:
    stated = gauge.tool.accuracy.value if gauge.tool.accuracy is not None else None
    if stated is not None:
        return spell(stated)
    places = gauge.tool.resolution.places if gauge.tool.resolution is not None else 0
    places += (gauge.spread * 10**places).denominator > 1
    return spell(quantity_of(in_base(exactly(gauge.spread), gauge.unit), gauge.unit, places))
