"""What stands behind the work: torques, sources, the history of revisions, the last line."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.blocks import Cell, Chapter, End, Table
from authoring.booklet.front import full_name
from authoring.booklet.plan import Plan, Volume
from authoring.booklet.torques import torque_table
from authoring.booklet.wording import Wording
from authoring.booklet.words import Text, Words
from authoring.model.procedure import Choice
from authoring.model.things import FastenerGroup, Fluid, Source, Specification, Value

END = "END OF PROCEDURE"
_KINDS = {
    "maker": "maker's data",
    "standard": "standard",
    "shop": "the shop's own measurement",
    "common-practice": "common practice, no published source",
}


def torques(plan: Plan, wordings: dict[str, Wording]) -> tuple[Chapter, ...]:
    """Return the chapter with every torque in one table; none where nothing is tightened to one."""
    table = torque_table(plan, wordings)
    return (Chapter("torques", "", "Torque table", 1, (table,)),) if table.rows else ()


def sources(plan: Plan) -> Chapter:
    """Return the chapter that lists the documents the values come from, and which values."""
    cited: dict[str, tuple[Source, list[str]]] = {}
    for volume in plan.volumes:
        for words, specification in _specifications(volume):
            source = volume.scope.sources.get(specification.source or "")
            if source is not None:
                told = f"{words}: {specification.at}" if specification.at else words
                cited.setdefault(source.id, (source, []))[1].append(told)
    rows = tuple(
        tuple(Cell(text) for text in _source_row(source, list(dict.fromkeys(values))))
        for source, values in cited.values()
    )
    table = Table(
        id="sources-table",
        title="Where each value comes from",
        heads=("Document", "Edition", "Values, and where they stand"),
        rows=rows,
        widths=(34, 18, 48),
        empty="This booklet states no value.",
        note="Read the value in the document when it matters; a booklet can be older than its sources.",
    )
    return Chapter("sources", "", "Sources", 1, (table,))


def _source_row(source: Source, values: list[str]) -> tuple[Text, Text, Text]:
    title: Text = (Words(source.title, "strong"), Words(f", {_KINDS[source.kind]}"))
    return title, (Words(source.edition or "not stated"),), (Words("; ".join(values)),)


def _specifications(volume: Volume) -> Iterator[tuple[str, Specification]]:
    for placed, action in volume.actions():
        named = [name for _, name in action.names()]
        named += [bracketed for bracketed in placed.step.uses if bracketed not in named]
        for name in named:
            thing = volume.scope.things[name].thing
            if isinstance(thing, FastenerGroup) and thing.torque is not None and action.kind.torque:
                yield f"torque of the {thing.name}", thing.torque
            elif isinstance(thing, Fluid) and thing.capacity is not None and action.kind.pours:
                yield f"capacity for {thing.name}", thing.capacity
            elif isinstance(thing, Choice):
                yield from (
                    (f"size of the {volume.scope.things[one.part].words}", one.stated)
                    for one in thing.parts
                    if one.stated
                )
            elif isinstance(thing, Value):
                yield thing.name, thing.specification


def revisions(plan: Plan, wordings: Mapping[str, Wording]) -> Chapter:
    """Return the history of revisions of the main procedure, and the revision of each procedure carried out."""
    rows = []
    for revision in plan.main.procedure.revisions:
        wording = wordings[plan.main.procedure.number]
        cells: tuple[Text, ...] = (
            (Words(revision.letter),),
            (Words(revision.date),),
            (Words(full_name(plan.main, revision.author)),),
            (Words(full_name(plan.main, revision.approver)),),
            wording.line(revision.reason),
        )
        rows.append(tuple(Cell(text) for text in cells))
    history = Table(
        id="revisions-table",
        title="Revision history",
        heads=("Revision", "Date", "Author", "Approver", "Reason"),
        rows=tuple(rows),
        widths=(13, 17, 20, 20, 30),
        note=_annexed(plan),
    )
    return Chapter("revisions", "", "Revisions", 1, (history, End(END)))


def _annexed(plan: Plan) -> str:
    told = [
        f"annex {volume.letter} is {volume.procedure.number} revision {volume.procedure.revision.letter}"
        for volume in plan.volumes
        if volume.letter
    ]
    text = "; ".join(told)
    return f"In this booklet, {text}." if text else ""
