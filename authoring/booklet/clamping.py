"""What a torque, and a turn after it, do to the bolt: small lines below a callout, each with what it takes for granted.

A span of force widens when it is rounded, so that what is printed holds whatever the true number is.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from fractions import Fraction

from authoring.booklet.phrases import capital, doubt
from authoring.booklet.plan import Volume
from authoring.booklet.wording import Wording
from authoring.booklet.words import Amount, Text, Words
from authoring.diagnostics.words import joined
from authoring.model.clamping import Turn, able, clamp_of, stripping_of, turn_of
from authoring.model.gauging import most_off
from authoring.model.procedure import Step
from authoring.model.specification import Specification
from authoring.model.things import FastenerGroup, Tool
from authoring.model.wrenches import held, share_off
from authoring.quantities.quantity import Quantity
from authoring.quantities.rounding import down, places_for_value, up
from authoring.quantities.show import spell
from authoring.quantities.units import UNITS, Dimension, Unit
from authoring.workshop.bolt_load import BoltLoad
from authoring.workshop.interval import Interval, exactly, quantity_of
from authoring.workshop.metric_thread import metric_thread
from authoring.workshop.proof_load import proof_load_newton

_KILONEWTON = UNITS["kN"]
_PERCENT = UNITS["%"]
_MM = 1000
_LONGER = "; then it stays longer, and how far it pulls cannot be said by this."


def clamping(group: FastenerGroup, step: Step, volume: Volume, wording: Wording) -> Iterator[tuple[str, Text]]:
    """Yield the clamp force of a group, what its turn adds, and the force at which its tapped hole strips."""
    wrenches = able(held(step, volume.scope), group)
    load, turn = clamp_of(group, wrenches), turn_of(group)
    if load is not None:
        tools = [one.wrench for one in wrenches]
        yield "Clamp force", (*_load(load, wording), Words(f", {_assumed(group, tools)}{_before(group, turn)}."))
    if turn is not None:
        yield "Turn", _turned(group, turn, load, wording)
    strips = stripping_of(group)
    if strips is not None and group.tapped is not None:
        yield "Tapped hole", _strips(group.tapped.material, strips, load, wording)


def _load(load: BoltLoad, wording: Wording) -> Text:
    share = f"{math.floor(100 * load.least_share)} to {math.ceil(100 * load.greatest_share)}\u00a0%"
    bears = f"{doubt('bolt_load', 'proof_load')}: {share} of what the bolt bears (its proof load)"
    return (_force(load.least_newton, load.greatest_newton, wording), Words(bears))


def _assumed(group: FastenerGroup, wrenches: list[Tool]) -> str:
    resists = [("a friction", group.friction), ("a nut factor K", group.nut_factor)]
    told = [f"at {name} of {spell(one.value)}" for name, one in resists if one is not None and one.value is not None]
    return f"{told[0] if told else ''}{_off(wrenches)}"


def _off(wrenches: list[Tool]) -> str:
    """Return how far the worst of the wrenches may be off, in words."""
    amounts = [amount for one in wrenches if (amount := _amount(one.accuracy)) is not None]
    if amounts:
        return f" and a wrench that may be off by {joined([spell(one) for one in amounts], 'or')}"
    if not wrenches:
        return ", with no error of a wrench counted"
    worst = max(wrenches, key=share_off)
    share = spell(quantity_of(exactly(share_off(worst)), _PERCENT, 0))
    stated = worst.accuracy.value if worst.accuracy is not None else None
    if most_off(stated) is not None:
        return f" and a wrench that may be off by {share}"
    mark = doubt("wrench_fit.permissible_deviation")
    return f" and a wrench that is off by {share} at most, as ISO 6789 permits{mark}"


def _before(group: FastenerGroup, turn: Turn | None) -> str:
    return f", before the turn of {spell(group.stages[-1])}" if turn is not None else ""


def _turned(group: FastenerGroup, turn: Turn, load: BoltLoad | None, wording: Wording) -> Text:
    """Return what a turn does, as far as bolt and joint spring back: beyond the proof load no number holds."""
    drawn = _drawn(turn, wording)
    if turn.least_newton is None or turn.greatest_newton is None:
        return (*drawn, Words(f". How much force that adds depends on {_missing(group, turn)}."))
    thread = metric_thread(group.thread)
    proof = proof_load_newton(thread, group.strength) if thread is not None and group.strength is not None else None
    before = (0.0, 0.0) if load is None else (load.least_newton, load.greatest_newton)
    least, greatest = before[0] + turn.least_newton, before[1] + turn.greatest_newton
    if proof is None or greatest <= proof:
        total = (Words(" In all "), _force(least, greatest, wording), Words(".")) if load is not None else ()
        return (*drawn, *_added(_force(turn.least_newton, turn.greatest_newton, wording)), *total)
    bears = (_force(proof, proof, wording), Words(f" (its proof load){_LONGER}"))
    if least > proof:
        return (*drawn, Words(". It takes the bolt beyond what it bears, "), *bears)
    added = _force(turn.least_newton, min(turn.greatest_newton, proof - before[0]), wording, most=proof - before[0])
    reached = (Words(" In all at least "), _force(least, least, wording), Words(".")) if load is not None else ()
    earliest = math.floor(turn.degree * Fraction(max(0.0, proof - before[1]) / turn.greatest_newton))
    since = f" from {earliest}° on" if load is not None and earliest else ""
    may = Words(f" It may go beyond what the bolt bears{since}, ")
    return (*drawn, *_added(added), *reached, may, *bears)


def _missing(group: FastenerGroup, turn: Turn) -> str:
    """Return in words what keeps the force of a turn from being known."""
    if turn.endless:
        return "how far it is turned, and no most is stated"
    grip = group.grip.value if group.grip is not None else None
    stated = f"stated only as {spell(grip)}" if grip is not None else "not stated"
    return f"the length that is clamped, which is {stated}"


def _drawn(turn: Turn, wording: Wording) -> Text:
    """Return by how much the turn draws head and nut together, in all and for each degree."""
    at_least = "at least " if turn.endless else ""
    whole, each = (_length(mm, wording) for mm in (turn.take_up_mm, turn.take_up_mm / turn.degree))
    return (
        Words(f"draws head and nut together by {at_least}"),
        whole,
        Words(", "),
        each,
        Words(" for each degree"),
    )


def _added(force: Amount) -> Text:
    mark = doubt("tightening_angle.take_up", "tightening_angle.force")
    return (Words(", about "), force, Words(f" more{mark}, with bolt and joint of steel that spring back."))


def _strips(material: str, strips: float, load: BoltLoad | None, wording: Wording) -> Text:
    """Return at which force the hole strips, and how near the torque may come to it."""
    mark = doubt("thread_engagement", "thread_engagement.loosest")
    told = (
        Words(f"{capital(material)} strips at about "),
        _force(strips, strips, wording),
        Words(f"{mark}, if every thread that is counted is whole"),
    )
    if load is None:
        return (*told, Words(". Never pull beyond the maximum."))
    share = f"{math.ceil(100 * load.greatest_newton / strips)}\u00a0%"
    return (*told, Words(f". The torque may reach {share} of that, so never pull beyond the maximum."))


def _force(least: float, greatest: float, wording: Wording, most: float = math.inf) -> Amount:
    """Return a span of force in the shop's first unit of force, kN for N; two digits, rounded apart.

    A span that reaches `most` ends there, and is rounded down to it: beyond it no number holds.
    """
    unit = next(iter(wording.units_of(Dimension.FORCE)), _KILONEWTON)
    unit = _KILONEWTON if unit.symbol == "N" else unit
    low, high = Fraction(least) / unit.factor, Fraction(greatest) / unit.factor
    places = places_for_value(low)
    lowest = down(low, places)
    highest = lowest if low == high else max(lowest, (down if greatest >= most else up)(high, places))
    return Amount(spell(_quantity(lowest, highest, unit, places)))


def _quantity(low: Fraction, high: Fraction, unit: Unit, places: int) -> Quantity:
    return quantity_of(Interval(low * unit.factor, high * unit.factor), unit, places)


def _amount(accuracy: Specification | None) -> Quantity | None:
    """Return an accuracy that is stated as a torque, and limited."""
    value = accuracy.value if accuracy is not None else None
    return value if value is not None and value.dimension is Dimension.TORQUE and most_off(value) is not None else None


def _length(mm: Fraction, wording: Wording) -> Amount:
    length = quantity_of(exactly(mm / _MM), UNITS["mm"], places_for_value(mm))
    return Amount(wording.amount(length).first)
