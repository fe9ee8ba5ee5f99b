"""Warnings that an author allows, taken out of the findings and kept with their reasons."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from typing import Protocol

from authoring.diagnostics.diagnostic import Diagnostic, Severity, Span
from authoring.diagnostics.nearest import did_you_mean
from authoring.rules.rule import Rule


class Leave(Protocol):
    """A warning that an author allows: of which rule, why, where it says so, and which findings lie in its reach."""

    @property
    def rule(self) -> str:
        """The rule's id."""

    @property
    def why(self) -> str:
        """The author's reason."""

    @property
    def span(self) -> Span:
        """The place of the rule's name."""

    def reaches(self, finding: Diagnostic, /) -> bool:
        """Tell whether a finding lies in its reach."""


class Allowing(Protocol):
    """What of a library counts here: its allowances, and whether some file of it could not be read."""

    @property
    def allowances(self) -> Sequence[Leave]:
        """The allowances, file by file."""

    @property
    def partial(self) -> bool:
        """Whether some file could not be read."""


Allowed = list[tuple[Leave, Diagnostic]]


def settle(
    findings: Sequence[Diagnostic], library: Allowing, rules: Mapping[str, Rule]
) -> tuple[list[Diagnostic], Allowed]:
    """Return the findings that stand, and those that an allowance takes out, each with it.

    An allowance of an unknown rule, of one that stops the build, or of nothing at all is a finding itself.
    """
    standing: list[Diagnostic] = []
    allowed: Allowed = []
    for finding in findings:
        by = None if finding.severity is Severity.ERROR else _allowing(finding, library.allowances)
        if by is None:
            standing.append(finding)
        else:
            allowed.append((by, finding))
    used = {id(allowance) for allowance, _ in allowed}
    for allowance in library.allowances:
        if id(allowance) not in used:
            standing.extend(_in_vain(allowance, library, rules))
    return standing, allowed


def _allowing(finding: Diagnostic, allowances: Sequence[Leave]) -> Leave | None:
    return next((allowance for allowance in allowances if allowance.reaches(finding)), None)


def _in_vain(allowance: Leave, library: Allowing, rules: Mapping[str, Rule]) -> Iterator[Diagnostic]:
    rule = rules.get(allowance.rule)
    span = allowance.span
    if rule is None:
        cure = did_you_mean(allowance.rule, rules) or "Use the id that the finding shows."
        yield Diagnostic("unknown-allowance", Severity.ERROR, f'No rule is called "{allowance.rule}".', span, cure)
    elif rule.severity is Severity.ERROR:
        message = f'"{rule.id}" is an error, and an error cannot be allowed.'
        yield Diagnostic(
            "unknown-allowance", Severity.ERROR, message, span, "Mend what it tells, and delete this entry."
        )
    elif not library.partial:
        message = f'Nothing here makes "{rule.id}" speak, so there is nothing to allow.'
        yield Diagnostic("unused-allowance", Severity.WARNING, message, span, "Delete this entry.")
