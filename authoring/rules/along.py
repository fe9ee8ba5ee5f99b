"""How a finding of the walk is told: where it stands, on which machines and ways, and the way that leads there."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from typing import Generic, TypeVar

from authoring.diagnostics.diagnostic import Related, Severity, Span
from authoring.model.mentions import touched
from authoring.model.space import Cells
from authoring.proof.job import Job
from authoring.proof.settings import Setting
from authoring.proof.story import Held, Story
from authoring.proof.track import Jump, Point
from authoring.rules.rule import Fault

MOST = 6
"""So many places of a way are shown, the last ones; more would hide the fault."""

Key = TypeVar("Key")


class Gathered(Generic[Key]):
    """What is wrong, by what tells one fault from another, with all machines and ways and the first way found."""

    def __init__(self) -> None:
        self._cells: dict[Key, Cells] = {}
        self._first: dict[Key, Held] = {}

    def note(self, key: Key, held: Held, cells: Cells) -> None:
        """Take some of the machines in a state for bad; there may be none."""
        if cells:
            self._cells[key] = self._cells.get(key, 0) | cells
            self._first.setdefault(key, held)

    def each(self) -> Iterator[tuple[Key, Held, Cells]]:
        """Yield what is wrong, a state that shows it, and all machines and ways."""
        for key, cells in self._cells.items():
            yield key, self._first[key], cells


def fault(
    sentence: str,
    span: Span,
    cure: str,
    told: tuple[Job, Story, Cells, Sequence[Point | Jump]],
    severity: Severity | None = None,
    beside: tuple[Related, ...] = (),
) -> Fault:
    """Return a fault; `sentence` has no full stop, and what shows the fault is told after it.

    `beside` are other places that belong to it, before those of the way that leads there.
    """
    job, story, cells, path = told
    shown = job.ways.shown(cells, story.space)
    return Fault(f"{sentence}{shown.whom}.", span, cure, (*beside, *related(path, span)), shown.fitments, severity)


def related(path: Sequence[Point | Jump], span: Span) -> Iterator[Related]:
    """Yield the last places of a way through the job, in order, without the place of the finding itself."""
    told = []
    for one in path:
        if isinstance(one, Jump):
            if one.outcome is not None:
                told.append(Related(one.outcome.where.span, "this is found"))
        elif one.action is not None:
            told.append(Related(one.action.where.span, "then this is done"))
        elif one.step is not None:
            told.append(Related(one.step.where.span, "this step leaves it so"))
    yield from (one for one in told[-MOST:] if one.span != span)


def span_of(point: Point, name: str) -> Span:
    """Return where a point names a thing; for what is carried out, the job's own step that leads to it."""
    if point.own and point.action is not None:
        named = [one.span for one in touched(point.action) if one.name == name]
        return named[0] if named else point.action.where.span
    step = point.top if point.top is not None else point.step
    if step is None:
        return point.procedure.where.span
    return step.where.of("step") if step.written else step.where.span


def told_by_itself(point: Point, settings: Iterable[Setting]) -> bool:
    """Tell whether a procedure that a job leads to shows the same fault when it is done alone, and so tells it."""
    if point.own:
        return False
    return all(_of(setting, point) for setting in settings)


def _of(setting: Setting, point: Point) -> bool:
    by = setting.by
    return by is None or (isinstance(by, Point) and by.chain == point.chain and by.within == point.within)
