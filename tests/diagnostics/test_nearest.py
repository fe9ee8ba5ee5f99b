"""A name is offered for another one where a slip of the hand explains the difference."""

from __future__ import annotations

import pytest

from authoring.diagnostics.nearest import one_slip


@pytest.mark.parametrize(
    ("word", "name"),
    [
        ("levle-plug", "level-plug"),
        ("leve-plug", "level-plug"),
        ("levell-plug", "level-plug"),
        ("levet-plug", "level-plug"),
        ("level-plugs", "level-plug"),
        ("level-plu", "level-plug"),
        ("levelplug", "level-plug"),
        ("plug-level", "level-plug"),
        ("evel-plug", "level-plug"),
    ],
)
def test_a_slip_is_mended(word: str, name: str) -> None:
    """A letter too many, missing, wrong or swapped, a hyphen left out, and words that have changed places."""
    assert one_slip(word, ["drain-plug", name]) == f'Did you mean "{name}"?'


@pytest.mark.parametrize(
    ("word", "name"),
    [
        ("guide-screws", "guide-plate"),
        ("cover-bolts", "lever-bolts"),
        ("level-plug", "level-plug-ring"),
        ("lvl-plug", "level-plug"),
        ("gap", "lid"),
        ("ab", "ba-c"),
    ],
)
def test_what_begins_or_ends_alike_is_another_thing(word: str, name: str) -> None:
    """Two names that share a word or an ending are not offered for each other."""
    assert one_slip(word, [name]) == ""
