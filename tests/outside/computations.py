"""The page of computations, written from the docstrings of the workshop and from the kept values.

python -m tests.outside.computations
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from types import MappingProxyType

from authoring.workshop.confirmed import unverified
from authoring.workshop.gauges import Rule
from tests.outside.evidence import kind_by_rows, rows_of
from tests.outside.explained import Explained, computations
from tests.outside.kept import AGREES, BOUND, HERE, STATUSES, Row, computations_of, every_row, role_of, worst_tolerance

FILE = HERE.parents[1] / "schema" / "COMPUTATIONS.md"

GROUPS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "Threads and bolts": (
            "metric_thread",
            "thread_geometry",
            "proof_load",
            "clamp_force",
            "bolt_load",
            "meant_unit",
            "thread_engagement",
        ),
        "Tightening": (
            "wrench_fit",
            "wrench_setting",
            "tightening_angle",
            "bolt_pattern",
            "tightening_order",
        ),
        "Fluids": ("fills", "expansion", "oil_density", "level_windows"),
        "Heat": ("cooling", "burns", "shrink_fit"),
        "Measuring": ("gauges", "clock"),
    }
)
"""The computations as a reader looks for them."""

ELSEWHERE: Mapping[str, str] = MappingProxyType(
    {
        "units": "What is a value in another unit?",
        "rounding": "How many digits has a converted value?",
        "rounding.limits": "How is a converted limit rounded so that it never widens?",
        "unit_writing": "How are a number and its unit written?",
        "signal_words": "Which signal word has a safety message?",
    }
)
"""What is held against the outside as well, and has its home in another folder."""

HEAD = f"""# What is worked out, and how well it is known

<!-- Written by `./run computations` from the docstrings of authoring/workshop and the values in tests/outside. -->

Each computation below is held against something outside of this project, in every run of the tests.
A maker's value goes before all of them: they say what is usual, and whether a stated value can be meant.

| word | meaning |
| --- | --- |
| read | the value was read in the source's own text |
| restated | it was read in a second party's copy of the source |
| memory | it was found in no text |
| computed | it was worked out apart, from published inputs or by another library |
| common practice | the trade does so; nobody published it |

A computation is **unverified** while no value for it was read in a source's own text; `authoring/workshop/confirmed.py`
knows it, so that a booklet can say so beside a result.
"Within" is how near ours must come to the published value; the end of a test run prints how near it did come.

The decision rule is {Rule.GUARDED.value}: the limits move in by the whole spread of the gauge, w = U (ISO 14253-1,
JCGM 106:2012 and ILAC-G8:09/2019, 4.2).
A converted limit is rounded inward, so it never widens (ASME A112.18.1/CSA B125.1, Annex A.2 e).
"""


def page() -> str:
    """Return the whole page."""
    rows, known = every_row(), {one.name: one for one in computations()}
    lines = [HEAD, "| question | computation | known by |", "| --- | --- | --- |"]
    for names in GROUPS.values():
        lines += [
            f"| {known[name].question} | [{_title(name)}](#{_anchor(name)}) | {_known(name, rows)} |" for name in names
        ]
    for group, names in GROUPS.items():
        lines += ["", f"## {group}"]
        for name in names:
            lines += _section(known[name], rows)
    return "\n".join([*lines, *_elsewhere(rows)]) + "\n"


def _section(one: Explained, rows: Iterable[Row]) -> Iterator[str]:
    yield from ("", f"### {_title(one.name)}", "", one.question)
    if "Formula" in one.parts:
        yield from ("", "```text", *one.parts["Formula"], "```")
    if "Table" in one.parts:
        yield from ("", f"A table: {one.text('Table')}")
    if "Symbols" in one.parts:
        yield from ("", "| symbol | meaning |", "| --- | --- |")
        yield from (f"| `{name}` | {meaning} |" for name, _, meaning in _symbols(one))
    for label in ("Source", "Assumptions", "Limits"):
        if label in one.parts:
            yield from ("", f"**{label}:** {one.text(label)}")
    labels = {part: _label(part, one.name) for part in _parts(one.name, rows)}
    yield from ("", f"**Held against** ({_known(one.name, rows)}):", "", *_evidence(labels, rows))


def _symbols(one: Explained) -> Iterator[tuple[str, str, str]]:
    return (line.partition(": ") for line in one.parts["Symbols"])


def _evidence(names: Mapping[str, str], rows: Iterable[Row]) -> Iterator[str]:
    """Yield a table of the rows of computations under their labels: one line a source, the best known first."""
    yield from ("| of | rows | within | known by | source |", "| --- | --- | --- | --- | --- |")
    for name, label in names.items():
        held = rows_of(name, rows)
        gathered = Counter((STATUSES.index(row["status"]), _within(row, held), row["source"]) for row in held)
        for (rank, within, source), count in sorted(gathered.items(), key=lambda one: one[0][0]):
            yield f"| {label} | {count} | {within} | {STATUSES[rank]} | {source} |"


def _within(row: Row, held: Iterable[Row]) -> str:
    """Return how near ours must come to the rows of one source, by the worst of them; or what the rows are instead."""
    if role_of(row) != AGREES:
        return "a bound" if role_of(row) == BOUND else "must differ"
    alike = [
        one
        for one in held
        if role_of(one) == AGREES and (one["source"], one["status"]) == (row["source"], row["status"])
    ]
    worst = max(worst_tolerance(one) for one in alike)
    if worst == 0:
        return "exact"
    return f"{100 * worst:.2g} %" if worst >= _SMALL else "0.001 %"


_SMALL = 1e-5


def _parts(name: str, rows: Iterable[Row]) -> list[str]:
    """Return the computations of a module that stand in the rows: its own name, and names behind a full stop."""
    return sorted({one for row in rows for one in computations_of(row) if one.partition(".")[0] == name})


def _known(name: str, rows: Iterable[Row]) -> str:
    """Return how the parts of a computation are known, each kind once with the parts that it is true of."""
    parts: dict[str, list[str]] = {}
    for part in _parts(name, rows):
        parts.setdefault(_word(part, rows), []).append(_label(part, name))
    if len(parts) == 1:
        return next(iter(parts))
    return "; ".join(f"{', '.join(labels)}: {word}" for word, labels in parts.items())


def _elsewhere(rows: Iterable[Row]) -> Iterator[str]:
    yield from ("", "## Units, writing and signal words", "")
    yield from (f"- {_title(name)}: {question} ({_word(name, rows)})" for name, question in ELSEWHERE.items())
    yield ""
    yield from _evidence({name: _title(name) for name in ELSEWHERE}, rows)


def _word(name: str, rows: Iterable[Row]) -> str:
    return kind_by_rows(name, rows) + (", **unverified**" if unverified(name) else "")


def _label(part: str, name: str) -> str:
    """Return what a part is called where its computation is known: its own name without that of the computation."""
    return _title(part) if part == name else part.removeprefix(f"{name}.").replace("_", " ")


def _title(name: str) -> str:
    """Return the name of a computation in words; a part stands behind a comma."""
    words = name.replace("_", " ").replace(".", ", ")
    return words[0].upper() + words[1:]


def _anchor(name: str) -> str:
    return name.replace("_", "-")


def main() -> None:
    """Write the page."""
    FILE.write_text(page(), encoding="utf-8")


if __name__ == "__main__":
    main()
