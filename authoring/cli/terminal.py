"""The terminal: findings counted in words, progress where somebody waits."""

from __future__ import annotations

import sys
from collections.abc import Sequence

from authoring.diagnostics.diagnostic import Diagnostic, Severity


def count(findings: Sequence[Diagnostic]) -> str:
    """Return how many errors, warnings and notes there are, in words."""
    told = []
    for severity in Severity:
        number = sum(finding.severity is severity for finding in findings)
        if number:
            told.append(f"{number} {severity.value}{'' if number == 1 else 's'}")
    return ", ".join(told) if told else "no finding"


def progress(text: str) -> None:
    """Show what is being done, in place, on a terminal only; an empty text clears the line."""
    if sys.stderr.isatty():
        print(f"\r\x1b[K{text}", end="", file=sys.stderr, flush=True)
