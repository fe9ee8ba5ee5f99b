"""What a job asks for, decides and changes: conditions, options, and modifications that stay on the machine."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from authoring.model.specification import When
from authoring.source.document import Where


class Option(Struct, frozen=True, eq=False):
    """Something decided in this job, and the words for each value; `decided_by` is customer, lead or technician."""

    id: str
    name: str
    question: str
    decided_by: str
    why: str | None
    values: Mapping[str, str]
    where: Where


class Modification(Struct, frozen=True, eq=False):
    """In what the machine leaves different: how it was, how it is, and who is told.

    `adds` had no counterpart, `leaves_out` stays off, and `replaces` maps an old thing to the part in its place.
    """

    id: str
    name: str
    when: When
    as_found: str
    as_left: str
    why: str | None
    adds: tuple[str, ...]
    leaves_out: tuple[str, ...]
    tell: tuple[str, ...]
    where: Where
    replaces: Mapping[str, str] = {}


class Condition(Struct, frozen=True, eq=False):
    """What must be so before a job: the procedure that brings it about, and what becomes of it at the end.

    `keys` lead from `where` to its sentence.
    """

    so: str
    by: str | None
    afterwards: str | None
    when: When
    where: Where
    keys: tuple[str | int, ...]


class Glance(Struct, frozen=True, eq=False):
    """Something else to look at while the machine is open or up; `only_if` says for vehicles used in which way."""

    look: str
    only_if: str | None
    when: When
    where: Where
