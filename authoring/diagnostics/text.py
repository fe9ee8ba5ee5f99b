"""Findings as text for a person at a terminal.

One block a finding: where and how serious, the sentence, the line with a mark under the words at fault,
other places that belong to it, for which vehicles it holds where that is not for all, what to do,
and the id that `bayleaf explain` takes.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from authoring.diagnostics.diagnostic import Severity
from authoring.diagnostics.excerpt import COLUMNS, excerpt, split_lines, visible

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping, Sequence

    from authoring.diagnostics.diagnostic import Diagnostic, Span

_NUMBER_WIDTH = 6
_GAP = "  "
# Select Graphic Rendition, ECMA-48 section 8.3.117.
_PLAIN, _BOLD, _DIM = "0", "1", "2"
_SEVERITIES = {Severity.ERROR: "1;31", Severity.WARNING: "1;33", Severity.NOTE: "1;36"}


def as_text(findings: Sequence[Diagnostic], sources: Mapping[str, str], *, colour: bool) -> str:
    """Return the findings in the order given, each as a block that ends with an empty line.

    `sources` maps a file to its text; a finding in a file that is not there is shown without its line.
    A finding without a file is about the library as a whole.
    Nothing in the answer but a line end and, with `colour`, our own colour codes is a control character.
    """
    page = _Page(sources, colour=colour)
    return "".join(f"{line}\n" for finding in findings for line in page.block(finding))


class _Page:
    def __init__(self, sources: Mapping[str, str], *, colour: bool) -> None:
        self._sources = sources
        self._colour = colour
        self._lines: dict[str, list[str]] = {}

    def block(self, finding: Diagnostic) -> Iterator[str]:
        code = _SEVERITIES[finding.severity]
        yield f"{self._in(_BOLD, _place(finding.span))}{_GAP}{self._in(code, finding.severity.value)}"
        yield f"{_GAP}{visible(finding.message)}"
        yield from self._excerpt(finding.span, code)
        for other in finding.related:
            yield f"{_GAP}See {_place(other.span)}, {visible(other.message)}:"
            yield from self._excerpt(other.span, _BOLD)
        if finding.fitments:
            yield f"{_GAP}Only for vehicles with {visible(finding.fitments)}."
        if finding.cure:
            yield f"{_GAP}Cure: {visible(finding.cure)}"
        yield self._in(_DIM, f"{_GAP}Rule: {visible(finding.rule)}")
        yield ""

    def _excerpt(self, span: Span, code: str) -> Iterator[str]:
        shown = excerpt(self._text(span.file), span, COLUMNS - _NUMBER_WIDTH - len(_GAP))
        if shown is None:
            return
        margin = " " * (_NUMBER_WIDTH + len(_GAP))
        yield f"{self._in(_DIM, str(span.line).rjust(_NUMBER_WIDTH))}{_GAP}{shown.line}".rstrip()
        blank = len(shown.mark) - len(shown.mark.lstrip())
        yield f"{margin}{shown.mark[:blank]}{self._in(code, shown.mark[blank:])}"

    def _text(self, file: str) -> list[str]:
        if file not in self._lines:
            self._lines[file] = split_lines(self._sources[file]) if file in self._sources else []
        return self._lines[file]

    def _in(self, code: str, text: str) -> str:
        return f"\x1b[{code}m{text}\x1b[{_PLAIN}m" if self._colour else text


def _place(span: Span) -> str:
    return f"{visible(span.file)}:{span.line}:{span.column}" if span.file else "the library"
