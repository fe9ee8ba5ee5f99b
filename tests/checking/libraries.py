"""Libraries in memory, checked as a whole and checked again from what is kept, and all that is printed of either."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from authoring.checking.again import Alone, Gather, check_again
from authoring.checking.digest import digest
from authoring.checking.files import Disk
from authoring.checking.known import State
from authoring.checking.together import Outcome
from authoring.cli.version import VERSION
from authoring.diagnostics.as_json import as_json
from authoring.diagnostics.as_sarif import About, as_sarif
from authoring.diagnostics.diagnostic import Diagnostic
from authoring.diagnostics.text import as_text
from authoring.pipeline import check
from authoring.rules.rule import all_rules
from authoring.rules.settle import Allowed
from authoring.source.decode import as_shown

Printed = tuple[str, str, str, list[tuple[str, str, Diagnostic]]]


def disk(files: Mapping[str, bytes], *, at_rest: bool = True) -> Disk:
    """Return a disk with these files, on which each content has a signature of its own."""
    signed = {path: (len(content), int.from_bytes(digest(content)[:6], "big"), 0, 1) for path, content in files.items()}
    return Disk(signed, files.__getitem__, (), (1 << 60) if at_rest else 0)


def again(files: Mapping[str, bytes], kept: State, gather: Gather = Alone, processes: int = 1) -> tuple[Outcome, State]:
    """Check a library again from what is kept of it."""
    checked = check_again(disk(files), kept, gather, processes)
    return checked.outcome, checked.state


def printed(findings: Sequence[Diagnostic], allowed: Allowed, files: Mapping[str, bytes]) -> Printed:
    """Return findings as text, JSON and SARIF, and what was allowed, with its reason."""
    about = {
        rule.id: About(rule.page.splitlines()[0], rule.page, rule.severity, rule.requirements)
        for rule in all_rules().values()
    }
    texts = {path: as_shown(content) for path, content in files.items() if path.endswith(".yaml")}
    return (
        as_text(findings, texts, colour=True),
        as_json(findings),
        as_sarif(findings, about, VERSION),
        [(by.rule, by.why, one) for by, one in allowed],
    )


def printed_whole(files: Mapping[str, bytes]) -> Printed:
    """Return what a check of the whole library from its beginning prints."""
    checked = check(files, [])
    return printed(checked.findings, checked.allowed, files)


def printed_again(outcome: Outcome, files: Mapping[str, bytes]) -> Printed:
    """Return what a check from what is kept prints."""
    return printed(outcome.findings, outcome.allowed, files)
