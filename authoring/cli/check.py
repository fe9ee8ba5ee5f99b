"""`bayleaf check`: say what is wrong in a library."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence

from authoring.cli.disk import read_library
from authoring.cli.terminal import count, wants_colour
from authoring.cli.version import VERSION
from authoring.diagnostics.diagnostic import Diagnostic, Severity
from authoring.pipeline import Checked, check
from authoring.rules.rule import all_rules

MOST = 200
"""So many findings are shown to people; more would only scroll the first ones away."""


def run(arguments: argparse.Namespace) -> int:
    """Check the library and print the findings; return the exit status."""
    checked = check(*read_library(arguments.library))
    if arguments.format == "json":
        from authoring.diagnostics.as_json import as_json  # noqa: PLC0415  # a check for people needs no JSON

        print(as_json(checked.findings), end="")
    elif arguments.format == "sarif":
        print(_sarif(checked))
    else:
        show(checked)
    return status(checked.findings, strict=arguments.strict)


def _sarif(checked: Checked) -> str:
    from authoring.diagnostics.as_sarif import About, as_sarif  # noqa: PLC0415  # a check for people needs no SARIF

    about = {
        rule.id: About(rule.page.splitlines()[0], rule.page, rule.severity, rule.requirements)
        for rule in all_rules().values()
    }
    return as_sarif(checked.findings, about, VERSION)


def show(checked: Checked) -> None:
    """Print findings for people, and how many there are."""
    if checked.findings:
        from authoring.diagnostics.text import as_text  # noqa: PLC0415  # a sound library has no excerpt to set

        print(as_text(checked.findings[:MOST], checked.sources, colour=wants_colour(sys.stdout)), end="")
        if len(checked.findings) > MOST:
            print(f"{len(checked.findings) - MOST} more are not shown; mend these first, or ask for --format json.\n")
    procedures = len(checked.library.procedures)
    print(f"{procedures} procedure{'' if procedures == 1 else 's'} checked: {count(checked.findings)}.")


def status(findings: Sequence[Diagnostic], *, strict: bool) -> int:
    """Return 1 when a finding stops the build, else 0."""
    stops = {Severity.ERROR, Severity.WARNING} if strict else {Severity.ERROR}
    return int(any(finding.severity in stops for finding in findings))
