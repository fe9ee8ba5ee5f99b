"""Findings as JSON for a program: an editor, a check in version control, a report."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

    from authoring.diagnostics.diagnostic import Diagnostic, Span

FORMAT = 1


def as_json(findings: Sequence[Diagnostic]) -> str:
    """Return one JSON object, in ASCII, ending with a line end; the same findings give the same bytes.

    Its keys are `format`, the number of this description, raised when a key changes its meaning, and
    `findings`, a list in the order given.
    A finding has `rule`, `severity` ("error", "warning" or "note"), `message`, `cure` (may be empty), `fitments`,
    its place and `related`, a list of objects with `message` and a place.
    `fitments` says which vehicles the finding concerns, such as "parking brake: disc brake; axle: wide axle"; it is
    empty where it concerns every vehicle that its file is for, or none, as an error of YAML does.
    A place is `file` (inside the library, with forward slashes), `line`, `column`, `end_line` and `end_column`,
    counted from 1, columns in characters, the end column being the first behind the stretch.
    """
    found = {"format": FORMAT, "findings": [_finding(finding) for finding in findings]}
    return json.dumps(found, indent=2) + "\n"


def _finding(finding: Diagnostic) -> dict[str, object]:
    return {
        "rule": finding.rule,
        "severity": finding.severity.value,
        "message": finding.message,
        "cure": finding.cure,
        "fitments": finding.fitments,
        **_place(finding.span),
        "related": [{"message": other.message, **_place(other.span)} for other in finding.related],
    }


def _place(span: Span) -> dict[str, object]:
    return {
        "file": span.file,
        "line": span.line,
        "column": span.column,
        "end_line": span.end_line,
        "end_column": span.end_column,
    }
