"""The kept values themselves: each row says what it checks, where it is from and how that is known."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest

from authoring.workshop import confirmed
from tests.outside.agreement import Agreement
from tests.outside.evidence import kinds, rows_of
from tests.outside.kept import AGREES, BOUND, HERE, ROLES, STATUSES, TRAP, Row, every_row, role_of, worst_tolerance
from tests.outside.table import Held, held_in, not_held, table, takes_in_the_folder

ROWS = every_row()
STRAIGHT: Row = {"id": "a/b/1", "of": "cooling", "published": "2.0", "tolerance": 0.01, "status": "read"}
OTHER: Row = {"id": "a/b/2", "of": "clamp_force", "published": [3], "status": "restated"}


def _well_made(row: Row) -> bool:
    known = row.get("status") in STATUSES and role_of(row) in ROLES
    answers = ("wrong" in row) == (role_of(row) == TRAP) == ("published" not in row)
    return bool(row.get("of") and row.get("source") and known and answers)


def test_every_row_says_what_it_is() -> None:
    """A row names its computation, its source and how that is known; a result, or what ours must not be."""
    assert [row["id"] for row in ROWS if not _well_made(row)] == []


@pytest.mark.parametrize("lacking", ["of", "source", "status", "published"])
def test_a_row_that_lacks_something_is_told(lacking: str) -> None:
    """None of the four may be missing, whatever the row is for."""
    whole = {**STRAIGHT, "source": "a book"}
    assert _well_made(whole)
    assert not _well_made({key: value for key, value in whole.items() if key != lacking})
    assert not _well_made({**whole, "role": TRAP})
    assert not _well_made({**whole, "status": "hearsay"})


def test_every_row_has_a_name_of_its_own() -> None:
    """No two rows bear the same id, so that none hides behind another."""
    assert len({row["id"] for row in ROWS}) == len(ROWS)


def test_the_product_knows_what_the_rows_say() -> None:
    """What the booklet may say of a computation is what the kept rows say, computation by computation."""
    assert dict(confirmed.KINDS) == kinds(ROWS)


def test_every_computation_of_the_workshop_is_held_against_something() -> None:
    """No module that computes is without rows, and no row is for a module that is not there."""
    modules = {path.stem for path in (HERE.parents[1] / "authoring/workshop").glob("*.py")}
    checked = {name.partition(".")[0] for name in kinds(ROWS)}
    elsewhere = {"units", "rounding", "unit_writing", "signal_words"}
    assert modules - {"__init__", "confirmed", "impossible", "interval"} == checked - elsewhere


@pytest.mark.parametrize(("ours", "passes"), [(2.0, True), (2.019, True), (2.021, False), (-2.0, False)])
def test_a_number_agrees_within_its_tolerance(ours: float, *, passes: bool) -> None:
    """Up to the share that the row says, and the error is kept either way."""
    agreement = Agreement()
    if passes:
        agreement(STRAIGHT, ours)
    else:
        with pytest.raises(AssertionError, match="ours is"):
            agreement(STRAIGHT, ours)
    assert agreement.records[0]["worst"] == pytest.approx(abs(ours - 2) / 2)


@pytest.mark.parametrize(
    ("row", "ours"),
    [
        ({"published": "1.38", "rounded": True}, 1.3851),
        ({"published": 1.38, "within": 0.01}, 1.3901),
        ({"published": "1.38"}, 1.3800000001),
        ({"published": "kept"}, "broken"),
        ({"published": None}, 0.0),
        ({"published": True}, False),
        ({"published": [1, 2]}, [2, 1]),
        ({"published": {"gap": "1"}}, {"gap": 2}),
        ({"published": [None]}, [5.0]),
        ({"published": 5}, None),
    ],
)
def test_what_differs_fails(row: Row, ours: object) -> None:
    """Beyond a last digit, a width or nothing at all; another text, another order, a value for none."""
    with pytest.raises(AssertionError):
        Agreement()({**row, "id": "a/b/1", "of": "cooling"}, ours)


@pytest.mark.parametrize(
    ("row", "ours"),
    [
        ({"published": "1.38", "rounded": True}, 1.385),
        ({"published": 1.38, "within": 0.01}, 1.3899),
        ({"published": "kept"}, "kept"),
        ({"published": {"gap": "1", "of": [None]}}, {"gap": 1, "of": [None]}),
    ],
)
def test_what_agrees_passes(row: Row, ours: object) -> None:
    """Up to half of the last digit itself, and item by item."""
    agreement = Agreement()
    agreement({**row, "id": "a/b/1", "of": "cooling"}, ours)
    assert agreement.records[0]["of"] == "cooling"


def test_a_bound_and_a_trap_fail_from_their_own_side() -> None:
    """A bound is no value to agree with, and a trap is what ours must not be."""
    bound = {"id": "a/b/1", "of": "burns", "role": BOUND, "published": 5}
    trap = {"id": "a/b/2", "of": "burns", "role": TRAP, "wrong": 100, "by": 0.1}
    agreement = Agreement()
    agreement.at_most(bound, 5)
    agreement.at_least(bound, 5)
    agreement.not_wrong(trap, 89)
    wrong: list[tuple[Callable[[Row, object], None], Row, object]] = [
        (agreement.at_most, bound, 6),
        (agreement.at_least, bound, 4),
        (agreement.not_wrong, trap, 91),
        (agreement, bound, 5),
        (agreement, trap, 5),
        (agreement.not_wrong, {**trap, "wrong": "an angle"}, "an angle"),
    ]
    for held, row, ours in wrong:
        with pytest.raises(AssertionError):
            held(row, ours)


def test_a_row_of_several_computations_must_say_which() -> None:
    """A record without its computation would stand in no line of the table."""
    both = {**STRAIGHT, "of": ["cooling", "burns"]}
    with pytest.raises(AssertionError, match="say which"):
        Agreement()(both, 2.0)
    Agreement()(both, 2.0, of="burns")


class _Report:
    when = "call"

    def __init__(self, outcome: str, *records: Row) -> None:
        self.outcome = outcome
        self.user_properties = [("another", 1), ("outside", list(records))]


def _cells(lines: list[str], name: str) -> list[str]:
    (line,) = [line for line in lines if line.startswith(name)]
    return line.split()


def test_the_table_tells_what_was_measured() -> None:
    """Cases, values and the worst error come from the records; what never ran or failed is no error."""
    agreement = Agreement()
    agreement(STRAIGHT, 2.01)
    agreement(STRAIGHT, 1.99)
    held = held_in([_Report("passed", *agreement.records), object()])
    lines = table(held, [STRAIGHT, OTHER])
    assert _cells(lines, "cooling") == ["cooling", "1", "2", "0", "5.0e-03", "read", "1"]
    assert _cells(lines, "clamp_force") == ["clamp_force", "0", "0", "0", "NOT", "RUN", "restated", "1", "unverified"]
    assert not_held(held, [STRAIGHT, OTHER]) == ["a/b/2 for clamp_force"]
    assert "FAILED" in _cells(table(held_in([_Report("failed", *agreement.records)]), [STRAIGHT]), "cooling")


def test_a_row_counts_for_each_of_its_computations() -> None:
    """Held for one, it still lacks the other."""
    both = {**STRAIGHT, "of": ["cooling", "burns"]}
    held = [Held({"id": "a/b/1", "of": "burns", "role": AGREES, "values": 1, "worst": 0.0}, passed=True)]
    assert not_held(held, [both]) == ["a/b/1 for cooling"]
    assert rows_of("burns", [both]) == [both]


@pytest.mark.parametrize(
    ("arguments", "whole"),
    [
        (["tests"], True),
        (["tests/outside"], True),
        (["tests/workshop", "tests/outside"], True),
        (["tests/outside/test_heat.py"], False),
        (["tests/outside/test_heat.py::test_x"], False),
        (["tests/rules"], False),
    ],
)
def test_only_a_run_of_the_whole_folder_is_asked_for_every_row(arguments: list[str], *, whole: bool) -> None:
    """Whoever runs one file has not forgotten the others."""
    assert takes_in_the_folder(arguments, Path(__file__).parents[2]) == whole


def test_the_worst_tolerance_is_a_share_of_the_published_value() -> None:
    """A width and a last digit count for the smallest value that they are given for."""
    assert worst_tolerance({"published": "0.50", "rounded": True}) == pytest.approx(0.01)
    assert worst_tolerance({"published": [10, 20], "within": 1}) == pytest.approx(0.1)
    assert worst_tolerance({"published": {"reading": "holds", "gap": "0"}}) == 0
