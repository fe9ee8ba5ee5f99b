"""Poppler's pdftotext: which words stand on which page, by an eye other than the writer's."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.outside_checkers.program import output, program


def pdf_text(path: Path) -> list[str]:
    """Return the text of each page of the file, in the order in which its words were drawn."""
    told = output(program("pdftotext"), "-enc", "UTF-8", path, "-")
    if told.returncode != 0:
        pytest.fail(f"pdftotext could not read {path.name}: {told.stderr}")
    # A form feed ends each page, so what follows the last one is empty.
    return told.stdout.split("\f")[:-1]
