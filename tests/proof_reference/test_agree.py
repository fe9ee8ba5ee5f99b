"""The checker held against the reference on 2,000 random libraries: rule, step, and the machines concerned."""

from __future__ import annotations

from collections import Counter

import pytest

from tests.proof_reference.compare import SEEDS, compare, rules_in
from tests.proof_reference.reference import RULES

BLOCKS = 2
"""Blocks of seeds are shared among workers; what is asked of all of them is asked of each in proportion."""


def seeds_of(block: int) -> range:
    """Return the seeds of one block."""
    size = SEEDS // BLOCKS
    return range(block * size, (block + 1) * size)


@pytest.mark.parametrize("block", range(BLOCKS))
def test_checker_and_reference_agree(block: int) -> None:
    """Both find the same faults, at the same steps and for the same machines.

    Libraries are good and faulty in plenty, and every rule is tried often enough.
    """
    compared = [compare(seed) for seed in seeds_of(block)]
    for one in compared:
        assert not one.differing(), one.told()
    good = sum(one.good for one in compared)
    fired = Counter(rule for one in compared for rule in rules_in(one))
    assert 0.3 <= good / len(compared) <= 0.7
    assert [rule for rule in RULES if fired[rule] < 20 / BLOCKS] == []


def test_a_library_is_made_anew_alike() -> None:
    """A seed tells of one library alone, so that a disagreement can be looked at again."""
    assert compare(7) == compare(7)
    assert compare(7).files != compare(8).files
