"""What is kept of a library that was checked: of each file its head, of each procedure what its check came to.

All of it is plain data, so that it can be written down and read again without running anything.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import TypeAlias

from msgspec import Struct

from authoring.diagnostics.diagnostic import Diagnostic, Span

Signature: TypeAlias = tuple[int, int, int, int]
"""What the disk says of a file without reading it: size in bytes, change of content and of entry in ns, number."""


class Left(Struct, frozen=True):
    """A warning that an author allows, from its first to its last line; `first` is 0 where the whole file is meant."""

    rule: str
    why: str
    span: Span
    first: int
    last: int

    def reaches(self, finding: Diagnostic) -> bool:
        """Tell whether a finding of the rule lies inside."""
        if finding.rule != self.rule or finding.span.file != self.span.file:
            return False
        return not self.first or self.first <= finding.span.line <= self.last


class Head(Struct, frozen=True):
    """What other files and the whole library need of one file.

    `kind` is empty where the file could not be used; `name` is its number or short name; `equipment` is that of a
    procedure, and `against` the checksum of the equipment file that it was read beside, empty where there is none.
    `numbers` is whatever in it looks like the number of a procedure; `figures` are the pictures that it asks for.
    `told` is what was found while it was read.
    """

    kind: str
    name: str = ""
    title: str = ""
    equipment: str = ""
    against: bytes = b""
    numbers: tuple[str, ...] = ()
    figures: tuple[str, ...] = ()
    told: tuple[Diagnostic, ...] = ()
    left: tuple[Left, ...] = ()


class Apart(Struct, frozen=True):
    """What the check of one procedure came to, apart from all that it does not lead to.

    `key` is the checksum of all that was read for it.
    `found` is what is told whatever the others say; `once` is told by the first procedure that tells it of a place;
    `every` numbers what is told where every procedure tells it, by its place in a table of findings.
    `marks` is, by rule, what counts where procedures are weighed against each other.
    `names` and `machines` are the checksums of what the words of findings may quote beside what was read; `partial`
    says that some file could not be read then, and `firm` that this made no difference.
    """

    key: bytes
    names: bytes
    machines: bytes
    partial: bool
    firm: bool
    in_shop: bool
    found: tuple[Diagnostic, ...] = ()
    once: tuple[Diagnostic, ...] = ()
    every: tuple[int, ...] = ()
    marks: Mapping[str, tuple[str, ...]] = {}


class Kept(Struct, frozen=True):
    """One file as it was found.

    `trusted` says that it had been at rest when it was read, so that a change after that shows in its signature.
    A picture has no head; `reason` says why it cannot be shown and is empty where it can.
    """

    signature: Signature
    trusted: bool
    digest: bytes
    head: Head | None = None
    reason: str = ""
    apart: Apart | None = None


class Base(Struct, frozen=True):
    """What the shared files came to by themselves, as with `Apart`.

    `in_shop` are those of `every` in the shop file, with the vehicles they concern; `marked` is by rule.
    """

    key: bytes
    found: tuple[Diagnostic, ...]
    once: tuple[Diagnostic, ...]
    every: tuple[int, ...]
    in_shop: tuple[Diagnostic, ...]
    marked: Mapping[str, tuple[Diagnostic, ...]]


class Weighed(Struct, frozen=True):
    """What one rule came to that weighs procedures against each other, and the checksum of what it had before it."""

    key: bytes
    found: tuple[Diagnostic, ...]


class State(Struct, frozen=True):
    """All that is kept of a library; `table` holds the findings that `every` numbers, with the rule's contract."""

    files: Mapping[str, Kept] = {}
    table: tuple[Diagnostic, ...] = ()
    base: Base | None = None
    weighed: Mapping[str, Weighed] = {}
