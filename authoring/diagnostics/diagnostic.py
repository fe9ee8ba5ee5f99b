"""What the tool has to say about an author's files: a finding, its place, and its cure."""

from __future__ import annotations

import enum

from msgspec import Struct


class Severity(enum.Enum):
    """How much a finding matters: an error stops the build, a warning does not, a note explains."""

    ERROR = "error"
    WARNING = "warning"
    NOTE = "note"


class Span(Struct, frozen=True, order=True):
    """A stretch of one file.

    Lines and columns count from 1, columns in characters; the end column is the first one after the stretch.
    `file` is the path inside the library with forward slashes.
    """

    file: str
    line: int
    column: int
    end_line: int
    end_column: int


class Related(Struct, frozen=True):
    """Another place that belongs to a finding, with a label saying what it is."""

    span: Span
    message: str


class Diagnostic(Struct, frozen=True):
    """One finding.

    `message` is a sentence that stands alone and says what is wrong; `cure` says apart what to do.
    `rule` is the id that `bayleaf explain` takes.
    `fitments` says which vehicles it concerns, such as "parking brake: disc brake"; it is empty where the finding
    concerns every vehicle that its file is for, or none, as an error of YAML does.
    """

    rule: str
    severity: Severity
    message: str
    span: Span
    cure: str = ""
    related: tuple[Related, ...] = ()
    fitments: str = ""


def in_order(findings: list[Diagnostic]) -> list[Diagnostic]:
    """Sort by place, then rule, and drop a finding told twice in the same words at the same place."""
    seen: dict[tuple[Span, str, str], Diagnostic] = {}
    for finding in findings:
        seen.setdefault((finding.span, finding.rule, finding.message), finding)
    return sorted(seen.values(), key=lambda one: (one.span, one.rule, one.message))


def has_errors(findings: list[Diagnostic]) -> bool:
    """Tell whether any finding stops the build."""
    return any(finding.severity is Severity.ERROR for finding in findings)
