"""Published values kept as data beside the tests: how a file is read, and the units that it states its values in.

A file is a mapping of sections, and a section says what holds for all of its rows, a group of rows what holds for the
group; what stands nearer to the row goes first.
So each row has:

- `of`: the computation that it checks, or several, by the names of `authoring.workshop.confirmed`;
- `source`, and how that was read, `status`: read in the source's own text, restated (read in a second party's copy),
  memory (found in no text), computed (worked out apart from published inputs), common practice (no source);
- `published`, the result: a number, a text, or a list or mapping of them;
- how near ours must come: `tolerance` (a share of it), `within` (in its unit), or `rounded` (to the last digit that
  is printed); exactly where it says none of them;
- `role`: `bound` where `published` limits ours from one side, `trap` where `wrong` is what ours must not be, by the
  share `by` at least if it is a number; without a role ours must agree.
"""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import yaml

from authoring.quantities.convert import convert
from authoring.quantities.units import UNITS
from authoring.workshop.interval import Interval
from authoring.workshop.metric_thread import MetricThread, metric_thread

HERE = Path(__file__).parent
STATUSES = ("read", "restated", "memory", "computed", "common practice")
"""How a value is known, the best first."""
AGREES, BOUND, TRAP = "agrees", "bound", "trap"
ROLES = frozenset({AGREES, BOUND, TRAP})

Row = dict[str, Any]


def kept(name: str) -> dict[str, list[Row]]:
    """Return the rows of a file by section, each with what its section and its group say, and with an `id`."""
    stem = Path(name).stem
    sections: dict[str, Row] = yaml.load((HERE / name).read_text(encoding="utf-8"), Loader=yaml.CSafeLoader)
    return {title: list(_rows(section, f"{stem}/{title}")) for title, section in sections.items()}


def every_row() -> list[Row]:
    """Return all rows of all files, in the order of the files' names."""
    return [row for path in sorted(HERE.glob("*.yaml")) for rows in kept(path.name).values() for row in rows]


def computations_of(row: Row) -> list[str]:
    """Return the computations that a row checks."""
    of = row["of"]
    return of if isinstance(of, list) else [of]


def role_of(row: Row) -> str:
    """Return what a row is for: to agree, to bound, or to name a trap."""
    return str(row.get("role", AGREES))


def allowance(row: Row, published: Any) -> float | None:
    """Return how far a number may lie from the published one, in its own unit; None where it must be exact."""
    if row.get("rounded"):
        exponent = Decimal(str(published)).as_tuple().exponent
        return float(10.0 ** int(exponent) / 2)
    if "within" in row:
        return float(row["within"])
    return None if "tolerance" not in row else float(row["tolerance"]) * abs(float(published))


def numbers_in(published: Any) -> Iterator[Any]:
    """Yield each number of a published result, however it is gathered; texts that are no numbers are left out."""
    if isinstance(published, dict | list):
        for one in published.values() if isinstance(published, dict) else published:
            yield from numbers_in(one)
    elif not isinstance(published, bool) and number(published) is not None:
        yield published


def worst_tolerance(row: Row) -> float:
    """Return the greatest share by which ours may miss what a row publishes; 0 where it must be exact."""
    shares = [
        (allowance(row, one) or 0.0) / abs(float(Fraction(str(one))))
        for one in numbers_in(row.get("published"))
        if Fraction(str(one)) != 0
    ]
    return max(shares, default=float(row.get("tolerance", 0.0)))


def number(value: Any) -> Fraction | None:
    """Return a published value as an exact number, or None when it is a text or a truth."""
    if isinstance(value, bool) or value is None:
        return None
    try:
        return Fraction(str(value))
    except ValueError:
        return None


def base(text: str, unit: str) -> Fraction:
    """Return a number of a unit in the base unit of its dimension, exactly."""
    return Fraction(text) * UNITS[unit].factor + UNITS[unit].offset


def in_unit(value: Fraction, unit: str) -> Fraction:
    """Return a number of the base unit in a unit, exactly."""
    return (value - UNITS[unit].offset) / UNITS[unit].factor


def between(ends: list[str], unit: str) -> Interval:
    """Return an interval of a unit in base units."""
    low, high = ends
    return Interval(base(low, unit), base(high, unit))


def kelvin(celsius: str) -> Fraction:
    """Return degrees Celsius in kelvin."""
    return convert(Fraction(celsius), UNITS["°C"], UNITS["K"])


def thread(text: str) -> MetricThread:
    """Return the thread that a text names."""
    named = metric_thread(text)
    assert named is not None, text
    return named


def inch_thread(diameter_in: float, threads_per_inch: int) -> MetricThread:
    """Return an inch thread in mm: a UN thread has the flanks, and so the friction, of a metric one."""
    inch = Fraction(254, 10)
    return MetricThread(Fraction(str(diameter_in)) * inch, inch / threads_per_inch)


def _rows(section: Row, place: str) -> Iterator[Row]:
    shared = {key: value for key, value in section.items() if key != "rows"}
    for at, row in enumerate(section["rows"], start=1):
        whole = {**shared, **row, "id": f"{place}/{at}"}
        if "rows" in row:
            yield from _rows(whole, whole["id"])
        else:
            yield whole
