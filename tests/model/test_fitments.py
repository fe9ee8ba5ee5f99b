"""Which fitments meet a condition, held against trying every whole machine one by one."""

from __future__ import annotations

import itertools
import time
from collections.abc import Mapping

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from authoring.model.fitments import concerned, fitments, may_hold, together
from authoring.model.space import LIMIT, cells_of, possible, too_many
from authoring.model.specification import When
from authoring.model.things import Equipment, Feature
from authoring.source.document import Where
from authoring.source.reader import read_document

FEATURES = {"brake": ("drum", "disc"), "axle": ("narrow", "middle", "wide"), "cab": ("shut", "bare")}

DOCUMENT, _ = read_document("hob.yaml", b"equipment: hob\n")
assert DOCUMENT is not None
WHERE = Where(DOCUMENT)


def _equipment(never: tuple[When, ...], features: Mapping[str, tuple[str, ...]] = FEATURES) -> Equipment:
    known = {
        name: Feature(name, name, "Look.", dict(zip(values, values, strict=True)), WHERE)
        for name, values in features.items()
    }
    return Equipment("hob", "Hob", known, never, {}, {}, {}, {}, {}, WHERE)


def _some_values(feature: str) -> st.SearchStrategy[tuple[str, ...]]:
    return st.lists(st.sampled_from(FEATURES[feature]), min_size=1, unique=True).map(tuple)


def _when(lowest: int) -> st.SearchStrategy[When]:
    names = st.lists(st.sampled_from(sorted(FEATURES)), min_size=lowest, unique=True)
    return names.flatmap(lambda picked: st.fixed_dictionaries({name: _some_values(name) for name in picked}))


NEVER = st.lists(_when(1), max_size=4).map(tuple)


def _machines(never: tuple[When, ...], when: When) -> list[dict[str, str]]:
    """Return every whole machine that exists and meets a condition, by trying all of them."""
    every = [dict(zip(FEATURES, picked, strict=True)) for picked in itertools.product(*FEATURES.values())]
    existing = [one for one in every if not any(may_hold(rule, one) for rule in never)]
    return [one for one in existing if may_hold(when, one)]


@given(NEVER, _when(1))
@settings(max_examples=150)
def test_possible_finds_a_machine_exactly_when_there_is_one(never: tuple[When, ...], when: When) -> None:
    """A condition is judged as by whole machines, for equipment of which any machine exists at all."""
    assume(_machines(never, {}))
    assert possible(_equipment(never), when) is bool(_machines(never, when))


@given(NEVER, _when(0), _when(1))
@settings(max_examples=150)
def test_fitments_over_tied_features_are_those_of_whole_machines(
    never: tuple[When, ...], covers: When, asked: When
) -> None:
    """Tying in the features of what never occurs leaves no fitment that only a machine that cannot be would have."""
    machines = _machines(never, covers)
    assume(machines)
    equipment = _equipment(never)
    tied = concerned(equipment, asked)
    assert set(asked) <= tied
    found = {tuple(sorted(one.items())) for one in fitments(equipment, covers, tied)}
    assert found == {tuple(sorted((name, one[name]) for name in tied)) for one in machines}


@given(_when(0), _when(0))
@settings(max_examples=100)
def test_together_holds_where_both_hold(one: When, other: When) -> None:
    """The joined condition is met by exactly the machines that meet each."""
    both = [machine for machine in _machines((), one) if may_hold(other, machine)]
    assert _machines((), together(one, other)) == both


def test_ten_features_of_four_values_are_laid_out_and_one_more_is_not() -> None:
    """The limit lies where it is said to lie, and beyond it nothing is claimed."""
    for count, beyond in ((10, False), (11, True)):
        features = {f"f{number}": ("a", "b", "c", "d") for number in range(count)}
        equipment = _equipment((), features)
        assert cells_of(equipment, {}, features) == 4**count
        assert too_many(equipment, {}, features) is beyond
    assert LIMIT == 4**10


def test_a_chain_of_ties_is_followed_to_its_end_at_once() -> None:
    """Two thousand features, each tied to the next, are found from the first in a blink."""
    features = {f"f{number}": ("a", "b") for number in range(2000)}
    never: tuple[When, ...] = tuple({f"f{number}": ("a",), f"f{number + 1}": ("b",)} for number in range(1998))
    equipment = _equipment(never, features)
    begun = time.perf_counter()
    assert concerned(equipment, ["f0"]) == features.keys() - {"f1999"}
    assert time.perf_counter() - begun < 2
