"""What stands behind the work: torques, the history of revisions, the last line."""

from __future__ import annotations

from collections.abc import Mapping

from authoring.booklet.blocks import Cell, Chapter, End, Table
from authoring.booklet.front import full_name
from authoring.booklet.plan import Plan
from authoring.booklet.torques import torque_table
from authoring.booklet.wording import Wording
from authoring.booklet.words import Text, Words

END = "END OF PROCEDURE"


def torques(plan: Plan, wordings: dict[str, Wording]) -> tuple[Chapter, ...]:
    """Return the chapter with every torque in one table; none where nothing is tightened to one."""
    table = torque_table(plan, wordings)
    return (Chapter("torques", "", "Torque table", 1, (table,)),) if table.rows else ()


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
