"""How much of a fluid is in the machine: what stayed in, what was poured since, and whether its level was set since."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from fractions import Fraction

from msgspec import Struct
from msgspec.structs import replace

from authoring.model.fitments import may_hold
from authoring.model.procedure import Action
from authoring.model.specification import Specification
from authoring.model.things import Value
from authoring.quantities.quantity import Quantity
from authoring.quantities.units import Dimension
from authoring.workshop.interval import Interval, difference, interval_of, quantity_of, total

MOVES = frozenset({"fill", "fill-to-level", "top-up", "drain", "extract"})
"""The actions that bring a fluid in or out."""

ANY_AMOUNT = Interval(Fraction(0), None)
"""Nothing is known of an amount."""

_MOST_PLACES = 3


class Contents(Struct, frozen=True):
    """What is in, in m³: `left` before the first pouring, and what was `poured` since.

    `drained` says that the job let the fluid out, so that `left` is what stayed in.
    `levelled` says that the fluid was brought to its level since, by an amount that nobody states.
    """

    left: Interval = ANY_AMOUNT
    poured: tuple[Interval, ...] = ()
    drained: bool = False
    levelled: bool = False

    @property
    def inside(self) -> Interval:
        """All that is in; its upper end is open once a level was set."""
        known = total((self.left, *self.poured))
        return Interval(known.low, None) if self.levelled else known


def after(before: Contents, action: Action, amount: Interval, left_in: Interval) -> Contents:
    """Return what is in after an action that brings the fluid in or out.

    `amount` is what a filling or an extraction states, `left_in` what stays in after draining; ANY_AMOUNT for neither.
    Whatever runs out unasked, such as what a loosened hose drips, is not followed.
    No extraction takes more than there is; one that may take more than was poured leaves all of it as `left`.
    """
    name = action.kind.name
    stated = "amount" in action.roles
    if name == "drain":
        left_in = _not_less(left_in)
        return Contents(_lesser(before.inside, left_in) if before.drained else left_in, drained=True)
    if name == "extract" and not stated:
        return Contents(Interval(Fraction(0), before.inside.high), drained=before.drained)
    if name == "extract" and _at_most(amount, total(before.poured)):
        return replace(before, poured=(*before.poured, difference(Interval(Fraction(0), Fraction(0)), amount)))
    if name == "extract":
        return replace(before, left=_not_less(difference(before.inside, amount)), poured=())
    if name == "fill":
        return replace(before, poured=(*before.poured, amount))
    return replace(before, levelled=True)


def volume(stated: Specification | None) -> Interval:
    """Return a stated volume in m³; any amount where none is stated or its text was refused."""
    return ANY_AMOUNT if stated is None or stated.value is None else interval_of(stated.value)


def amounts(value: Value, machine: Mapping[str, str]) -> list[Quantity]:
    """Return the amounts of a value of volume that hold for a machine; one is None where its text was refused."""
    quantities = [window.specification.value for window in value.windows if may_hold(window.when, machine)]
    return [one for one in quantities if one is not None and one.dimension is Dimension.VOLUME]


def hull(quantities: list[Quantity]) -> Interval:
    """Return the least interval that holds all of these amounts; any amount for none of them."""
    spans = [interval_of(one) for one in quantities]
    lows = [span.low for span in spans if span.low is not None]
    highs = [span.high for span in spans if span.high is not None]
    low = min(lows) if lows and len(lows) == len(spans) else Fraction(0)
    return Interval(low, max(highs) if highs and len(highs) == len(spans) else None)


def in_the_unit_of(typed: Sequence[Quantity], span: Interval) -> Quantity:
    """Return an amount in the unit in which the first of these was typed, with as many decimals as it needs."""
    unit = typed[0].unit
    places = min(one.places for one in typed)
    ends = [end / unit.factor for end in (span.low, span.high) if end is not None]
    while places < _MOST_PLACES and any(end != round(end, places) for end in ends):
        places += 1
    return quantity_of(span, unit, places)


def _lesser(one: Interval, other: Interval) -> Interval:
    lows = [low for low in (one.low, other.low) if low is not None]
    highs = [high for high in (one.high, other.high) if high is not None]
    return Interval(min(lows, default=Fraction(0)), min(highs, default=None))


def _at_most(part: Interval, whole: Interval) -> bool:
    """Tell whether a part is for certain no more than the whole, which is something."""
    return part.high is not None and whole.low is not None and 0 < part.high <= whole.low


def _not_less(span: Interval) -> Interval:
    """Return what of an interval is not below nothing; an extraction never draws more than there is."""
    low = Fraction(0) if span.low is None else max(span.low, Fraction(0))
    return Interval(low, None if span.high is None else max(span.high, low))
