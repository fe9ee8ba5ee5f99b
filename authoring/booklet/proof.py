"""What the checks had to say of a library, and what that comes to in one booklet (requirement N20)."""

from __future__ import annotations

from collections.abc import Collection, Sequence

from msgspec import Struct


class Ran(Struct, frozen=True):
    """One rule that looked at the library: its id, its family, and the subjects of which one must be there for it.

    No subject means that it has something to look at in every booklet.
    """

    id: str
    family: str
    about: tuple[str, ...]


class Family(Struct, frozen=True):
    """A family of rules: its name, and in words what it looks at and what holds where it finds nothing."""

    name: str
    subject: str
    holds: str


class Left(Struct, frozen=True):
    """A finding that did not stop the booklet: its file, its rule, what it says, and which vehicles it concerns.

    `why` is the author's reason for which it may stand; empty where nobody has excepted it.
    """

    file: str
    rule: str
    message: str
    why: str
    vehicles: str = ""


class Proof(Struct, frozen=True):
    """What the checks had to say: the families in the order of the page, the rules that ran, what was left standing."""

    families: tuple[Family, ...] = ()
    rules: tuple[Ran, ...] = ()
    left: tuple[Left, ...] = ()


class Verdicts(Struct, frozen=True):
    """The rules by what became of them in one booklet."""

    families: tuple[Family, ...]
    passed: tuple[Ran, ...]
    idle: tuple[Ran, ...]
    spoke: tuple[Ran, ...]


def verdicts(proof: Proof, left: Sequence[Left], there: Collection[str]) -> Verdicts:
    """Return what became of each rule: `left` is what was found, `there` are the subjects that the booklet holds.

    Who has found something has had something to look at.
    """
    found = {one.rule for one in left}
    spoke = tuple(rule for rule in proof.rules if rule.id in found)
    quiet = [rule for rule in proof.rules if rule.id not in found]
    idle = tuple(rule for rule in quiet if rule.about and not set(rule.about) & set(there))
    passed = tuple(rule for rule in quiet if rule not in idle)
    return Verdicts(proof.families, passed, idle, spoke)
