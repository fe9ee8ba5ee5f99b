"""Whether a stretch lies inside the text it speaks of: asked by several tests of the reader."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from authoring.diagnostics.diagnostic import Span


def shown_lines(content: bytes) -> list[str]:
    """Return the lines an editor shows for a file, a byte that is no text shown as a replacement sign."""
    text = content.decode("utf-8", errors="replace").removeprefix("\ufeff")
    return re.split(r"\r\n|\n|\r", text)


def assert_inside(span: Span, lines: list[str]) -> None:
    """Fail unless both ends of the stretch stand on a line of the text, or right behind its last character."""
    assert 1 <= span.line <= span.end_line <= len(lines), span
    assert (span.line, span.column) <= (span.end_line, span.end_column), span
    assert 1 <= span.column <= len(lines[span.line - 1]) + 1, span
    assert 1 <= span.end_column <= len(lines[span.end_line - 1]) + 1, span


def text_of(span: Span, lines: list[str]) -> str:
    """Return the words under a stretch, its lines joined by a line end."""
    picked = lines[span.line - 1 : span.end_line]
    picked[-1] = picked[-1][: span.end_column - 1]
    picked[0] = picked[0][span.column - 1 :]
    return "\n".join(picked)
