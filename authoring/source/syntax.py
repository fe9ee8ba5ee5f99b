"""The YAML library's complaints in the words of somebody who writes workshop procedures."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import TYPE_CHECKING

import yaml
from msgspec.structs import replace

from authoring.diagnostics.diagnostic import Diagnostic, Related, Severity
from authoring.source import names

if TYPE_CHECKING:
    from authoring.source.lines import Lines

_QUOTE = 'If the text holds such a sign on purpose, put the whole text in quotes: "…".'
_ALIGN = "Line it up with the keys of the same group, with spaces and not with tabs."


def syntax_finding(error: yaml.YAMLError, lines: Lines) -> Diagnostic:
    """Return the finding for a text the library cannot read."""
    if not isinstance(error, yaml.MarkedYAMLError) or error.problem_mark is None:
        return _at(lines, 0, "This file is not readable as YAML.", "Check the place for stray signs.")
    offset = error.problem_mark.index
    opened = error.context_mark.index if error.context_mark is not None else offset
    problem = error.problem or ""
    if "quoted scalar" in (error.context or "") and ("end of stream" in problem or "document" in problem):
        return _at(lines, opened, "The quote that opens here is never closed.", "Close it with the same quote.")
    for words, make in _FAMILIES.items():
        if words in f"{problem} {error.context}":
            return make(lines, offset, opened)
    return _other(lines, offset, problem)


def _bracket(lines: Lines, offset: int, opened: int) -> Diagnostic:
    label = "the bracket opens here"
    related = (Related(lines.span(opened, opened + 1), label),)
    message = "A comma or the closing bracket is missing here."
    return _at(lines, offset, message, "Close each [ with ] and each { with }, with commas between.", related)


def _no_colon(lines: Lines, _offset: int, opened: int) -> Diagnostic:
    return _at(lines, opened, "A colon is missing behind this word.", 'Write "key: value", or indent a text.')


def _no_value(lines: Lines, _offset: int, opened: int) -> Diagnostic:
    message = "No value stands behind the colon of this word."
    return _at(lines, opened, message, "Write the value, with a space between the colon and it.")


def _tab(lines: Lines, offset: int, _opened: int) -> Diagnostic:
    return _at(lines, offset, "A tab stands where the line is indented.", "Indent with spaces.")


def _too_deep(lines: Lines, offset: int, _opened: int) -> Diagnostic:
    message = "Far too many brackets lie inside one another here."
    finding = _at(lines, offset, message, "Check the brackets.")
    return replace(finding, rule=names.NESTING_LIMIT)


def _colon(lines: Lines, offset: int, _opened: int) -> Diagnostic:
    line_start = max(lines.text.rfind("\n", 0, offset), lines.text.rfind("\r", 0, offset)) + 1
    before = lines.text[line_start:offset]
    if re.search(r":\s", before):
        return _at(lines, offset, "A second colon with a space behind it stands on this line.", _QUOTE)
    finding = _at(lines, offset, "A key stands here where none can stand.", _ALIGN)
    return replace(finding, span=lines.span(offset - len(before.lstrip()), offset)) if before.strip() else finding


def _sign(lines: Lines, offset: int, opened: int) -> Diagnostic:
    sign = lines.text[offset : offset + 1]
    if sign == "\t":
        return _tab(lines, offset, opened)
    return _at(lines, offset, f'A text cannot start with the sign "{sign}".', _QUOTE)


def _indent(lines: Lines, offset: int, opened: int) -> Diagnostic:
    line, column = lines.at(offset)
    before = lines.text[offset - column + 1 : offset]
    related = (Related(lines.span(opened, lines.end_of_line(opened)), "the group starts here"),)
    if before.strip():
        return _at(lines, offset, "Something stands behind the end of the value here.", _QUOTE, related)
    message = f"Line {line} is indented neither like the group above nor like anything inside it."
    return _at(lines, offset, message, _ALIGN, related)


_FAMILIES: dict[str, Callable[[Lines, int, int], Diagnostic]] = {
    "exceeded maximum nesting": _too_deep,
    "parsing a flow": _bracket,
    "unexpected ':'": _no_value,
    "expected ':'": _no_colon,
    "mapping values are not allowed": _colon,
    "tab character": _tab,
    "cannot start any token": _sign,
    "expected key": _indent,
    "expected '-' indicator": _indent,
    "expected <block end>": _indent,
}

_OTHER = {
    "sequence entries are not allowed": (
        "A list begins on the line of its key.",
        'Begin it on the next line, each entry behind "- "; put a text that starts with a hyphen in quotes.',
    ),
    "unknown escape character": (
        "A backslash inside double quotes starts an escape that does not exist.",
        "Write two backslashes for one, or use single quotes.",
    ),
    "hexdecimal": ("The escape inside these double quotes is incomplete.", "Write \\x with two hex digits."),
    "Unicode character escape": ("The escape inside these double quotes is no character.", "Delete it."),
    "alphabetic or numeric": ("A text cannot start with * or &.", _QUOTE),
    "comment or line break": (
        "Behind the sign | or > nothing may stand on the same line.",
        "Start the text on the next line, indented.",
    ),
    "document start": ("Something stands behind the end of the file's content.", "Delete it."),
    "node content": ("A value is missing here, or a bracket or comma is one too many.", _QUOTE),
    "directive": ("A line cannot start with %.", "Delete the line."),
    "incompatible YAML": ("The %YAML line asks for another version.", "Delete the line."),
    "tag": ("A text cannot start with the sign !.", _QUOTE),
    "mapping keys are not allowed": ("A question mark with a space behind it stands here alone.", _QUOTE),
}


def _other(lines: Lines, offset: int, problem: str) -> Diagnostic:
    for words, (message, cure) in _OTHER.items():
        if words in problem:
            return _at(lines, offset, message, cure)
    return _at(lines, offset, "This is not readable as YAML.", f"The YAML reader says: {problem}.")


def _at(lines: Lines, offset: int, message: str, cure: str, related: tuple[Related, ...] = ()) -> Diagnostic:
    """Place a finding on one character; an offset behind a line's end moves back onto the line."""
    last = max(len(lines.text.rstrip()) - 1, 0)
    offset = min(max(offset, 0), last)
    while offset > 0 and lines.text[offset] in "\r\n":
        offset -= 1
    span = lines.span(offset, min(offset + 1, len(lines.text)))
    return Diagnostic(names.YAML_SYNTAX, Severity.ERROR, message, span, cure, related)
