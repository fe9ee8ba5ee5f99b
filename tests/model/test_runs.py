"""What is done on sets of machines, held against going through the machines one by one."""

from __future__ import annotations

import math
from collections.abc import Sequence

from hypothesis import example, given
from hypothesis import strategies as st

from authoring.model.runs import MOST_RUNS, last_done, one_of_each, runs
from authoring.model.space import Space
from tests.model.test_space import equipment_of

SIZE = 12
MASKS = st.lists(st.integers(0, 2**SIZE - 1), max_size=6)
EVERY = st.integers(0, 2**SIZE - 1)


def _on(cell: int, masks: Sequence[int]) -> tuple[int, ...]:
    """Return the numbers of the things that are done on one cell."""
    return tuple(number for number, mask in enumerate(masks) if mask >> cell & 1)


@given(MASKS, EVERY)
@example([], 0)
@example([], 5)
def test_each_cell_is_in_the_one_run_of_what_is_done_on_it(masks: list[int], every: int) -> None:
    """The runs are as many as there are different choices, in the order of their first cells."""
    found = runs(enumerate(masks), every)
    cells = [cell for cell in range(SIZE) if every >> cell & 1]
    assert [done for done, _ in found] == list(dict.fromkeys(_on(cell, masks) for cell in cells))
    for done, mine in found:
        assert mine == sum(1 << cell for cell in cells if _on(cell, masks) == done)


@given(MASKS, EVERY)
def test_the_last_done_is_the_last_on_each_cell(masks: list[int], every: int) -> None:
    """Each cell is told once, with the last thing that is done on it, and with none where nothing is."""
    told = list(last_done(list(enumerate(masks)), every))
    assert sum(mine for _, mine in told) == every
    for cell in range(SIZE):
        last = [thing for thing, mine in told if mine >> cell & 1]
        assert last == ([next(iter(_on(cell, masks)[::-1]), None)] if every >> cell & 1 else [])


def test_of_too_many_runs_nothing_is_said() -> None:
    """Twelve choices that are free of one another make 4096 runs; thirteen are refused, whatever else is marked."""
    masks = [sum(1 << cell for cell in range(2**13) if cell >> bit & 1) for bit in range(13)]
    assert len(runs(enumerate(masks[:12]), (1 << 2**13) - 1)) == MOST_RUNS == math.prod([2] * 12)
    assert runs(enumerate(masks), (1 << 2**13) - 1) == []


def test_one_of_each_kind_stands_for_all_of_it() -> None:
    """Of six machines that two conditions part in three kinds, the first of each is shown with all like it."""
    space = Space(equipment_of(()), {}, ("brake", "axle"))
    whens = [{"brake": ("drum",)}, {"brake": ("drum",), "axle": ("wide",)}]
    assert [(dict(one), cells.bit_count()) for one, cells in one_of_each(whens, space.every, space)] == [
        ({"brake": "drum", "axle": "narrow"}, 2),
        ({"brake": "drum", "axle": "wide"}, 1),
        ({"brake": "disc", "axle": "narrow"}, 3),
    ]
