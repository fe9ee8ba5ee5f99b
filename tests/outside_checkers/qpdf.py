"""qpdf: is a PDF's syntax sound, so that any reader can open it?"""

from __future__ import annotations

from pathlib import Path

from tests.outside_checkers.program import output, program


def qpdf(path: Path) -> list[str]:
    """Return qpdf's complaints about the file's syntax and streams, one a line; empty when it is sound."""
    told = output(program("qpdf"), "--check", path)
    if told.returncode == 0:
        return []
    return told.stderr.splitlines() or [f"qpdf ended with status {told.returncode} and no message"]
