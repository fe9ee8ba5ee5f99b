"""The manner of an action: how it is done, which way round, into what it goes, and what it must not touch."""

from __future__ import annotations

from collections.abc import Mapping

from msgspec import Struct

from authoring.source.document import Where


class Orientation(Struct, frozen=True, eq=False):
    """Which way round: the end that goes first, the mark it is about, and where that mark points or stands.

    `clock` is an hour, such as "7:30", and `side` a side of the machine; both are seen from `seen_from`.
    """

    first: str | None
    mark: str | None
    towards: str | None
    clock: str | None
    side: str | None
    seen_from: str | None
    where: Where


class Engagement(Struct, frozen=True, eq=False):
    """One place of a part, and the thing and its place that it goes into."""

    part: str
    other: str
    at: str | None
    where: Where


class Clearance(Struct, frozen=True, eq=False):
    """A thing to stay clear of, and the name of the least distance if one is stated."""

    of: str
    by: str | None
    where: Where


class Manner(Struct, frozen=True, eq=False):
    """What an action says beside what it does; `confirmed` maps seen, felt or heard to what tells that it is done."""

    how: tuple[str, ...] = ()
    because: str | None = None
    confirmed: Mapping[str, str] = {}
    orientation: Orientation | None = None
    engages: tuple[Engagement, ...] = ()
    clear_of: tuple[Clearance, ...] = ()
    force: str | None = None


PLAIN = Manner()
"""An action of which nothing more is said."""
