"""What may be found that somebody else decides, or that waits for the next job: a sheet to write on."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

from authoring.booklet.blocks import Block, Chapter, Form, FormLine
from authoring.booklet.plan import Plan
from authoring.booklet.ready import ready
from authoring.booklet.wording import Wording
from authoring.booklet.words import Named, Text, Words

_SHEETS = {
    "ask-customer": ("For the customer", "ask-customer", "What the customer decided"),
    "do-after": ("Jobs that follow", "jobs-after", "Which of these jobs is to be done, and when"),
    "next-time": ("For the next time", "next-time", "What was found, and where"),
}
"""For what follows from a finding: the title, the anchor, and what is written down."""


def findings(plan: Plan, wordings: Mapping[str, Wording]) -> tuple[Chapter, ...]:
    """Return the sheet with lines to write on; none where no finding asks for it."""
    blocks: list[Block] = []
    for then, (title, anchor, written) in _SHEETS.items():
        rows = tuple(_rows(then, plan, wordings))
        if rows:
            heads = ("Where", "What may be found", "What is said of it")
            blocks.append(ready(anchor, title, heads, (16, 34, 40), rows, box="Found"))
            lines = (FormLine("Notes", lines=3), FormLine("Name and date", lines=1))
            blocks.append(Form(f"{anchor}-notes", written, lines))
    return (Chapter("findings", "", "For the customer and the next time", 1, tuple(blocks)),) if blocks else ()


def _rows(then: str, plan: Plan, wordings: Mapping[str, Wording]) -> Iterator[tuple[Text, Text, Text]]:
    for volume in plan.volumes:
        wording = wordings[volume.procedure.number]
        for place, anchor, outcome in volume.outcomes():
            if outcome.then == then:
                said = wording.line(outcome.say) if outcome.say else ()
                job = (*wording.named(outcome.to), Words(". ")) if outcome.to is not None else ()
                yield (Named(place, anchor),), wording.line(outcome.found), (*job, *said)
