"""What the checks have to say of a variant: the findings that the unchanged library does not have."""

from __future__ import annotations

import enum
from collections.abc import Iterator, Sequence
from functools import cached_property
from typing import Any, TypeAlias

from msgspec import Struct
from msgspec.structs import replace

from authoring.booklet.blocks import Booklet
from authoring.booklet.compose import compose
from authoring.diagnostics.diagnostic import Diagnostic, Severity, has_errors, in_order
from authoring.model.build import build_library, kind_of
from authoring.model.ends import ends
from authoring.model.library import Library
from authoring.rules.rule import Rule, all_rules, run_rule
from authoring.rules.settle import settle
from tests.readers.judged import NO_PROOF
from tests.seeded.demo import Demo
from tests.seeded.edits import Edit
from tests.seeded.rebuilt import rebuilt
from tests.seeded.variant import Variant

TEXT_RULES = frozenset({"text-names-less", "text-names-more", "verb-mismatch"})
"""They hold a text against its actions; whoever writes a fault writes it into both."""

ASIDE_RULES = frozenset({"unused-thing", "policy-unused", "callouts-and-text", "times-do-not-add-up"})
"""They notice that something is left over, whatever the fault is."""

Told = frozenset[tuple[str, str, Severity]]


class Outcome(enum.Enum):
    """What becomes of a variant."""

    ERROR = "error"
    WARNING = "warning"
    TEXT = "text tells"
    EQUAL = "equal"
    MISSED = "missed"


class Verdict(Struct, frozen=True):
    """What became of a variant, and what told it: the ids of rules, or the criterion by which it is equal.

    `aside` says that only such rules spoke as notice what is left over.
    """

    outcome: Outcome
    by: tuple[str, ...] = ()
    aside: bool = False


_End: TypeAlias = dict[tuple[str, str], str]


class _Checked(Struct, frozen=True):
    library: Library
    findings: list[Diagnostic]


class Judge:
    """Holds variants against the library as it stands."""

    def __init__(self, demo: Demo) -> None:
        self._demo = demo
        self._by_id = all_rules()
        rules = [one for one in self._by_id.values() if one.check is not None]
        self._rules = sorted(rules, key=lambda one: (_rank(one), one.id))
        self._plain: dict[str, Told] = {}
        self._known: dict[str, tuple[_End, Booklet]] = {}

    @cached_property
    def baseline(self) -> Told:
        """What is told of the library as it stands."""
        library, found = build_library(self._demo.documents, self._demo.images, partial=False)
        return _told(self._checked(library, found, None, None).findings)

    def verdict(self, variant: Variant, *, compare: bool = True) -> Verdict:
        """Return what becomes of a variant; without `compare`, one that is not caught counts as missed."""
        found = Verdict(Outcome.MISSED)
        for edit in variant.forms:
            found = self._of_form(variant, edit, compare=compare)
            if found.outcome is not Outcome.TEXT:
                return found
        return found

    def _of_form(self, variant: Variant, edit: Edit, *, compare: bool) -> Verdict:
        known = self.baseline | self._of_plain(variant)
        checked = self._checked(*self._library(variant, edit), variant, known)
        weighed = {one for one in _told(checked.findings) - known if one[2] is not Severity.NOTE}
        texts = {one for one in weighed if one[0] in TEXT_RULES}
        rest = weighed if variant.text_tells else weighed - texts
        if rest:
            outcome = Outcome.ERROR if any(one[2] is Severity.ERROR for one in rest) else Outcome.WARNING
            by = tuple(sorted({rule for rule, _, severity in rest if severity.value == outcome.value}))
            return Verdict(outcome, by, aside=all(rule in ASIDE_RULES for rule, _, _ in rest))
        if texts:
            return Verdict(Outcome.TEXT, tuple(sorted({one[0] for one in texts})))
        if not compare:
            return Verdict(Outcome.MISSED)
        criterion = self._equal(variant, checked.library)
        return Verdict(Outcome.EQUAL, (criterion,)) if criterion else Verdict(Outcome.MISSED)

    def _library(self, variant: Variant, edit: Edit) -> tuple[Library, list[Diagnostic]]:
        document = self._demo.document(variant.file)
        return rebuilt(self._demo, replace(document, data=edit(document.data)))

    def _of_plain(self, variant: Variant) -> Told:
        if variant.plain is None:
            return frozenset()
        key = f"{variant.file} {variant.plain_key}"
        if key not in self._plain:
            self._plain[key] = _told(self._checked(*self._library(variant, variant.plain), variant, None).findings)
        return self._plain[key]

    def _checked(
        self, library: Library, found: list[Diagnostic], variant: Variant | None, known: Told | None
    ) -> _Checked:
        """Return what stands; without a variant of the whole library, else of what its file bears on.

        The rules that speak of the matter come first: once one of them has told an error that is not known, the rest
        need not be asked. Where nothing is known, all are asked.
        """
        if has_errors(found):
            return _Checked(library, found)
        reached = set(library.procedures) if variant is None else self._reached(variant.file, library)
        for rule in self._rules:
            told = list(_run(rule, library, reached))
            found += told
            tells = rule.id not in TEXT_RULES or (variant is not None and variant.text_tells)
            if known is not None and tells and any(one[2] is Severity.ERROR for one in _told(told) - known):
                return _Checked(library, found)
        standing, _ = settle(in_order(found), library, self._by_id)
        files = {library.procedures[number].where.document.file for number in set(library.procedures) - reached}
        return _Checked(
            library, [one for one in standing if one.rule != "unused-allowance" or one.span.file not in files]
        )

    def _reached(self, file: str, library: Library) -> set[str]:
        """Return the procedures that a file bears on: itself and those that name it, or all that use what it states."""
        document = self._demo.document(file)
        match kind_of(document):
            case "procedure":
                number = document.data["procedure"]
                return {one for one, other in library.procedures.items() if number in other.where.document.text}
            case "equipment":
                name = document.data["equipment"]
                return {one for one, other in library.procedures.items() if other.equipment == name}
        return set(library.procedures)

    def _equal(self, variant: Variant, library: Library) -> str:
        """Return by which criterion a variant comes to the same, or nothing."""
        known = self._demo.library
        if library.procedures.keys() != known.procedures.keys():
            return ""
        if all(self._same(number, library) for number in self._reached(variant.file, library)):
            return "same booklets and same end"
        return variant.criterion(known, library) if variant.criterion is not None else ""

    def _same(self, number: str, library: Library) -> bool:
        if number not in self._known:
            self._known[number] = (_end(self._demo.library, number), _booklet(self._demo.library, number))
        end, booklet = self._known[number]
        return _end(library, number) == end and _booklet(library, number) == booklet


def _rank(rule: Rule) -> int:
    if rule.id in ASIDE_RULES:
        return 2
    return 0 if rule.over == "procedure" else 1


def _run(rule: Rule, library: Library, reached: set[str]) -> Iterator[Diagnostic]:
    subjects: dict[str, list[Any]] = {
        "library": [library],
        "equipment": list(library.equipment.values()),
        "procedure": [one for number, one in library.procedures.items() if number in reached],
    }
    for subject in subjects[rule.over]:
        yield from run_rule(rule, subject, library)


def _told(findings: Sequence[Diagnostic]) -> Told:
    return frozenset((one.rule, one.message, one.severity) for one in findings)


def _end(library: Library, number: str) -> _End:
    actions = [action for _, step in library.procedures[number].steps() for action in step.actions]
    return {side: end.state for side, end in ends(actions).items()}


def _booklet(library: Library, number: str) -> Booklet:
    return compose(library, library.procedures[number], {}, NO_PROOF)
