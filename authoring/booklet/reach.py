"""How many hands and how much time a job takes: what its author states for all of it, and what its parts add up to."""

from __future__ import annotations

from fractions import Fraction

from authoring.booklet.plan import Plan, Volume
from authoring.booklet.wording import Wording
from authoring.booklet.words import Inline, Named, Text, Words
from authoring.model.lacking import laid_out
from authoring.model.runs import runs
from authoring.quantities.convert import convert
from authoring.quantities.quantity import Quantity
from authoring.quantities.read import read_quantity
from authoring.quantities.units import Dimension, Unit


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
    """Return the time of the job as stated, and beside it what the sections add up to, as far as they state one.

    Sections that no vehicle has together are not added up: it is a span where vehicles differ.
    """
    stated = volume.procedure.time
    words: list[Inline] = [wording.amount(stated)] if stated is not None else []
    times = [section.time for section, _, _ in volume.sections if section.time is not None]
    total = _span(_courses(volume))
    # What reads the same is the same: 9 h and 540 min are one time in the shop's unit.
    if total is not None and wording.amount(total) not in words:
        count = len(volume.sections)
        over = "the sections together" if len(times) == count else f"{len(times)} of {count} sections together"
        words += [Words(f"; {over} " if words else f"{over} "), wording.amount(total)]
    return tuple(words)


def _courses(volume: Volume) -> list[list[Quantity]]:
    """Return the times of the sections of each vehicle of this booklet; of all at once where there are too many."""
    timed = [(section.when, section.time) for section, _, _ in volume.sections if section.time is not None]
    covers = {**volume.procedure.covers, **{feature: (value,) for feature, value in volume.selection.items()}}
    vehicle = volume.scope.vehicle
    space = laid_out(vehicle, covers, [when for when, _ in timed]) if vehicle is not None else None
    marked = [(time, space.where(when)) for when, time in timed] if space is not None else []
    courses = runs(marked, space.every) if space is not None else []
    return [list(course) for course, _ in courses] or [[time for _, time in timed]]


def _span(courses: list[list[Quantity]]) -> Quantity | None:
    """Return the window from the shortest sum to the longest, in the unit of the first time.

    It is one value where all are the same, and None where no course has a time or one of the times has no end.
    """
    times = [time for course in courses for time in course]
    if not times or any(None in _ends(time) for time in times):
        return None
    unit = times[0].unit
    low = min(_sum(course, 0, unit) for course in courses if course)
    high = max(_sum(course, 1, unit) for course in courses if course)
    text = f"{float(low):g}" if low == high else f"{float(low):g} to {float(high):g}"
    read = read_quantity(f"{text} {unit.symbol}", Dimension.TIME)
    return read if isinstance(read, Quantity) else None


def _ends(time: Quantity) -> tuple[Fraction | None, Fraction | None]:
    return time.nominal or time.low, time.nominal or time.high


def _sum(course: list[Quantity], end: int, unit: Unit) -> Fraction:
    """Return the sum of the lower (0) or upper (1) ends of some times."""
    return sum((convert(_ends(time)[end] or Fraction(0), time.unit, unit) for time in course), Fraction(0))
