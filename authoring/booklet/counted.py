"""How much comes back in all, for each group of vehicles of which the count differs."""

from __future__ import annotations

from collections.abc import Sequence

from msgspec import Struct

from authoring.booklet.blocks import Cell, Table
from authoring.booklet.by_vehicle import Vehicles, any_of
from authoring.booklet.count import Line, count
from authoring.booklet.phrases import capital
from authoring.booklet.plan import Placed, Plan
from authoring.booklet.wording import Wording
from authoring.booklet.words import Words
from authoring.diagnostics.words import joined
from authoring.model.fitments import Fitment

_TOO_MANY = "There are too many kinds of vehicle to count for each: count the lines that are for yours."


class _Counted(Struct, frozen=True):
    """What one kind of vehicle counts: of each line its words, its fasteners (0 if it is none), and whether always."""

    lines: tuple[tuple[str, int, bool], ...]

    @property
    def things(self) -> str:
        """How many lines are no fasteners."""
        return _span([(1, always) for _, fasteners, always in self.lines if not fasteners])

    @property
    def fasteners(self) -> str:
        """How many fasteners there are."""
        return _span([(fasteners, always) for _, fasteners, always in self.lines])


def in_all(plan: Plan, lines: Sequence[Line], wording: Wording) -> tuple[str, tuple[Table, ...]]:
    """Return the sentence on how much comes back, or the table of it where that differs from vehicle to vehicle."""
    vehicles = Vehicles(plan.main, [placed.when for line in lines for placed in line.off])
    groups = vehicles.grouped(lambda machine: _counted(plan, machine))
    if not lines:
        return "", ()
    if not groups:
        return _TOO_MANY, ()
    if len(groups) == 1:
        [one] = groups
        return f"In all: {_things(one)}.", ()
    shared = set.intersection(*({words for words, _, _ in one.lines} for one in groups))
    rows = tuple(
        (
            Cell((Words(capital(any_of(whens, wording)), "strong"),)),
            Cell((Words(one.things),)),
            Cell((Words(one.fasteners),)),
            Cell((Words(joined([words for words, _, _ in one.lines if words not in shared]) or "nothing"),)),
            Cell(tick=True),
        )
        for one, whens in groups.items()
    )
    heads = ("Vehicle", "Things", "Fasteners", "Not on every vehicle", "Counted")
    return "", (Table("count-in-all", "How much that is in all", heads, rows, (31, 10, 12, 36, 11), numeric=(1, 2)),)


def _things(one: _Counted) -> str:
    counts = (("thing", one.things), ("fastener", one.fasteners))
    return joined([f"{count} {word}{'' if count == '1' else 's'}" for word, count in counts if count != "0"], "and")


def _counted(plan: Plan, machine: Fitment) -> _Counted:
    own = Plan(plan.library, plan.main.procedure, {**plan.selection, **machine})
    # A place that was left empty on purpose is no thing that comes back.
    return _Counted(tuple((line.words, line.count or 0, _always(line)) for line in count(own) if line.off))


def _always(line: Line) -> bool:
    """Tell whether a thing comes off on every way through the job: in a step that is always done, or by each method."""
    found: dict[str, tuple[int, set[str]]] = {}
    for placed in line.off:
        method = placed.step.method
        if method is None and not _by_chance(placed):
            return True
        if method is not None:
            found.setdefault(placed.shared, (method.count, set()))[1].add(method.letter)
    return any(len(taken) == of for of, taken in found.values())


def _by_chance(placed: Placed) -> bool:
    step, section = placed.step, placed.section
    return bool(step.if_done or step.unless_done or step.optional is not None or section.optional is not None)


def _span(counts: Sequence[tuple[int, bool]]) -> str:
    least, most = sum(one for one, always in counts if always), sum(one for one, _ in counts)
    return str(most) if least == most else f"{least} to {most}"
