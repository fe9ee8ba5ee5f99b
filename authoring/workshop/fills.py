"""What do fluids poured in stages add up to, what is left in, and what does a dipstick still ask for?

Formula:
    total = fill 1 + fill 2 + ...
    rest = whole - part
    top up = (wanted - reading) V_marks

Symbols:
    fill, whole, part: volumes in m³, each with its limits
    wanted, reading: shares of the way from the lower mark (0) to the upper one (1)
    V_marks: volume in m³ that brings the level from the one mark to the other

Source: sums and differences of ranges as in interval arithmetic, R. E. Moore; Lehigh University's page on addition was
read, of differences a second party's copy; that what a drain lets out is not all is common practice.

Assumptions: for the dipstick, the vessel is as wide at every height between the marks, and the machine stands level.

Limits: volumes at one temperature; a litre poured cold is more when hot, see `expansion`.
A reading further than one gap outside the marks is refused.
"""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction

from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Comparison, Interval, compare, difference, total


def add_up(fills: Iterable[Interval], expected: Interval) -> Comparison:
    """Return how the sum of the fills lies to the total that is expected: sum = fill 1 + fill 2 + ...

    `fills` are what is poured in each stage, `expected` the capacity or the stated total; all in m³.
    WITHIN says that the total is met whatever is poured inside the limits, PARTLY that it can be met,
    BELOW and ABOVE that it cannot; `gap` is then what is lacking or too much.
    The first and every later fill count alike.
    Limit: volumes at one temperature.
    A litre poured cold is more when hot; see `expansion.volume_at`.
    """
    return compare(total(fills), expected)


def rest(whole: Interval, part: Interval) -> Interval | Impossible:
    """Return what is left of a volume when a part of it is known: rest = whole - part, never below zero.

    Left in after draining: `whole` is the capacity of the dry system, `part` what ran out.
    To pour after draining: `part` is what was left in.
    To top up: `whole` is the expected total, `part` what has been poured (`interval.total` of it).
    All in m³.
    Impossible when the part is more than the whole can be.
    """
    left = difference(whole, part)
    if left.high is not None and left.high < 0:
        return Impossible(
            "The part is more than the whole: less than nothing would be left.",
            "Check both volumes and their units; a capacity is that of the dry system.",
        )
    return Interval(Fraction(0) if left.low is None else max(left.low, Fraction(0)), left.high)


def top_up(reading: Fraction, wanted: Interval, between_marks: Fraction) -> Interval | Impossible:
    """Return what to add so that the level comes into the wanted part of a dipstick: (wanted - reading) * volume.

    `reading` and `wanted` are shares of the way from the lower mark (0) to the upper one (1);
    a level under the lower mark is negative.
    `between_marks` is the volume in m³ that brings the level from the one to the other.
    The result is in m³; its low end is zero when the level is already in the wanted part.
    Assumption: the vessel is as wide at every height between the marks, and the machine stands level.
    Limit: outside the marks the width is not known, so a reading further than one gap away is refused.
    Impossible also when fluid would have to be taken out.
    """
    if between_marks <= 0:
        return Impossible("Nothing lies between the marks.", "State the volume between the marks; it is above zero.")
    if not -1 <= reading <= 2:  # noqa: PLR2004  # one gap below the lower mark (0), one above the upper (1)
        return Impossible("The level is too far from the marks to be read.", "Drain or fill until it is near a mark.")
    if wanted.high is not None and wanted.high < reading:
        return Impossible("The level is above the wanted one.", "Take fluid out, then read again.")
    low = None if wanted.low is None else max((wanted.low - reading) * between_marks, Fraction(0))
    high = None if wanted.high is None else (wanted.high - reading) * between_marks
    return Interval(Fraction(0) if low is None else low, high)
