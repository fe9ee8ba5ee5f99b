"""The table that ends a run: each computation, how often it was held against the outside, and how near it came."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path
from typing import Any

from msgspec import Struct

from authoring.workshop.confirmed import unverified
from tests.outside.agreement import Record
from tests.outside.evidence import kinds_by_rows
from tests.outside.kept import AGREES, HERE, Row, computations_of

PROPERTY = "outside"
"""The name under which the report of a test carries its records."""

HEAD = ("computation", "rows", "values", "traps", "worst error", "known by", "")


class Held(Struct, frozen=True):
    """A record of a test, and whether that test passed."""

    record: Record
    passed: bool


def held_in(reports: Iterable[Any]) -> list[Held]:
    """Return what the tests of some reports held; reports of other tests carry nothing."""
    return [
        Held(record, report.outcome == "passed")
        for report in reports
        if getattr(report, "when", None) == "call"
        for name, records in report.user_properties
        if name == PROPERTY
        for record in records
    ]


def table(held: Sequence[Held], rows: Sequence[Row]) -> list[str]:
    """Return the lines of the table; a computation whose rows no test touched says so instead of an error."""
    names = sorted({name for row in rows for name in computations_of(row)})
    lines = [HEAD, *(_line(name, held, rows) for name in names)]
    widths = [max(len(line[column]) for line in lines) for column in range(len(HEAD))]
    return ["  ".join(cell.ljust(width) for cell, width in zip(line, widths, strict=True)).rstrip() for line in lines]


def not_held(held: Iterable[Held], rows: Iterable[Row]) -> list[str]:
    """Return, for each row that no test held ours against for one of its computations, the row and the computation."""
    done = {(one.record["id"], one.record["of"]) for one in held}
    return [f"{row['id']} for {name}" for row in rows for name in computations_of(row) if (row["id"], name) not in done]


def takes_in_the_folder(arguments: Iterable[str], root: Path) -> bool:
    """Return whether a run that was started with these arguments takes in every test of this folder."""
    return any(HERE.is_relative_to((root / one).resolve()) for one in arguments if "::" not in one)


def _line(name: str, held: Iterable[Held], rows: Iterable[Row]) -> tuple[str, ...]:
    ours = [one for one in held if one.record["of"] == name]
    straight = [one.record for one in ours if one.record["role"] == AGREES]
    touched = {one["id"] for one in straight}
    traps = {one.record["id"] for one in ours} - touched
    return (
        name,
        str(len(touched)),
        str(sum(one["values"] for one in straight)),
        str(len(traps)),
        _worst(ours),
        kinds_by_rows(name, rows),
        "unverified" if unverified(name) else "",
    )


def _worst(held: Sequence[Held]) -> str:
    if any(not one.passed for one in held):
        return "FAILED"
    errors = [one.record["worst"] for one in held if one.record["worst"] is not None]
    return _error(max(errors)) if errors else "NOT RUN"


def _error(worst: float) -> str:
    return "0" if worst == 0 else f"{worst:.1e}"


def summary(held: Sequence[Held], rows: Sequence[Row]) -> Iterator[str]:
    """Yield what is written at the end of a run in which something was held against the outside."""
    yield from table(held, rows)
    yield ""
    yield "rows: published values; values: numbers in them; traps: known wrong values and bounds."
    yield "known by: how the sources of its rows are known; unverified: no source's own text was read."
