"""Bytes of one file to a document with places, or to the findings that say why not."""

from __future__ import annotations

from typing import Any

import yaml

from authoring.diagnostics.diagnostic import Diagnostic, Severity, in_order
from authoring.source import names
from authoring.source.build import Builder
from authoring.source.decode import decode
from authoring.source.document import Document, Node, Places
from authoring.source.lines import Lines
from authoring.source.syntax import syntax_finding

# The compiled parser reads about twenty times faster; both give the same events.
_PARSER = yaml.CSafeLoader if yaml.__with_libyaml__ else yaml.SafeLoader


def read_document(file: str, content: bytes) -> tuple[Document | None, list[Diagnostic]]:
    """Read one YAML file: the document, or None and at least one finding; never raises.

    `file` is the path inside the library with forward slashes, as it is shown to the author.
    """
    text, findings = decode(file, content)
    if findings:
        return None, findings
    lines = Lines(file, text)
    builder = Builder(lines)
    try:
        builder.run(_PARSER(text))
    except yaml.YAMLError as error:
        builder.findings.append(syntax_finding(error, lines))
    if builder.findings:
        return None, in_order(builder.findings)
    if builder.root is None or (builder.data is None and builder.root.start == builder.root.end):
        return None, [_empty(lines)]
    if not isinstance(builder.data, dict):
        return None, [_no_group(builder.root, builder.data, lines)]
    return Document(file, text, builder.data, Places(builder.root, lines)), []


def _empty(lines: Lines) -> Diagnostic:
    message = "This file has no content."
    cure = "Write at least one key with its value, or delete the file."
    return Diagnostic(names.EMPTY_FILE, Severity.ERROR, message, lines.span(0, 0), cure)


def _no_group(root: Node, data: Any, lines: Lines) -> Diagnostic:
    span = lines.span(root.start, lines.end_of_line(root.start))
    if isinstance(data, list):
        message = "This file is a list, but it must be a group of keys."
        return Diagnostic(names.WRONG_TYPE, Severity.ERROR, message, span, "Put the list under a key.")
    message = "This file is a single value, but it must be a group of keys."
    cure = 'Write each line as "key: value", with a space behind the colon.'
    return Diagnostic(names.WRONG_TYPE, Severity.ERROR, message, span, cure)
