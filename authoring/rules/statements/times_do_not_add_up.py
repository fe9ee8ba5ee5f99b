"""The times of the sections and the time of the procedure do not agree.

A lift is booked by the cover and used by the sections; an hour that stands in one of them only is an hour too few.
Where every section says how long it takes, the time of the procedure lies between two sums: the smallest that a
vehicle has without what may be skipped, and the largest that a vehicle has with it.
Sections that no vehicle has together are not added up; the cover does the same.
Where only some sections say it, what a vehicle has at least takes no longer than the procedure.

Wrong:

```yaml procedure
time: 20 min   #! times-do-not-add-up
sections:
  - title: Wipe
    time: 15 min
    steps:
      - do: [{clean: drop-box}]
  - title: Wipe again
    time: 10 min
    steps:
      - do: [{clean: drop-box}]
```

Right:

```yaml procedure
time: 20 min
sections:
  - title: Wipe
    time: 15 min
    steps:
      - do: [{clean: drop-box}]
  - title: Wipe again
    time: 5 min
    steps:
      - do: [{clean: drop-box}]
```
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from fractions import Fraction

from authoring.diagnostics.diagnostic import Related, Severity
from authoring.model.lacking import laid_out
from authoring.model.library import Library
from authoring.model.procedure import Procedure, Section
from authoring.model.runs import runs
from authoring.model.stated import stated
from authoring.quantities.quantity import Quantity
from authoring.rules.rule import Fault

# A time is an estimate, and an author may leave room on purpose.
SEVERITY = Severity.WARNING
REQUIREMENTS = ("A4", "N17")
ABOUT = ("section-time",)

_MINUTE = 60


def check(procedure: Procedure, library: Library) -> Iterator[Fault]:
    """Yield a fault where no vehicle's sections take as long as the procedure says."""
    vehicle = library.scope(procedure).vehicle
    timed = [section for section in procedure.sections if section.time is not None]
    refused = any(section.time is None and stated(section.where, "time") for section in procedure.sections)
    if vehicle is None or procedure.time is None or not timed or refused:
        return
    low, high = _window(procedure.time)
    space = laid_out(vehicle, procedure.covers, [section.when for section in timed])
    if space is None:
        return
    courses = [course for course, _ in runs(((one, space.where(one.when)) for one in timed), space.every)]
    if not courses:
        return
    least = min(_total([one for one in course if not one.optional])[0] for course in courses)
    most = max(_total(course)[1] for course in courses)
    too_long = high is not None and least > high
    too_short = low is not None and most < low and len(timed) == len(procedure.sections)
    if too_long or too_short:
        yield Fault(
            f"{_sums(least, most, timed)}, but the procedure says {procedure.time.text}.",
            procedure.where.of("time"),
            "Correct the time of the procedure, or that of a section.",
            tuple(Related(section.where.of("time"), "part of it") for section in timed),
        )


def _sums(least: Fraction, most: Fraction, timed: Sequence[Section]) -> str:
    """Return both sums in words, or one where they are the same."""
    if least == most:
        return f"The sections take {_said(most)} together"
    skipped = " without what may be skipped" if any(section.optional for section in timed) else ""
    whom = " of one vehicle" if any(section.when for section in timed) else ""
    return f"The sections{whom} take {_said(least)} together at the least{skipped}, and {_said(most)} at the most"


def _window(time: Quantity) -> tuple[Fraction | None, Fraction | None]:
    """Return the least and the most seconds; None where there is no limit."""
    ends = (time.nominal, time.nominal) if time.low is None and time.high is None else (time.low, time.high)
    low, high = (None if end is None else end * time.unit.factor for end in ends)
    return low, high


def _total(sections: Sequence[Section]) -> tuple[Fraction, Fraction]:
    """Return the least and the most seconds that these sections take; a limit that is not stated is the other one."""
    least = most = Fraction(0)
    for section in sections:
        low, high = _window(section.time) if section.time is not None else (None, None)
        first, last = (high if low is None else low), (low if high is None else high)
        least += first or 0
        most += last or 0
    return least, most


def _said(seconds: Fraction) -> str:
    minutes = round(seconds / _MINUTE, 1)
    return f"{float(minutes):g} min"
