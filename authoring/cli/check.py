"""`bayleaf check`: say what is wrong in a library."""

from __future__ import annotations

import argparse
from collections.abc import Sequence

from authoring.checking.together import Outcome
from authoring.cli.answer import keep_answer, listing_of
from authoring.cli.checked import check_library
from authoring.cli.colour import wants_colour
from authoring.cli.disk import texts
from authoring.cli.terminal import count
from authoring.cli.version import VERSION
from authoring.diagnostics.diagnostic import Diagnostic, Severity
from authoring.rules.rule import all_rules

MOST = 200
"""So many findings are shown to people; more would only scroll the first ones away."""


def run(arguments: argparse.Namespace) -> int:
    """Check the library and print the findings; return the exit status."""
    # Listed before it is read, so that a change meanwhile shows at the next check.
    listing = listing_of(arguments.library) if arguments.library else None
    checked = check_library(arguments.library)
    if arguments.format == "json":
        from authoring.diagnostics.as_json import as_json  # noqa: PLC0415  # a check for people needs no JSON

        said = as_json(checked.outcome.findings)
    elif arguments.format == "sarif":
        said = f"{_sarif(checked.outcome.findings)}\n"
    else:
        said = told(checked.outcome, arguments.library)
    print(said, end="")
    statuses = (status(checked.outcome.findings, strict=False), status(checked.outcome.findings, strict=True))
    if listing is not None:
        keep_answer(listing, arguments.format, said, statuses, checked.digests)
    return statuses[arguments.strict]


def _sarif(findings: Sequence[Diagnostic]) -> str:
    from authoring.diagnostics.as_sarif import About, as_sarif  # noqa: PLC0415  # a check for people needs no SARIF

    about = {
        rule.id: About(rule.page.splitlines()[0], rule.page, rule.severity, rule.requirements)
        for rule in all_rules().values()
    }
    return as_sarif(findings, about, VERSION)


def told(outcome: Outcome, library: str) -> str:
    """Return findings for people, and how many there are."""
    findings = outcome.findings
    said = ""
    if findings:
        from authoring.diagnostics.text import as_text  # noqa: PLC0415  # a sound library has no excerpt to set

        shown = findings[:MOST]
        spans = [span for one in shown for span in (one.span, *(other.span for other in one.related))]
        said = as_text(shown, texts(library, {span.file for span in spans}), colour=wants_colour())
        if len(findings) > MOST:
            said += f"{len(findings) - MOST} more are not shown; mend these first, or ask for --format json.\n\n"
    number = outcome.procedures
    return f"{said}{number} procedure{'' if number == 1 else 's'} checked: {count(findings)}.\n"


def status(findings: Sequence[Diagnostic], *, strict: bool) -> int:
    """Return 1 when a finding stops the build, else 0."""
    stops = {Severity.ERROR, Severity.WARNING} if strict else {Severity.ERROR}
    return int(any(finding.severity in stops for finding in findings))
