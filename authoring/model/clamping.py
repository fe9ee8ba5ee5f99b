"""What the data of a fastener group say about its clamp force: by the torque, by the turn after it, and in soft metal.

An answer is None where the group does not state what it takes.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from functools import lru_cache

from msgspec import Struct

from authoring.model.library import Library
from authoring.model.specification import Specification
from authoring.model.things import FastenerGroup
from authoring.model.wrenches import Held, fit_of, off_by, tightenings, torque_of
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.workshop.bolt_load import BoltLoad, bolt_load, bolt_load_for_nut_factor
from authoring.workshop.interval import Interval, interval_of
from authoring.workshop.metric_thread import metric_thread
from authoring.workshop.thread_engagement import loosest_share, shear_area_mm2_per_mm, stripping_force_newton
from authoring.workshop.tightening_angle import force_span_from_turn_newton, take_up_mm

_MM = 1000
_MPA = 10**6


class Turn(Struct, frozen=True):
    """The turn after the snug torque, in degrees at most, and by how many mm that draws head and nut together.

    `least_newton` and `greatest_newton` are what it adds to the clamp force; None where the grip is not stated.
    """

    degree: Fraction
    take_up_mm: Fraction
    least_newton: float | None
    greatest_newton: float | None


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
    """Return the turn that the stages of a group end in, all its parts together."""
    thread = metric_thread(group.thread)
    turns = [interval_of(stage) for stage in group.stages if stage.dimension is Dimension.ANGLE]
    smallest = sum((one.low or Fraction(0) for one in turns), Fraction(0))
    degree = sum((one.high or one.low or Fraction(0) for one in turns), Fraction(0))
    if thread is None or degree <= 0:
        return None
    grip = _stated(group.grip)
    short, long = _ends_mm(grip) if grip is not None else (0.0, 0.0)
    if short <= 0:
        return Turn(degree, take_up_mm(degree, thread), None, None)
    least, _ = force_span_from_turn_newton(smallest, thread, long)
    _, greatest = force_span_from_turn_newton(degree, thread, short)
    return Turn(degree, take_up_mm(degree, thread), least, greatest)


def stripping_of(group: FastenerGroup) -> float | None:
    """Return the force in N at which the tapped hole of a group strips, by the least engagement and strength stated.

    Bolt and hole are taken at the loose end of their limits of size.
    """
    thread, tapped = metric_thread(group.thread), group.tapped
    engaged = tapped.engaged.value if tapped is not None else None
    strength = tapped.shear_strength.value if tapped is not None else None
    if thread is None or engaged is None or strength is None:
        return None
    length, bears = interval_of(engaged).low, interval_of(strength).low
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


def _widest(torque: Interval, wrenches: Iterable[Held]) -> Interval:
    reached = [torque, *(off_by(one, torque) for one in wrenches)]
    lows = [one.low for one in reached if one.low is not None]
    highs = [one.high for one in reached if one.high is not None]
    return Interval(min(lows, default=None), max(highs, default=None))


def _stated(specification: Specification | None) -> Quantity | None:
    return specification.value if specification is not None else None


def _ends_mm(length: Quantity) -> tuple[float, float]:
    reach = interval_of(length)
    ends = [float(end * _MM) for end in (reach.low, reach.high) if end is not None]
    return ends[0], ends[-1]
