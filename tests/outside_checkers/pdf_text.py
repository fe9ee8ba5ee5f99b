"""Poppler's pdftotext: which words stand on which page, by an eye other than the writer's."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.outside_checkers.program import output, program


def pdf_text(path: Path, *, lines: bool = False) -> list[str]:
    """Return the text of each page of the file; with `lines`, what stands on one line of the paper stays on one."""
    told = output(program("pdftotext"), *(["-layout"] if lines else []), "-enc", "UTF-8", path, "-")
    if told.returncode != 0:
        pytest.fail(f"pdftotext could not read {path.name}: {told.stderr}")
    # A form feed ends each page, so what follows the last one is empty.
    return told.stdout.split("\f")[:-1]
