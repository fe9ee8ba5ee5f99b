"""What the data of a fastener group say about its clamp force: by the torque, by the turn after it, and in soft metal.

An answer is None where the group does not state what it takes.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from fractions import Fraction
from functools import lru_cache

from msgspec import Struct

from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.specification import Specification
from authoring.model.things import FastenerGroup
from authoring.model.wrenches import Held, fit_of, off_by, tightenings, torque_of
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.workshop.bolt_load import BoltLoad, bolt_load, bolt_load_for_nut_factor
from authoring.workshop.interval import Interval, interval_of, least_of, most_of, total
from authoring.workshop.metric_thread import metric_thread
from authoring.workshop.thread_engagement import loosest_share, shear_area_mm2_per_mm, stripping_force_newton
from authoring.workshop.tightening_angle import force_span_from_turn_newton, take_up_mm

_MM = 1000
_MPA = 10**6


class Turn(Struct, frozen=True):
    """The turn after the snug torque, in degrees at most, and by how many mm that draws head and nut together.

    Where no most is stated (`endless`), both are the least of it.
    `least_newton` and `greatest_newton` are what it adds to the clamp force; None where an end of the turn or of the
    grip is open, or the grip is not stated.
    """

    degree: Fraction
    take_up_mm: Fraction
    least_newton: float | None
    greatest_newton: float | None
    endless: bool = False


def clamp_of(group: FastenerGroup, wrenches: Iterable[Held]) -> BoltLoad | None:
    """Return the clamp force that the torque of a group gives at worst on either side, and what its bolt bears.

    The limits are moved out by the error of each of the wrenches, the worst counts; by nothing where there is none.
    With stages that end in a turn it is the force before the turn.
    """
    torque, thread = torque_of(group), metric_thread(group.thread)
    if torque is None or thread is None or group.strength is None:
        return None
    reached = _widest(interval_of(torque), wrenches)
    friction, factor = _stated(group.friction), _stated(group.nut_factor)
    if friction is not None:
        return bolt_load(reached, thread, group.strength, interval_of(friction))
    if factor is not None:
        return bolt_load_for_nut_factor(reached, thread, group.strength, interval_of(factor))
    return None


def turn_of(group: FastenerGroup) -> Turn | None:
    """Return the turn that the stages of a group end in, all its parts together.

    The least turns add up to the least force, the most to the greatest; a turn without a least may be none at all.
    """
    thread = metric_thread(group.thread)
    turns = [stage for stage in group.stages if stage.dimension is Dimension.ANGLE]
    least = sum((max(least_of(turn) or Fraction(0), Fraction(0)) for turn in turns), Fraction(0))
    most = total(interval_of(turn) for turn in turns).high
    degree, endless = (least, True) if most is None else (most, False)
    if thread is None or degree <= 0:
        return None
    drawn, grip = take_up_mm(degree, thread), _stated(group.grip)
    short = least_of(grip) if grip is not None else None
    long = most_of(grip) if grip is not None else None
    if endless or short is None or long is None or short <= 0:
        return Turn(degree, drawn, None, None, endless)
    weakest, _ = force_span_from_turn_newton(least, thread, float(long * _MM))
    _, strongest = force_span_from_turn_newton(degree, thread, float(short * _MM))
    return Turn(degree, drawn, weakest, strongest)


def stripping_of(group: FastenerGroup) -> float | None:
    """Return the force in N at which the tapped hole of a group strips, by the least engagement and strength stated.

    Bolt and hole are taken at the loose end of their limits of size.
    """
    thread, tapped = metric_thread(group.thread), group.tapped
    engaged = tapped.engaged.value if tapped is not None else None
    strength = tapped.shear_strength.value if tapped is not None else None
    if thread is None or engaged is None or strength is None:
        return None
    length, bears = least_of(engaged), least_of(strength)
    share = loosest_share(thread)
    if length is None or bears is None or length <= 0 or bears <= 0 or share is None:
        return None
    length, bears = length * _MM, bears / _MPA
    return share * stripping_force_newton(float(length), float(bears), shear_area_mm2_per_mm(thread))


def able(held: Iterable[Held], group: FastenerGroup) -> list[Held]:
    """Return the wrenches, as they are held, that suit the torque of a group."""
    torque = torque_of(group)
    fits = [(one, fit_of(one, torque)) for one in held] if torque is not None else []
    return [one for one, fit in fits if fit is not None and fit.fits]


def clamp_in(group: FastenerGroup, library: Library) -> BoltLoad | None:
    """Return the clamp force of a group by the worst of the wrenches with which the procedures tighten it."""
    if group.friction is None and group.nut_factor is None:
        return None
    return clamp_of(group, _used(library).get(group, ()))


@lru_cache(maxsize=4)
def _used(library: Library) -> Mapping[FastenerGroup, list[Held]]:
    """Return for each group the wrenches that suit it, as they are held in the steps that tighten it."""
    found: dict[FastenerGroup, list[Held]] = {}
    for procedure in library.procedures.values():
        for one in tightenings(procedure, library.scope(procedure)):
            found.setdefault(one.group, []).extend(able(one.held, one.group))
    return found


def ways_to_tighten(procedure: Procedure, library: Library) -> Iterator[str]:
    """Yield in words how a procedure tightens each group whose friction is stated: with which wrenches, how held."""
    for one in tightenings(procedure, library.scope(procedure)):
        if one.group.friction is not None or one.group.nut_factor is not None:
            for way in able(one.held, one.group):
                held = way.wrench.id, way.adapter.id if way.adapter is not None else "", str(way.ratio)
                yield " ".join((procedure.equipment, one.group.id, *held))


def _widest(torque: Interval, wrenches: Iterable[Held]) -> Interval:
    reached = [torque, *(off_by(one, torque) for one in wrenches)]
    lows = [one.low for one in reached if one.low is not None]
    highs = [one.high for one in reached if one.high is not None]
    return Interval(min(lows, default=None), max(highs, default=None))


def _stated(specification: Specification | None) -> Quantity | None:
    return specification.value if specification is not None else None
