"""The order in which the steps of a job are come to: as they are written, and what a way back repeats once more.

Once is enough for what only grows on the way: what runs, is up or is hot at the end of the first round is so at the
beginning of the second, and a third round begins no otherwise.
"""

from __future__ import annotations

from collections.abc import Iterator

from authoring.model.course import seen, targets
from authoring.model.procedure import Procedure, Section, Step


def passes(procedure: Procedure) -> Iterator[tuple[Section, Step]]:
    """Yield each step with its section in this order; after the last step of a way back, its steps come again."""
    steps = list(procedure.steps())
    back = _ways_back(procedure)
    for place, both in enumerate(steps):
        yield both
        if place in back:
            yield from steps[back[place] : place + 1]


def _ways_back(procedure: Procedure) -> dict[int, int]:
    """Return for the number of each step after which the job may lead back the earliest step it leads to."""
    known = targets(procedure)
    found: dict[int, int] = {}
    for one in seen(procedure):
        target = known.get(one.outcome.to or "") if one.outcome.then == "go-to" else None
        if target is not None and target.first <= one.last:
            found[one.last] = min(target.first, found.get(one.last, one.last))
    begin = 0
    for section in procedure.sections:
        end = begin + len(section.steps) - 1
        if section.repeat is not None:
            found[end] = min(begin, found.get(end, end))
        begin = end + 1
    return found
