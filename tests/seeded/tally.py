"""Raw numbers by kind of fault: how they are counted, kept between runs, and set out as a table."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from msgspec import Struct

from tests.seeded.judge import Outcome, Verdict

FILE = Path(__file__).parent / "caught.json"
"""What was counted last, written by `python -m tests.seeded --keep`."""


class Tally(Struct, frozen=True):
    """How many variants of one kind came to what; `aside` are those caught only by what is left over."""

    total: int = 0
    errors: int = 0
    warnings: int = 0
    aside: int = 0
    equal: int = 0
    text: int = 0
    missed: int = 0

    @property
    def caught(self) -> int:
        """How many were told of."""
        return self.errors + self.warnings

    @property
    def faults(self) -> int:
        """How many are faults: what comes to the same is none."""
        return self.total - self.equal

    def plus(self, verdict: Verdict) -> Tally:
        """Return the tally with one variant more."""
        outcome = verdict.outcome
        return Tally(
            self.total + 1,
            self.errors + (outcome is Outcome.ERROR),
            self.warnings + (outcome is Outcome.WARNING),
            self.aside + verdict.aside,
            self.equal + (outcome is Outcome.EQUAL),
            self.text + (outcome is Outcome.TEXT),
            self.missed + (outcome is Outcome.MISSED),
        )

    def and_those_of(self, other: Tally) -> Tally:
        """Return the sum of two tallies."""
        return Tally(*(getattr(self, name) + getattr(other, name) for name in self.__struct_fields__))


class Kept(Struct, frozen=True):
    """How many variants there were, and the numbers by kind of those that were judged, and of the suite's sample."""

    variants: int
    judged: Mapping[str, Tally]
    sample: Mapping[str, Tally]


_PARTS = ("judged", "sample")


def tallies(verdicts: Iterable[tuple[str, Verdict]]) -> dict[str, Tally]:
    """Return the numbers by kind, in the order in which the kinds come."""
    found: dict[str, Tally] = {}
    for kind, verdict in verdicts:
        found[kind] = found.get(kind, Tally()).plus(verdict)
    return found


def kept() -> Kept:
    """Return what was written last."""
    data = json.loads(FILE.read_text(encoding="utf-8"))
    judged, sample = ({kind: Tally(**one) for kind, one in data[name].items()} for name in _PARTS)
    return Kept(data["variants"], judged, sample)


def keep(numbers: Kept) -> None:
    """Write the numbers, one kind a line."""
    parts = [f'  "variants": {numbers.variants}']
    for name in _PARTS:
        rows = [f"    {json.dumps(kind)}: {_row(tally)}" for kind, tally in getattr(numbers, name).items()]
        parts.append(f'  "{name}": {{\n' + ",\n".join(rows) + "\n  }")
    FILE.write_text("{\n" + ",\n".join(parts) + "\n}\n", encoding="utf-8")


def _row(tally: Tally) -> str:
    return json.dumps({name: getattr(tally, name) for name in tally.__struct_fields__})


_HEAD = ("kind of fault", "total", "error", "warning", "(aside)", "equal", "text tells", "missed", "caught of faults")


def table(found: Mapping[str, Tally]) -> Iterator[str]:
    """Yield the lines of the table: raw numbers, and which share of the faults was caught."""
    whole = Tally()
    for tally in found.values():
        whole = whole.and_those_of(tally)
    rows = [_cells(kind, tally) for kind, tally in (*found.items(), ("all", whole))]
    widths = [max(len(row[column]) for row in (_HEAD, *rows)) for column in range(len(_HEAD))]
    for row in (_HEAD, *rows):
        yield "  ".join(
            cell.ljust(width) if place == 0 else cell.rjust(width)
            for place, (cell, width) in enumerate(zip(row, widths, strict=True))
        )


def _cells(kind: str, tally: Tally) -> tuple[str, ...]:
    numbers = (tally.total, tally.errors, tally.warnings, tally.aside, tally.equal, tally.text, tally.missed)
    share = f"{tally.caught} of {tally.faults}"
    percent = f" {100 * tally.caught // tally.faults:3d} %" if tally.faults else "      "
    return (kind, *(str(one) if one else "." for one in numbers), share + percent)
