"""Warnings that an author leaves standing, each in its place and with its reason."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from authoring.diagnostics.diagnostic import Diagnostic, Span
from authoring.source.document import Document, Where


class Allowance(Struct, frozen=True, eq=False):
    """One rule that may warn inside one object; `where` is its entry, `scope` the object it stands in."""

    rule: str
    why: str
    scope: Where
    where: Where

    @property
    def span(self) -> Span:
        """The place of the rule's name."""
        return self.where.of("rule")

    def reaches(self, finding: Diagnostic) -> bool:
        """Tell whether a finding of the rule lies inside the object."""
        if finding.rule != self.rule or finding.span.file != self.scope.document.file:
            return False
        first, last = self.scope.document.places.lines(self.scope.path)
        return not self.scope.path or first <= finding.span.line <= last


def allowances(document: Document) -> Iterator[Allowance]:
    """Yield every allowance of a file whose shape has been checked: of the file, its sections, its steps."""
    whole = Where(document)
    yield from _of(whole, document.data)
    for number, section in enumerate(document.data.get("sections", ())):
        inside = whole.child("sections", number)
        yield from _of(inside, section)
        for place, step in enumerate(section["steps"]):
            yield from _of(inside.child("steps", place), step)
            for method, one in enumerate(step.get("either", ())):
                yield from _of(inside.child("steps", place, "either", method), one)


def _of(scope: Where, data: dict[str, Any]) -> Iterator[Allowance]:
    for place, entry in enumerate(data.get("allow", ())):
        yield Allowance(entry["rule"], entry["why"].strip(), scope, scope.child("allow", place))
