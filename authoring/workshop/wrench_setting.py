"""What is a torque wrench set to when an adapter moves the fastener away from its square?

Formula:
    set = wanted L/(L + a cos(angle))

Symbols:
    set, wanted: torque on the scale and at the fastener, in one unit of torque, any one
    L: the wrench from its square to the middle of its grip, in one unit of length, any one
    a: the adapter from the square to the fastener, in that unit
    angle: between the adapter and the wrench: 0° lengthens it, 90° changes nothing, 180° points back and shortens it

Source: US Army TM 1-1500-204-23-9, ch. 8, fig. 8-16; US Navy NAVEDTRA 14315, figs 3-44 and 3-45; the angle from
US Army TM 9-254, fig. 4-6, which prints a product where the lever is the sum.

Assumptions: the hand pulls at the middle of the grip, square to the wrench; no pipe lengthens the handle.

Limits: wrenches that feel the force at their head whatever the lever, and electronic ones told of the adapter, need no
correction.
"""

from __future__ import annotations

import math
from fractions import Fraction

from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval

# The angles whose cosine is a fraction stay exact, so that 90° leaves a setting as it was to the last digit.
_COSINES = {
    0: Fraction(1),
    60: Fraction(1, 2),
    90: Fraction(0),
    120: Fraction(-1, 2),
    180: Fraction(-1),
    240: Fraction(-1, 2),
    270: Fraction(0),
    300: Fraction(1, 2),
}

LENGTH_UNKNOWN = Impossible(
    "The setting depends on the length of the wrench, and that is not stated.",
    "Measure the wrench from the middle of its square to the middle of its grip, "
    "or put the adapter at 90° to the wrench, where the setting is the torque itself.",
)
"""What is asked when only the adapter is known."""

_GRIP_REACHED = Impossible(
    "The adapter points back as far as the grip or further, so the wrench has no lever.",
    "Check the length and the angle of the adapter.",
)


def lever_ratio(
    wrench: Fraction | None, adapter: Fraction, angle_degree: Fraction = Fraction(0)
) -> Fraction | Impossible:
    """Return set/wanted = L / (L + a cos(angle)); both lengths in the same unit, exact unless the cosine is not.

    `wrench` is None when nobody stated its length: then there is an answer only where the adapter changes nothing;
    otherwise `LENGTH_UNKNOWN` says what to measure.
    An adapter that shortens the wrench may also be given as a negative length.
    """
    reach = adapter * _cosine(angle_degree)
    if reach == 0:
        return Fraction(1)
    if wrench is None:
        return LENGTH_UNKNOWN
    if wrench <= 0 or wrench + reach <= 0:
        return _GRIP_REACHED
    return wrench / (wrench + reach)


def at_the_wrench(torque: Interval, ratio: Fraction) -> Interval:
    """Return the limits at the wrench for limits at the fastener: each times the ratio."""
    return _scaled(torque, ratio)


def at_the_fastener(setting: Interval, ratio: Fraction) -> Interval:
    """Return what reaches the fastener for what the wrench is set to: each divided by the ratio."""
    return _scaled(setting, 1 / ratio)


def _cosine(angle_degree: Fraction) -> Fraction:
    turned = angle_degree % 360
    known = _COSINES.get(int(turned)) if turned.denominator == 1 else None
    return Fraction(math.cos(math.radians(turned))) if known is None else known


def _scaled(interval: Interval, by: Fraction) -> Interval:
    return Interval(
        None if interval.low is None else interval.low * by,
        None if interval.high is None else interval.high * by,
    )
