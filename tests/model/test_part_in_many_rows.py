"""A part that stands in several rows of a choice, and what that bars for the steps that follow it."""

from __future__ import annotations

import itertools
import time

from authoring.model.decided import MOST_OTHERS
from authoring.model.specification import When
from tests.model.random_equipment import NUMBER, Job, library_of

FEATURES = {f"f{place}": ("a", "b", "c") for place in range(8)}
ASKED: tuple[tuple[When, When]] = (({"ring": ("thin",)}, {}),)


def _barred(rows: tuple[When, ...]) -> tuple[When, ...]:
    """Return what never occurs in a job in which one part stands in these rows."""
    job = Job(FEATURES, parts=rows, steps=ASKED, needs=False, gives=(("thin",),) * len(rows))
    library = library_of(job)
    vehicle = library.scope(library.procedures[NUMBER]).vehicle
    assert vehicle is not None
    return vehicle.never


def test_a_part_of_two_rows_is_barred_where_neither_is_met() -> None:
    """It takes a value of both rows that is not theirs; rows that leave none bar nothing."""
    assert _barred(({"f0": ("a",)}, {"f1": ("a", "b")})) == ({"ring": ("thin",), "f0": ("b", "c"), "f1": ("c",)},)
    assert _barred(({"f0": ("a",)}, {"f0": ("b", "c")})) == ()


def test_a_part_of_very_many_rows_is_barred_nowhere_and_soon() -> None:
    """Where the conditions would multiply without end none is stated, so no step is refused that could be done."""
    rows = tuple({one: ("a",), other: ("b",), more: ("c",)} for one, other, more in itertools.combinations(FEATURES, 3))
    begun = time.perf_counter()
    assert _barred(rows) == ()
    assert time.perf_counter() - begun < 2
    assert 0 < len(_barred(rows[:4])) < MOST_OTHERS
