"""What to set on the torque wrench of a step, with the adapter that it carries."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

from authoring.booklet.phrases import doubt, in_turn
from authoring.booklet.plan import Volume
from authoring.booklet.words import Amount, Text, Words
from authoring.diagnostics.words import joined
from authoring.model.procedure import Step
from authoring.model.things import FastenerGroup, Tool
from authoring.model.wrenches import Held, angle_of, fit_of, held, torque_of
from authoring.quantities.quantity import Quantity
from authoring.quantities.show import spell
from authoring.quantities.units import Dimension
from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import exactly, quantity_of
from authoring.workshop.wrench_setting import at_the_fastener

_HALF_TURN, _TURN = 180, 360
_SITS = {0: "straight ahead of it", 90: "at a right angle to it", 180: "pointing back along it"}


def marks(group: FastenerGroup, step: Step, volume: Volume) -> Iterator[tuple[str, Text]]:
    """Yield the mark to set on each wrench of the step that can do the torque, in the unit of its scale.

    Behind an adapter that changes the setting, a second line says where the hand pulls, since the setting holds there
    alone.
    """
    torque = torque_of(group)
    told = [(one, mark) for one in held(step, volume.scope) if torque is not None and (mark := _mark(one, torque))]
    settings = [_setting(one, mark, group) for one, mark in told]
    if settings:
        yield "Set", in_turn(settings, ", or ")
    for wrench in dict.fromkeys(one.wrench for one, _ in told if one.ratio != 1):
        length = f", {spell(wrench.length)} from its square" if wrench.length is not None else ""
        where = f"at the middle of the grip of the {wrench.name}{length}"
        only = f". Only there is the setting right{doubt('wrench_setting')}."
        yield "Pull", (Words(where + only),)


def warned(group: FastenerGroup, step: Step, volume: Volume) -> str:
    """Return that the torque is not what the wrench is set to, where an adapter makes it so; else nothing."""
    torque = torque_of(group)
    for one in held(step, volume.scope):
        if torque is not None and one.ratio != 1 and one.adapter is not None and _mark(one, torque):
            return f"Do not set the {one.wrench.name} to this: the {one.adapter.name} changes what it gives."
    return ""


def _setting(one: Held, mark: Text, group: FastenerGroup) -> Text:
    stages = [stage for stage in group.stages if stage.dimension is Dimension.TORQUE]
    rounds = [(stage, _mark(one, stage, rough=True)) for stage in stages[:-1]]
    with_it = f", with the {one.adapter.name} {_sits(one.adapter)}" if one.adapter is not None else ""
    settings = in_turn([*(told for _, told in rounds if told), mark], ", then ")
    beyond = [spell(stage) for stage, told in rounds if not told]
    other = f" (another wrench for the {joined(beyond, 'and')} before)" if beyond else ""
    return (*settings, Words(f" on the {one.wrench.name}{other}{with_it}"), *_reaches(one, group))


def _reaches(one: Held, group: FastenerGroup) -> Text:
    """Return what the mark gives at the fastener, where an adapter makes that another number."""
    torque, step = torque_of(group), one.wrench.resolution
    fit = fit_of(one, torque) if torque is not None else None
    if fit is None or fit.setting is None or step is None or isinstance(one.ratio, Impossible) or one.ratio == 1:
        return ()
    given = quantity_of(at_the_fastener(exactly(fit.setting), one.ratio), step.unit, step.places)
    return (Words(", which gives "), Amount(spell(given)), Words(f" at the {group.name}"))


def _mark(one: Held, torque: Quantity, *, rough: bool = False) -> Text:
    """Return the mark for a torque, and that it is the nearest where it is not the torque itself; nothing if none.

    A `rough` torque, such as a first stage, may lie below a fifth of the full scale.
    """
    fit = fit_of(one, torque)
    step = one.wrench.resolution
    if fit is None or fit.setting is None or step is None or isinstance(one.ratio, Impossible):
        return ()
    if not fit.fits and not rough:
        return ()
    mark = spell(quantity_of(exactly(fit.setting), step.unit, step.places))
    told = Amount(mark) if one.ratio == 1 else Words(mark, "strong")
    return (told,) if fit.setting == _aim(torque, one.ratio) else (told, Words(" (the nearest mark)"))


def _aim(torque: Quantity, ratio: Fraction) -> Fraction | None:
    if torque.nominal is not None:
        return torque.nominal * torque.unit.factor * ratio
    ends = [end * torque.unit.factor * ratio for end in (torque.low, torque.high) if end is not None]
    return sum(ends, Fraction(0)) / len(ends) if ends else None


def _sits(tool: Tool) -> str:
    angle = tool.adapter.angle if tool.adapter is not None else None
    degree = angle_of(tool.adapter) if tool.adapter is not None else None
    turned = (degree or Fraction(0)) % _TURN
    turned = min(turned, _TURN - turned)
    known = _SITS.get(int(turned)) if turned.denominator == 1 else None
    return known or f"at {spell(angle)} to it" if angle is not None else _SITS[0]
