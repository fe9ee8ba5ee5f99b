"""What the kept rows say of each computation: how it is known, and how near it must come."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable

from tests.outside.kept import AGREES, STATUSES, Row, computations_of, role_of


def rows_of(name: str, rows: Iterable[Row]) -> list[Row]:
    """Return the rows that check a computation."""
    return [row for row in rows if name in computations_of(row)]


def kind_by_rows(name: str, rows: Iterable[Row]) -> str:
    """Return the best status of the rows with which a computation must agree; a bound or a trap confirms nothing.

    Raises ValueError for a computation that must agree with none.
    """
    return min(_statuses(name, rows), key=STATUSES.index)


def kinds_by_rows(name: str, rows: Iterable[Row]) -> str:
    """Return how many of these rows are known in which way, such as "read 4, memory 1", the best first."""
    counted = Counter(_statuses(name, rows))
    return ", ".join(f"{status} {counted[status]}" for status in STATUSES if counted[status])


def _statuses(name: str, rows: Iterable[Row]) -> list[str]:
    return [row["status"] for row in rows_of(name, rows) if role_of(row) == AGREES]


def kinds(rows: Iterable[Row]) -> dict[str, str]:
    """Return how each computation that stands in the rows is known, by its name."""
    kept = list(rows)
    return {name: kind_by_rows(name, kept) for name in sorted({one for row in kept for one in computations_of(row)})}
