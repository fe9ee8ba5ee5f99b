"""The form on which a reader reports what is wrong with the booklet."""

from __future__ import annotations

from authoring.booklet.blocks import Chapter, Form, FormLine
from authoring.booklet.front import person
from authoring.booklet.plan import Plan
from authoring.booklet.words import Words

_ASK = (
    "When the machine, a value or a step is not as this booklet says, stop and ask. "
    "Then fill in this form, so that the next revision is right."
)


def report(plan: Plan) -> Chapter:
    """Return the form, addressed to whoever approved the revision."""
    procedure, revision = plan.main.procedure, plan.main.procedure.revision
    rows = (
        FormLine("To", (Words(person(plan.main, revision.approver)),)),
        FormLine("Booklet", (Words(f"{procedure.number}, revision {revision.letter}, {revision.date}"),)),
        FormLine("Step", lines=1),
        FormLine("What is wrong", lines=3),
        FormLine("What was done instead", lines=2),
        FormLine("Name and date", lines=1),
    )
    return Chapter("report", "", "Report a fault", 1, (Form("report-form", "Fault report", rows, _ASK),))
