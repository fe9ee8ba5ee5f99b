"""Findings in SARIF 2.1.0 (OASIS, 2020), the open format that editors and build servers read."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from typing import Any
from urllib.parse import quote

from msgspec import Struct

from authoring.diagnostics.diagnostic import Diagnostic, Related, Severity, Span


class About(Struct, frozen=True):
    """What a report says of one rule: a line, the whole page, its severity, the requirements it serves."""

    summary: str
    page: str
    severity: Severity
    requirements: tuple[str, ...]


_SCHEMA = "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json"

LIBRARY = "LIBRARY"
"""The name that stands for the library's folder; places are told inside it."""


def as_sarif(findings: Sequence[Diagnostic], rules: Mapping[str, About], version: str) -> str:
    """Return one run with every finding; only the rules that speak are described."""
    spoken = sorted({finding.rule for finding in findings})
    index = {rule: place for place, rule in enumerate(spoken)}
    driver = {
        "name": "bayleaf",
        "semanticVersion": version,
        "rules": [_rule(rule, rules[rule]) for rule in spoken],
    }
    run = {
        "tool": {"driver": driver},
        "columnKind": "unicodeCodePoints",
        "originalUriBaseIds": {LIBRARY: {"description": {"text": "The folder of the library."}}},
        "results": [_result(finding, index[finding.rule]) for finding in findings],
    }
    log = {
        "$schema": _SCHEMA,
        "version": "2.1.0",
        "runs": [run],
    }
    return json.dumps(log, indent=2, ensure_ascii=False)


def _rule(rule: str, about: About) -> dict[str, Any]:
    return {
        "id": rule,
        "shortDescription": {"text": about.summary},
        "help": {"text": about.page},
        "defaultConfiguration": {"level": about.severity.value},
        "properties": {"requirements": list(about.requirements)},
    }


def _result(finding: Diagnostic, index: int) -> dict[str, Any]:
    result: dict[str, Any] = {
        "ruleId": finding.rule,
        "ruleIndex": index,
        "level": finding.severity.value,
        "message": {"text": f"{finding.message} {finding.cure}".rstrip()},
        # The format has no word for it; a bag of properties takes what a tool says beyond the standard.
        "properties": {"fitments": finding.fitments},
    }
    # A finding about the library as a whole, such as a missing file, has no place inside it.
    if finding.span.file:
        result["locations"] = [{"physicalLocation": _place(finding.span)}]
    if finding.related:
        result["relatedLocations"] = [_related(number, one) for number, one in enumerate(finding.related)]
    return result


def _related(number: int, one: Related) -> dict[str, Any]:
    return {"id": number, "message": {"text": one.message}, "physicalLocation": _place(one.span)}


def _place(span: Span) -> dict[str, Any]:
    return {
        "artifactLocation": {"uri": quote(span.file), "uriBaseId": LIBRARY},
        "region": {
            "startLine": span.line,
            "startColumn": span.column,
            "endLine": span.end_line,
            "endColumn": span.end_column,
        },
    }
