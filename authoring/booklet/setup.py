"""What must be ready before the job: lists derived from the steps, never typed."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping

from authoring.booklet.blocks import Block, Cell, Chapter, Table
from authoring.booklet.plan import Plan, Volume
from authoring.booklet.steps import decided_by
from authoring.booklet.wording import Wording
from authoring.booklet.words import Text, Words
from authoring.model.action_kind import Kind
from authoring.model.procedure import Choice
from authoring.model.things import Consumable, Fluid, Part, Tool, Value, When


def setup(plan: Plan, wordings: Mapping[str, Wording]) -> Chapter:
    """Return the chapter of conditions, tools, parts, consumables and fluids."""
    blocks: tuple[Block, ...] = (
        conditions(plan.main, wordings[plan.main.procedure.number]),
        _table("tools", "Tools", ("Tool", "Where"), (62, 28), _tools(plan), "No tool is needed."),
        _table("parts", "Parts", ("Part", "Number", "Quantity"), (48, 26, 16), _parts(plan, wordings), "No part."),
        _table("consumables", "Consumables", ("Consumable", "Limits"), (36, 54), _consumables(plan), "None."),
        _table("fluids", "Fluids", ("Fluid", "Kind", "Amount"), (28, 38, 24), _fluids(plan, wordings), "None."),
    )
    return Chapter("setup", "", "Before you start", 1, blocks, new_page=True)


def _table(
    anchor: str,
    title: str,
    heads: tuple[str, ...],
    widths: tuple[int, ...],
    rows: Iterable[tuple[Text, ...]],
    empty: str,
) -> Table:
    """Return a list with a box to tick at the end of each row."""
    ticked = tuple((*(Cell(text) for text in row), Cell(tick=True)) for row in rows)
    return Table(anchor, title, (*heads, "Ready"), ticked, (*widths, 10), empty)


def conditions(volume: Volume, wording: Wording) -> Table:
    """Return what must be so before a procedure starts; an annex has its own, which hold when it is reached."""
    rows = ((wording.line(condition.so),) for condition in volume.procedure.conditions or ())
    anchor = f"conditions-{volume.letter.lower()}" if volume.letter else "conditions"
    return _table(anchor, "Conditions", ("So it must be",), (90,), rows, "No condition is set.")


def used(plan: Plan) -> Iterator[tuple[str, Kind, Volume]]:
    """Yield every thing the steps of a booklet use, once, in the order they are met."""
    seen: set[str] = set()
    for volume in plan.volumes:
        for placed in volume.steps():
            names = [*placed.step.uses, *(name for action in placed.step.actions for _, name in action.names())]
            for name in names:
                if name not in seen:
                    seen.add(name)
                    yield name, volume.scope.things[name].kind, volume


def _tools(plan: Plan) -> Iterator[tuple[Text, ...]]:
    for name, _, volume in used(plan):
        tool = volume.scope.things[name].thing
        if isinstance(tool, Tool):
            yield (Words(tool.name),), (Words(tool.place or ""),)


def _parts(plan: Plan, wordings: Mapping[str, Wording]) -> Iterator[tuple[Text, ...]]:
    counts: dict[str, tuple[Part, When, int, Wording]] = {}
    for volume in plan.volumes:
        for placed, action in volume.actions():
            for name in action.what if action.kind.counted else ():
                for part, when in _candidates(name, volume, placed.step.when):
                    _, _, before, _ = counts.get(part.id, (part, when, 0, None))
                    counts[part.id] = (part, when, before + action.count, wordings[volume.procedure.number])
    for part, when, count, wording in counts.values():
        place = f", {part.place}" if part.place else ""
        mark = ", new each time" if part.one_time else ""
        yield (
            (Words(f"{part.name}{mark}{place}{decided_by(when, wording)}"),),
            (Words(part.number),),
            (Words(str(count)),),
        )


def _candidates(name: str, volume: Volume, when: When) -> Iterator[tuple[Part, When]]:
    thing = volume.scope.things[name].thing
    if isinstance(thing, Part):
        yield thing, when
    elif isinstance(thing, Choice):
        for one in thing.parts:
            part = volume.scope.things[one.part].thing
            if isinstance(part, Part) and volume.holds(one.when):
                yield part, one.when


def _consumables(plan: Plan) -> Iterator[tuple[Text, ...]]:
    for name, _, volume in used(plan):
        thing = volume.scope.things[name].thing
        if isinstance(thing, Consumable):
            yield (Words(thing.name),), (Words(thing.limits or ""),)


def _fluids(plan: Plan, wordings: Mapping[str, Wording]) -> Iterator[tuple[Text, ...]]:
    amounts: dict[str, tuple[Fluid, Text]] = {}
    for volume in plan.volumes:
        wording = wordings[volume.procedure.number]
        for _, action in volume.actions():
            for name in action.what:
                fluid = volume.scope.things[name].thing
                if isinstance(fluid, Fluid) and action.kind.pours:
                    amounts.setdefault(name, (fluid, ()))
                    amounts[name] = (
                        fluid,
                        _more(amounts[name][1], _amount(action.roles.get("amount"), volume, wording)),
                    )
    for fluid, amount in amounts.values():
        yield (Words(fluid.name),), (Words(fluid.kind),), amount or (Words("as the level needs"),)


def _amount(name: str | None, volume: Volume, wording: Wording) -> Text:
    if name is None or not isinstance(volume.scope.things[name].thing, Value):
        return (Words("as the level needs"),)
    return wording.amount_of(volume.scope.things[name])


def _more(before: Text, text: Text) -> Text:
    return (*before, Words(", then "), *text) if before else text
