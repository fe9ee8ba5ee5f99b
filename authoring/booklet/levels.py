"""What a level has to do with warmth and with its marks: how far the fluid grows, what lies between, what is shut."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from authoring.booklet.phrases import aside, doubt
from authoring.booklet.plan import Placed, Volume
from authoring.booklet.step_parts import Aside
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Text, Words
from authoring.model.contents import amounts, hull, in_the_unit_of, volume
from authoring.model.fluid import Circuit, Fluid
from authoring.model.levels import READS, LevelReading, open_from, readings, span_of
from authoring.model.procedure import Action, Step
from authoring.model.specification import Specification
from authoring.model.things import Value
from authoring.quantities.quantity import Quantity
from authoring.quantities.rounding import places_for_value
from authoring.quantities.show import spell
from authoring.workshop.expansion import level_shift, volume_at
from authoring.workshop.fills import top_up
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, exactly, interval_of, quantity_of
from authoring.workshop.oil_density import oil_volume_at

_ROOM = Fraction(29_315, 100)  # 20 °C, where the shop does not say how warm its air is
_PART = Fraction(1, 4)
_HALF = Fraction(1, 2)
_LEAST_SHARE = Fraction(1, 20)
_TWO = 2


def level_notes(placed: Placed, around: Volume, wording: Wording, shown: set[str]) -> Iterator[Aside]:
    """Yield what is to be known of each level that a step goes by.

    From where on a thermostat is open, how much more the fluid is when warm, and what lies between two marks.
    """
    for reading in readings(around.procedure, around.scope.library):
        if reading.step is placed.step:
            yield from _shut(reading, wording)
            yield from _grown(reading, around, wording, shown)
    yield from _between_marks(placed.step, around, wording)


def _shut(reading: LevelReading, wording: Wording) -> Iterator[Aside]:
    """Yield from where on a level counts in a window in which a thermostat is shut at the cold end."""
    circuit = reading.fluid.circuit
    for window in reading.value.windows if circuit is not None and wording.holds(circuit.when) else ():
        begins = open_from(window, circuit) if circuit is not None and wording.holds(window.when) else None
        if circuit is None or begins is None or window.specification.value is None:
            continue
        only = wording.applies(circuit.when, reading.step.when)
        from_here = wording.amount(_degrees(begins, window.specification.value)).first
        told: list[str | Inline] = [
            f"{only}: " if only else "",
            "read the level at ",
            from_here,
            " or above. Below it ",
        ]
        told += [f"the {circuit.name} may still be shut, and what it takes is missing", doubt("level_windows"), "."]
        yield aside("Circuit", *told)


def why_closed(circuit: Circuit, wording: Wording) -> Text:
    """Return why a window is closed to the vehicles that have a circuit, since it is shut there."""
    opening = circuit.opens.value
    where = f"opens at {wording.amount(opening).first} only" if opening is not None else "is still shut"
    missing = f"what the {circuit.name} takes is missing from the level."
    return (Words(f"The thermostat of the {circuit.name} {where}, and {missing}"),)


def _grown(reading: LevelReading, around: Volume, wording: Wording, shown: set[str]) -> Iterator[Aside]:
    """Yield about how much more the fluid is where its level is read than in the air of the shop, once for a value."""
    key = f"{reading.fluid.id} at {reading.value.id}"
    amount = _amount(reading, around)
    windows = [one for one in reading.value.windows if wording.holds(one.when) and span_of(one) is not None]
    if key in shown or amount is None or not windows:
        return
    shown.add(key)
    cold = _cold(around)
    size = _middle(interval_of(amount))
    told: list[str] = []
    for window in windows:
        typed, warm = window.specification.value, _middle(span_of(window))
        more = _growth(reading.fluid, size, cold, warm) if size is not None and warm is not None else None
        if typed is None or size is None or warm is None or more is None or warm <= cold:
            continue
        begin = ", " if told else f"the {reading.fluid.name} is "
        than = "" if told else f" than at {_at(cold, typed, wording)}"
        told.append(f"{begin}{_about(more, amount)} more at {_at(warm, typed, wording)}{than}")
        told.append(_of_the_way(reading.fluid, size, warm - cold))
    if told:
        known, rests = ("oil_density", "density") if reading.fluid.density is not None else ("expansion", "expansion")
        yield aside("Warm", *told, f". Worked out from its {rests}{doubt(known)}.")


def _amount(reading: LevelReading, around: Volume) -> Quantity | None:
    """Return how much of the fluid there is: what is expected in all, or what the dry system holds."""
    named = around.scope.things.get(reading.action.roles.get("expected", ""))
    expected = amounts(named.thing, around.selection) if named is not None and isinstance(named.thing, Value) else []
    if expected:
        return in_the_unit_of(expected, hull(expected))
    return reading.fluid.capacity.value if reading.fluid.capacity is not None else None


def _growth(fluid: Fluid, size: Fraction, cold: Fraction, warm: Fraction) -> Fraction | None:
    """Return how much more a volume in m³ is when warm; None where neither density nor expansion is stated."""
    density, expansion = _stated(fluid.density), _stated(fluid.expansion)
    if density is not None:
        grown = oil_volume_at(warm, size, cold, density)
        return None if isinstance(grown, Impossible) else Fraction(grown) - size
    grown_by = volume_at(warm, size, cold, expansion) if expansion is not None else None
    return None if grown_by is None or isinstance(grown_by, Impossible) else grown_by - size


def _of_the_way(fluid: Fluid, size: Fraction | None, step: Fraction) -> str:
    """Return the share of the way between the marks by which the level moves; empty where that is not known."""
    between = _middle(volume(fluid.between_marks)) if fluid.between_marks is not None else None
    expansion = _stated(fluid.expansion)
    if fluid.density is not None and size:
        grown = _growth(fluid, size, _ROOM, _ROOM + step)
        expansion = grown / size / step if grown is not None else None
    if between is None or expansion is None or size is None:
        return ""
    share = level_shift(size, step, expansion, between)
    if isinstance(share, Impossible) or share < _LEAST_SHARE:
        return ""
    if share > 1:
        return ", which is more than lies between its marks"
    return f", and stands higher by about {round(share / _LEAST_SHARE) * 5} % of the way between its marks"


def _between_marks(step: Step, around: Volume, wording: Wording) -> Iterator[Aside]:
    """Yield what lies between the marks of a fluid that a step looks at or pours by its level."""
    for name in dict.fromkeys(name for action in step.actions if _reads(action) for name in action.what):
        fluid = around.scope.things[name].thing
        stated = fluid.between_marks.value if isinstance(fluid, Fluid) and fluid.between_marks is not None else None
        between = _middle(interval_of(stated)) if stated is not None else None
        if stated is None or between is None:
            continue
        parts = [(part, top_up(1 - part, exactly(Fraction(1)), between)) for part in (_PART, _HALF)]
        amounts_of = [_about(one.low, stated) for _, one in parts if isinstance(one, Interval) and one.low is not None]
        if len(amounts_of) == _TWO:
            told = f"a quarter of the way takes {amounts_of[0]}, half {amounts_of[1]}"
            rests = f". The machine stands level, and the vessel is as wide at each height{doubt('fills.top_up')}."
            yield aside("Marks", wording.amount(stated), f" lies between the two marks; {told}", rests)


def _reads(action: Action) -> bool:
    return action.kind.name in READS


def _stated(specification: Specification | None) -> Fraction | None:
    quantity = specification.value if specification is not None else None
    return _middle(interval_of(quantity)) if quantity is not None else None


def _middle(span: Interval | None) -> Fraction | None:
    """Return the middle of an interval, or the one end that it has."""
    if span is None or (span.low is None and span.high is None):
        return None
    low, high = (span.high if span.low is None else span.low), (span.low if span.high is None else span.high)
    return None if low is None or high is None else (low + high) / 2


def _cold(around: Volume) -> Fraction:
    shop = around.scope.library.shop
    air = _stated(shop.air) if shop is not None else None
    return _ROOM if air is None else air


def _at(kelvin: Fraction, typed: Quantity, wording: Wording) -> str:
    return spell(quantity_of(exactly(kelvin), wording.units(typed)[0], 0))


def _degrees(kelvin: Fraction, typed: Quantity) -> Quantity:
    return quantity_of(exactly(kelvin), typed.unit, typed.places)


def _about(size: Fraction, typed: Quantity) -> str:
    """Return an amount in the unit of another one, to two digits and two decimals at the most."""
    places = min(places_for_value(size / typed.unit.factor), _TWO)
    return f"about {spell(quantity_of(exactly(size), typed.unit, places))}"
