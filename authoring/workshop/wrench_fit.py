"""Can a torque wrench do a torque, and on which mark of its scale is it set?

Formula:
    low >= lowest mark, high <= full scale
    low >= full scale/5
    setting = the mark nearest to the nominal, or to (low + high)/2, between low and high

Symbols:
    low, high: limits of the torque at the wrench in N·m, an adapter reckoned with (`wrench_setting`)
    mark: a whole multiple of the resolution of the scale, in N·m

Source: of the fifth, US Army TM 1-1500-204-23-9, Table 8-1, which promises ±4 % from 20 % of full scale to full scale
and nothing below; ISO 6789 tests at 20, 60 and 100 % (as restated in a calibration leaflet), and permits 6 % up to
10 N·m and 4 % above (as restated there).
That one median value serves for a range: US Navy NAVEDTRA 14008.

Assumptions: the marks of a scale are whole multiples of its resolution, counted from zero.

Limits: ISO 6789-1:2017 lets the maker's range begin at the lowest mark, so a torque below the fifth is told apart, not
refused; a wrench with a certificate of its own is as good as that says.
"""

from __future__ import annotations

import enum
import math
from fractions import Fraction

from msgspec import Struct

from authoring.workshop.interval import Interval, overlap, widened

FIFTH = Fraction(1, 5)
"""The share of the full scale below which no accuracy is promised."""

_FINE_TOOL_NEWTON_METRE = 10


class WrenchFault(enum.Enum):
    """Why a wrench is not the one for a torque."""

    TOO_WEAK = "the upper limit is above its range"
    TOO_STRONG = "the lower limit is below its range"
    BELOW_A_FIFTH = "the lower limit is below a fifth of its full scale"
    NO_MARK = "none of its marks lies between the limits"


class WrenchFit(Struct, frozen=True):
    """What was found: the faults, and the mark to set in N·m; None when a limit is out of range or no mark is left."""

    faults: tuple[WrenchFault, ...]
    setting: Fraction | None

    @property
    def fits(self) -> bool:
        """Whether nothing speaks against this wrench."""
        return not self.faults


def wrench_fit(
    torque: Interval, scale: Interval, resolution: Fraction | None = None, nominal: Fraction | None = None
) -> WrenchFit:
    """Return whether a wrench can do a torque; all numbers are exact and in N·m.

    `torque` holds the limits at the wrench, so an adapter is reckoned with before (`wrench_setting`).
    `scale` is what the wrench measures, from its lowest mark to full scale; an open end is not judged.
    Without a resolution, or with one that is not above zero, every torque can be set.
    The setting is the mark nearest to `nominal`, or to the middle of the limits, that lies between them and in the
    range; of two equally near marks the lower one.
    A torque with one limit takes a mark on its side of it.
    A torque that is one number has no limits to fall between: it takes the nearest mark, if that is no further off
    than the wrench itself may be; 6 N·m and 7 N·m are never set on one mark.
    """
    low = torque.high if torque.low is None else torque.low
    high = torque.low if torque.high is None else torque.high
    if low is None or high is None:
        return WrenchFit((), None)
    faults = list(_range_faults(low, high, scale))
    if WrenchFault.TOO_WEAK in faults or WrenchFault.TOO_STRONG in faults:
        return WrenchFit(tuple(faults), None)
    setting = _nearest_mark((low + high) / 2 if nominal is None else nominal, torque, scale, resolution)
    if setting is None:
        faults.append(WrenchFault.NO_MARK)
    return WrenchFit(tuple(faults), setting)


def permissible_deviation(full_scale: Fraction) -> Fraction:
    """Return the permissible deviation of a setting wrench as a share: 6 % up to 10 N·m full scale, else 4 %.

    Source: ISO 6789, type II class A, as restated in a calibration leaflet.
    A wrench with a certificate of its own is as good as that says.
    """
    return Fraction(6, 100) if full_scale <= _FINE_TOOL_NEWTON_METRE else Fraction(4, 100)


def _deviation(scale: Interval) -> Fraction:
    return permissible_deviation(scale.high if scale.high is not None else Fraction(_FINE_TOOL_NEWTON_METRE + 1))


def _range_faults(low: Fraction, high: Fraction, scale: Interval) -> list[WrenchFault]:
    faults = []
    if scale.high is not None and high > scale.high:
        faults.append(WrenchFault.TOO_WEAK)
    if scale.low is not None and low < scale.low:
        faults.append(WrenchFault.TOO_STRONG)
    elif scale.high is not None and low < FIFTH * scale.high:
        faults.append(WrenchFault.BELOW_A_FIFTH)
    return faults


def _nearest_mark(aim: Fraction, torque: Interval, scale: Interval, resolution: Fraction | None) -> Fraction | None:
    """Return the mark nearest to `aim` that lies between the limits; one that is open is limited by the scale alone."""
    if resolution is None or resolution <= 0:
        return aim
    single = torque.low is not None and torque.low == torque.high
    blur = min(resolution / 2, aim * _deviation(scale)) if single else Fraction(0)
    inside = widened(torque, blur)
    common = overlap(inside, scale) if inside is not None else None
    if common is None:
        return None
    mark = math.ceil(aim / resolution - Fraction(1, 2))
    mark = mark if common.low is None else max(mark, math.ceil(common.low / resolution))
    mark = mark if common.high is None else min(mark, math.floor(common.high / resolution))
    return mark * resolution if mark * resolution in common else None
