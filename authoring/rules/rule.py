"""What a rule is, how rules are found, and how they are run.

A rule is one file below a family's folder; its name is the file's name with hyphens.
Its docstring is the page that `bayleaf explain` prints and its examples are tests.
It declares what it needs by its `check` function's first parameter: `procedure`, `equipment` or `library`.
A rule over the library declares as `TOGETHER` what its words about a shared file have to do with the procedures.
A rule whose fault is told while files are read has a page and no `check`.
`ABOUT` names what it looks at (`model/subjects.py`); a booklet that holds nothing of that kind says that it does not
apply. A rule without it looks at every job.
"""

from __future__ import annotations

import enum
import importlib
from collections.abc import Callable, Iterable, Iterator
from functools import cache
from typing import Any

from msgspec import Struct

from authoring import rules
from authoring.diagnostics.diagnostic import Diagnostic, Related, Severity, Span
from authoring.model.by_place import modules_in, packages_in
from authoring.model.library import Library
from authoring.model.procedure import Procedure


class Fault(Struct, frozen=True):
    """What a check yields: what is wrong, where, and how to mend it; the runner adds rule and severity.

    `fitments` says which vehicles it concerns where the check knows better than the place of the fault tells.
    `severity` is set where a rule that mostly warns knows for certain.
    """

    message: str
    span: Span
    cure: str = ""
    related: tuple[Related, ...] = ()
    fitments: str = ""
    severity: Severity | None = None


Check = Callable[[Any, Library], Iterable[Fault]]
Marks = Callable[[Procedure, Library], Iterable[str]]


class Together(enum.Enum):
    """How a rule over the library comes to what it says of the shop, the stock and the equipment.

    What it says of a procedure's own file it says of that procedure, and of what that one leads to, alone.
    """

    ALONE = "alone"
    """It looks at the shared files alone."""

    ANY = "any"
    """Any one procedure makes it speak, at most once of one place, where the first procedure counts."""

    EVERY = "every"
    """It speaks where each procedure by itself would make it speak, and not where a file could not be read.

    What it says of equipment hangs on the procedures for that equipment only; its words quote no procedure.
    """

    MARKED = "marked"
    """It weighs procedures against each other; its `marks` name whatever of one procedure counts, and all that counts.

    A procedure whose marks others have too changes nothing.
    """


class Rule(Struct, frozen=True):
    """One rule: its id, its family, how much its findings matter, the requirements it serves, its page.

    `about` are the subjects of which one must be there for it to have anything to look at; empty where it always has.
    `together` says how its words about shared files come from several procedures, and `marks` is what counts of one.
    """

    id: str
    family: str
    severity: Severity
    requirements: tuple[str, ...]
    doc: str
    over: str
    check: Check | None
    about: tuple[str, ...] = ()
    together: Together = Together.ALONE
    marks: Marks | None = None

    @property
    def page(self) -> str:
        """The page that `bayleaf explain` prints."""
        import inspect  # noqa: PLC0415  # 4 ms that a check need not pay

        return inspect.cleandoc(self.doc)


TOLD_WHILE_READING = "reading"
"""The family whose rules have pages only; a run of the checks need not load it."""


@cache
def families() -> tuple[str, ...]:
    """Return the names of the families, which are the folders beside this file."""
    return packages_in(rules)


@cache
def rules_of(family: str) -> tuple[Rule, ...]:
    """Return the rules of one family, found by their place."""
    package = importlib.import_module(f"{rules.__name__}.{family}")
    return tuple(_rule(family, module) for module in modules_in(package))


def all_rules() -> dict[str, Rule]:
    """Return every rule by its id."""
    return {rule.id: rule for family in families() for rule in rules_of(family)}


def _rule(family: str, name: str) -> Rule:
    module = importlib.import_module(f"{rules.__name__}.{family}.{name}")
    check: Check | None = getattr(module, "check", None)
    return Rule(
        id=name.replace("_", "-"),
        family=family,
        severity=module.SEVERITY,
        requirements=module.REQUIREMENTS,
        doc=module.__doc__ or "",
        over=check.__code__.co_varnames[0] if check else "",
        check=check,
        about=getattr(module, "ABOUT", ()),
        together=getattr(module, "TOGETHER", Together.ALONE),
        marks=getattr(module, "marks", None),
    )


def checking_rules() -> Iterator[Rule]:
    """Yield every rule that checks, in the order in which they run."""
    for family in families():
        if family != TOLD_WHILE_READING:
            yield from (rule for rule in rules_of(family) if rule.check is not None)


def run_rules(library: Library) -> Iterator[Diagnostic]:
    """Yield what every rule has to say about a library."""
    subjects: dict[str, list[Any]] = {
        "library": [library],
        "equipment": list(library.equipment.values()),
        "procedure": [one for one in library.procedures.values() if one.equipment in library.equipment],
    }
    for rule in checking_rules():
        for subject in subjects[rule.over]:
            yield from run_rule(rule, subject, library)


def run_rule(rule: Rule, subject: Any, library: Library) -> Iterator[Diagnostic]:
    """Yield what one rule has to say about one subject."""
    for fault in rule.check(subject, library) if rule.check is not None else ():
        severity = fault.severity or rule.severity
        yield Diagnostic(rule.id, severity, fault.message, fault.span, fault.cure, fault.related, fault.fitments)
