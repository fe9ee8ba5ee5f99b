"""How many hands and how much time a job takes: what its author states for all of it, and what its parts add up to."""

from __future__ import annotations

from fractions import Fraction

from authoring.booklet.plan import Plan, Volume
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Named, Text, Words
from authoring.quantities.convert import convert
from authoring.quantities.quantity import Quantity
from authoring.quantities.read import read_quantity
from authoring.quantities.units import Dimension


def hands(plan: Plan) -> Text:
    """Return the number of persons, and the steps that more than one do together; nothing where nothing is said."""
    whole = plan.main.procedure.persons
    if not whole:
        return ()
    shared = [
        Named(placed.number, placed.anchor)
        for volume in plan.volumes
        for placed in volume.steps()
        if (placed.step.persons or 1) > 1 or (placed.step.holding is not None and placed.step.holding.by == "helper")
    ]
    words: list[Inline] = [Words(str(whole))]
    for place, step in enumerate(shared):
        before = f"; together at step{'s' if len(shared) > 1 else ''} " if place == 0 else ", "
        words += [Words(before), step]
    return tuple(words)


def duration(volume: Volume, wording: Wording) -> Text:
    """Return the time of the job as stated, and beside it what the sections add up to, as far as they state one."""
    stated = volume.procedure.time
    words: list[Inline] = [wording.amount(stated)] if stated is not None else []
    times = [section.time for section, _, _ in volume.sections if section.time is not None]
    total = _sum(times)
    # What reads the same is the same: 9 h and 540 min are one time in the shop's unit.
    if total is not None and wording.amount(total) not in words:
        count = len(volume.sections)
        over = "the sections together" if len(times) == count else f"{len(times)} of {count} sections together"
        words += [Words(f"; {over} " if words else f"{over} "), wording.amount(total)]
    return tuple(words)


def _sum(times: list[Quantity]) -> Quantity | None:
    """Return the sum of some times in the unit of the first, a window where one of them is; None without any."""
    ends = [(time, time.nominal or time.low, time.nominal or time.high) for time in times]
    if not ends or any(low is None or high is None for _, low, high in ends):
        return None
    unit = times[0].unit
    low = sum((convert(low, time.unit, unit) for time, low, _ in ends if low is not None), Fraction(0))
    high = sum((convert(high, time.unit, unit) for time, _, high in ends if high is not None), Fraction(0))
    text = f"{float(low):g}" if low == high else f"{float(low):g} to {float(high):g}"
    read = read_quantity(f"{text} {unit.symbol}", Dimension.TIME)
    return read if isinstance(read, Quantity) else None
