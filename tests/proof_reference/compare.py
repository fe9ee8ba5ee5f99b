"""What the checker says of a random library held against what the reference says: rule, step and fitments."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from authoring.diagnostics.diagnostic import Diagnostic, Severity
from authoring.pipeline import check
from authoring.rules.rule import rules_of
from tests.proof_reference.jobs import make
from tests.proof_reference.reference import FIRST, RULES, Fitment, Verdict, fitments, verdicts
from tests.proof_reference.state import At
from tests.proof_reference.told import Group, read
from tests.proof_reference.written import file_of

Where = tuple[str, str, int]
"""A rule, a file, and the first line of the step, or of the section outside its steps."""

SEEDS = 2000
"""How many libraries there are."""

Told = dict[Where, frozenset[Fitment]]


@dataclass(frozen=True)
class Compared:
    """Both verdicts on one library: what each says, and the text that they speak of.

    `excused` is what the reference finds and the checker need not say, since another finding says it.
    """

    seed: int
    files: Mapping[str, bytes]
    reference: Told
    excused: Told
    product: Told

    @property
    def good(self) -> bool:
        """Whether the reference finds nothing."""
        return not self.reference and not self.excused

    def differences(self) -> Iterator[str]:
        """Yield a line for each place at which the two do not say the same of the same vehicles."""
        for where in sorted({*self.reference, *self.product}):
            ours = self.product.get(where, frozenset())
            theirs = self.reference.get(where, frozenset())
            if not theirs <= ours <= theirs | self.excused.get(where, frozenset()):
                yield f"{where}: checker {_shown(ours)}; reference {_shown(theirs)}"

    def differing(self) -> set[str]:
        """Return the rules in which the two differ."""
        return {line.split("'")[1] for line in self.differences()}

    def told(self) -> str:
        """Return the procedures of the library with numbered lines, and the differences behind them."""
        lines = [f"seed {self.seed}"]
        for file, content in self.files.items():
            if file.startswith(("RW-", "equipment")):
                numbered = enumerate(content.decode().splitlines(), 1)
                lines += [file, *(f"{number:4} {line}" for number, line in numbered)]
        return "\n".join([*lines, *self.differences()])


def rules_in(one: Compared) -> set[str]:
    """Return the rules that the reference finds broken in a library."""
    return {rule for rule, *_ in (*one.reference, *one.excused)}


def compare(seed: int) -> Compared:
    """Have both look at the library of a seed, which must be readable."""
    return compare_files(make(seed).files, seed)


def compare_files(files: Mapping[str, bytes], seed: int = -1) -> Compared:
    """Have both look at a library, which must be readable."""
    findings = check(files, []).findings
    unreadable = {rule.id for family in ("reading", "references") for rule in rules_of(family)}
    # What a machine does not have is another rule's business.
    unreadable |= {"touches-what-is-missing", "unknown-feature", "unknown-feature-value"}
    wrong = [one for one in findings if one.rule in unreadable and one.severity is Severity.ERROR]
    assert not wrong, (seed, wrong)
    read_files = read(files)
    reference: Told = {}
    excused: Told = {}
    found = verdicts(files)
    for one in found:
        # What was not asked is told at the option, above all steps.
        line = 0 if one.fault.rule == "option-not-asked" else one.fault.at.top
        where = one.fault.rule, one.file, line
        kept = excused if _said_elsewhere(one, found) else reference
        kept[where] = kept.get(where, frozenset()) | one.fitments
    product: Told = {}
    for finding in (one for one in findings if one.rule in RULES):
        where = finding.rule, finding.span.file, _step_at(read_files[finding.span.file], finding.span.line)
        product[where] = product.get(where, frozenset()) | _concerned(finding, read_files)
    return Compared(seed, files, reference, excused, product)


def _said_elsewhere(one: Verdict, found: list[Verdict]) -> bool:
    """Tell whether another finding says the same: of the step before, or of the procedure that is carried out."""
    fault = one.fault
    if fault.rule == "never-reached":
        return fault.thing != FIRST
    if fault.rule == "wrong-part-unchecked":
        # A choice is told once, where it is first put on as written.
        return any(
            other.fault.rule == fault.rule and other.file == one.file and other.fault.at.top < fault.at.top
            for other in found
        )
    if fault.at.top == fault.at.line and file_of(fault.at.number) == one.file:
        return False
    for other in found:
        told = other.fault
        if told.rule == fault.rule and told.at == At(fault.at.line, fault.at.number, fault.at.line):
            return True
        if told.rule == "need-contradicted" and other.file == one.file and told.at.top == fault.at.top:
            return True
    return False


def _step_at(procedure: Group, line: int) -> int:
    """Return the first line of the innermost step or section that begins at or before a line; 0 above them all."""
    begins = [
        group.first
        for section in procedure.get("sections", [])
        for step in section["steps"]
        for group in (section, step, *step.get("either", []))
    ]
    return max((one for one in begins if one <= line), default=0)


def _concerned(finding: Diagnostic, files: Mapping[str, Group]) -> frozenset[Fitment]:
    """Return the fitments that the words of a finding name; without words it concerns all that its file covers."""
    equipment = files["equipment.yaml"]
    covers = files[finding.span.file].get("covers", {})
    every = [tuple(one.items()) for one in fitments(equipment, covers)]
    if not finding.fitments:
        return frozenset(every)
    groups = [_read(words, equipment) for words in finding.fitments.split(", or ")]
    return frozenset(one for one in every if any(_meets(dict(one), group) for group in groups))


def _read(words: str, equipment: Group) -> dict[str, list[str]]:
    """Return the condition that words such as "brake: drum; cab: tall or low" tell; options are left out."""
    told = dict(part.split(": ", 1) for part in words.split("; "))
    return {
        feature: [one for one in equipment["features"][feature]["values"] if one in values.replace(",", "").split()]
        for feature, values in told.items()
        if feature in equipment["features"]
    }


def _meets(fitment: Mapping[str, str], group: Mapping[str, list[str]]) -> bool:
    return all(fitment[feature] in values for feature, values in group.items())


def _shown(concerned: frozenset[Fitment]) -> str:
    if not concerned:
        return "nothing"
    return " | ".join(sorted(" ".join(value for _, value in one) for one in concerned))
