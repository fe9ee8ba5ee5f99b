"""What can a gauge tell: parts of two sizes apart, and whether a reading proves that a limit is kept?

Formula:
    accepted: from low + w to high - w, with w = 0 (simple acceptance) or w = U (guarded acceptance)
    proved: inside by U or more; broken: outside by more than U; not proved: between
    told apart: always if gap > 2 U; never wrong if gap > U
    U = resolution/2 for each end that is read, where nobody states it

Symbols:
    low, high, reading, gap, resolution: in one unit of length, any one
    U: spread of the gauge, a half-width, in that unit
    w: guard band, in that unit

Source: the decision rule is guarded acceptance, w = U: ISO 14253-1, JCGM 106:2012 and ILAC-G8:09/2019, 4.2.
Read of these was ILAC-G8, 4.1, what a guard band is; that it is as wide as the spread is known as restated.
The half-width: JCGM 100:2008, F.2.2.1, from memory; the two ends from a physics course.

Assumptions: the gauge is off by U at most, evenly to both sides.

Limits: what the hand adds is not in U; a stated uncertainty goes before half a resolution.
Whoever must prove something has an open reading counted against them.
"""

from __future__ import annotations

import enum
import math
from fractions import Fraction

from msgspec import Struct

from authoring.workshop.impossible import Impossible
from authoring.workshop.interval import Interval, widened

_ENDS_BY_EYE = 2


class Distinction(enum.Enum):
    """How well a gauge tells parts of two sizes apart."""

    ALWAYS = "always"
    """Every reading decides."""
    NEVER_WRONG = "never wrong"
    """No reading names the wrong part, but some lie between the two sizes and decide nothing."""
    NOT = "not"
    """A reading can name the wrong part."""


class Separation(Struct, frozen=True):
    """How far two sizes are apart (negative: they overlap), what the gauge makes of it, and the middle between them.

    `middle` is the reading on whose sides the two parts lie; None unless every reading decides.
    """

    gap: Fraction
    distinction: Distinction
    middle: Fraction | None


class Rule(enum.Enum):
    """The decision rule: how the spread of a gauge counts when a limit is judged."""

    SIMPLE = "simple acceptance"
    """It does not count: what reads inside the limits is accepted (ILAC-G8:09/2019, 4.2)."""
    GUARDED = "guarded acceptance"
    """The limits move in by the whole spread, w = U (ILAC-G8:09/2019, 4.2; ISO 14253-1; JCGM 106:2012)."""


class Verdict(enum.Enum):
    """What a reading proves about a limit (ISO 14253-1)."""

    PROVED = "kept"
    OPEN = "not proved"
    REFUTED = "broken"


def spread_of(resolution: Fraction, ends_read: int = 1) -> Fraction | Impossible:
    """Return the half-width by which reading alone blurs a value: resolution / 2 for each end that is read.

    `resolution` is the smallest step that the gauge shows.
    A caliper or a digital gauge has its zero built in, one end; a ruler laid on by eye has two.
    Source: the half-width behind JCGM 100:2008, F.2.2.1 (from memory); the two ends from a physics course.
    Limit: what the gauge itself is off by, and what the hand adds, is not in it; a stated uncertainty goes before it.
    """
    if resolution <= 0 or ends_read not in (1, _ENDS_BY_EYE):
        return Impossible(
            "The smallest step that a gauge shows is above zero, and a length has two ends at most.",
            "State the resolution.",
        )
    return resolution / 2 * ends_read


def told_apart(one: Interval, other: Interval, spread: Fraction) -> Separation | Impossible:
    """Return whether a gauge that is off by `spread` at most tells parts of two sizes apart.

    `one` and `other` are the sizes that good parts have, in any order.
    A reading lies up to U outside the size: apart by more than U, no part reads as the other;
    apart by more than 2 U, the readings of the two never meet.
    A size may be open to the side away from the other, such as at most 7 mm.
    Impossible when nothing limits one towards the other, or the spread is negative.
    """
    if spread < 0:
        return Impossible("A spread is not negative.", "State plus or minus how much the gauge is off.")
    pairs = [(low.high, high.low) for low, high in ((one, other), (other, one))]
    between = max(
        ((end, start) for end, start in pairs if end is not None and start is not None), key=_gap, default=None
    )
    if between is None:
        return Impossible("Nothing limits one size towards the other.", "State both sizes as windows.")
    gap = _gap(between)
    if gap > 2 * spread:
        return Separation(gap, Distinction.ALWAYS, (between[0] + between[1]) / 2)
    return Separation(gap, Distinction.NEVER_WRONG if gap > spread else Distinction.NOT, None)


def acceptance(limits: Interval, spread: Fraction, rule: Rule) -> Interval | Impossible:
    """Return the readings that are accepted: the limits, moved in by the guard band w of the rule.

    w = 0 for SIMPLE, w = U for GUARDED; U is `spread`, the expanded uncertainty or the gauge's half-width.
    Impossible when nothing is left between the limits: the gauge is too coarse for them.
    """
    if spread < 0:
        return Impossible("A spread is not negative.", "State plus or minus how much the gauge is off.")
    inside = widened(limits, -spread) if rule is Rule.GUARDED else limits
    if inside is None:
        return Impossible("The gauge is too coarse: no reading proves that the limits are kept.", "Use a finer gauge.")
    return inside


def judge(reading: Fraction, limits: Interval, spread: Fraction) -> Verdict:
    """Return what a reading proves: kept when inside by U or more, broken when outside by more than U, else open.

    ISO 14253-1 as restated by others; U is `spread`.
    Whoever must prove something has an open reading counted against them.
    """
    inside = widened(limits, -spread)
    if inside is not None and reading in inside:
        return Verdict.PROVED
    outside = widened(limits, spread)
    return Verdict.OPEN if outside is not None and reading in outside else Verdict.REFUTED


def on_the_scale(limits: Interval, resolution: Fraction) -> Interval | Impossible:
    """Return the lowest and the highest step of a gauge's scale inside the limits: rounded inward, never outward.

    Steps are whole multiples of `resolution`.
    Impossible when no step lies inside.
    """
    if resolution <= 0:
        return Impossible("The smallest step that a gauge shows is above zero.", "State the resolution.")
    low = None if limits.low is None else math.ceil(limits.low / resolution) * resolution
    high = None if limits.high is None else math.floor(limits.high / resolution) * resolution
    if low is not None and high is not None and low > high:
        return Impossible("No step of the scale lies inside the limits.", "Use a finer gauge.")
    return Interval(low, high)


def _gap(between: tuple[Fraction, Fraction]) -> Fraction:
    end, start = between
    return start - end
