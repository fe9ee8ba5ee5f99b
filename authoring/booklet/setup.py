"""What must be ready before the job: lists derived from the steps, never typed."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.blocks import Block, Cell, Chapter, Table
from authoring.booklet.parts import parts
from authoring.booklet.plan import Plan, Volume
from authoring.booklet.pouring import pourings
from authoring.booklet.ready import ready
from authoring.booklet.states import states
from authoring.booklet.tools import Drawings, tools
from authoring.booklet.wording import Wording
from authoring.booklet.words import Named, Text, Words
from authoring.model.things import Consumable


def setup(plan: Plan, wordings: Mapping[str, Wording], drawings: Drawings) -> Chapter:
    """Return the chapter of conditions, states, tools, parts, consumables and fluids."""
    blocks: tuple[Block, ...] = (
        *conditions(plan.main, wordings[plan.main.procedure.number]),
        *stops(plan, wordings),
        tools(plan, drawings),
        parts(plan, wordings),
        _consumables(plan),
        ready("fluids", "Fluids", ("Fluid", "Kind", "Amount"), (28, 38, 24), pourings(plan, wordings), "None."),
    )
    return Chapter("setup", "", "Before you start", 1, blocks)


def conditions(volume: Volume, wording: Wording) -> Iterator[Table]:
    """Yield what must be so before a procedure starts; an annex has its own, which hold when it is reached."""
    procedure = volume.procedure
    mark = f"-{volume.letter.lower()}" if volume.letter else ""
    rows = []
    for condition in procedure.conditions or ():
        if volume.holds(condition.when):
            applies = wording.applies(condition.when)
            only: Text = (Words(f"{applies}: "),) if applies else ()
            by: Text = (Words("By "), *wording.named(condition.by), Words(".")) if condition.by else ()
            after = wording.line(condition.afterwards) if condition.afterwards else ()
            rows.append(((*only, *wording.line(condition.so)), (*by, *((Words(" "),) if by and after else ()), *after)))
    if any(more for _, more in rows):
        heads, widths = ("So it must be", "How, and what becomes of it"), (50, 40)
        yield ready(f"conditions{mark}", "Conditions", heads, widths, rows)
    else:
        plain = ((so,) for so, _ in rows)
        yield ready(f"conditions{mark}", "Conditions", ("So it must be",), (90,), plain, "No condition is set.")
    if procedure.needs:
        heads = ("What", "Must be")
        yield ready(f"needs{mark}", "The machine", heads, (46, 44), states(procedure.needs, volume.scope, wording))


def stops(plan: Plan, wordings: Mapping[str, Wording]) -> Iterator[Table]:
    """Yield the list of the places where it is safe to stop, if any is stated."""
    rows = tuple(
        (
            Cell((Words("after step "), Named(steps[-1].number, steps[-1].anchor))),
            Cell(wordings[volume.procedure.number].line(section.safe_to_stop)),
        )
        for volume in plan.volumes
        for section, _, steps in volume.sections
        if section.safe_to_stop
    )
    if rows:
        yield Table("stops", "Where it is safe to stop", ("Where", "How the machine is then left"), rows, (24, 76))


def _consumables(plan: Plan) -> Table:
    found = [named.thing for named, _ in plan.used if isinstance(named.thing, Consumable)]
    title, heads = "Consumables", ("Consumable", "Take", "Limits")
    rows = tuple(tuple((Words(text or ""),) for text in (one.name, one.take, one.limits)) for one in found)
    if any(one.take for one in found):
        return ready("consumables", title, heads, (28, 22, 40), rows)
    plain = tuple((name, limits) for name, _, limits in rows)
    return ready("consumables", title, (heads[0], heads[2]), (36, 54), plain, "None.")
