"""Sets of fitments as numbers, held against whole machines that are tried one by one."""

from __future__ import annotations

import itertools
import time
from collections.abc import Mapping

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from authoring.model.fitments import may_hold
from authoring.model.space import Space, cells_of
from authoring.model.specification import When
from authoring.model.things import Equipment, Feature
from authoring.source.document import Where
from authoring.source.reader import read_document

FEATURES = {"brake": ("drum", "disc"), "axle": ("narrow", "middle", "wide"), "cab": ("shut", "bare")}

DOCUMENT, _ = read_document("hob.yaml", b"equipment: hob\n")
assert DOCUMENT is not None
WHERE = Where(DOCUMENT)


def equipment_of(never: tuple[When, ...], features: Mapping[str, tuple[str, ...]] = FEATURES) -> Equipment:
    """Return equipment that has nothing but these features and combinations that never occur."""
    known = {
        name: Feature(name, name, "Look.", dict(zip(values, values, strict=True)), WHERE)
        for name, values in features.items()
    }
    return Equipment("hob", "Hob", known, never, {}, {}, {}, {}, {}, WHERE)


def _when(lowest: int) -> st.SearchStrategy[When]:
    some = {
        name: st.lists(st.sampled_from(values), min_size=1, unique=True).map(tuple) for name, values in FEATURES.items()
    }
    names = st.lists(st.sampled_from(sorted(FEATURES)), min_size=lowest, unique=True)
    return names.flatmap(lambda picked: st.fixed_dictionaries({name: some[name] for name in picked}))


NEVER = st.lists(_when(1), max_size=3).map(tuple)


def _machines(never: tuple[When, ...], covers: When) -> list[dict[str, str]]:
    """Return every covered machine that exists, by trying all of them."""
    every = [dict(zip(FEATURES, picked, strict=True)) for picked in itertools.product(*FEATURES.values())]
    return [one for one in every if may_hold(covers, one) and not any(may_hold(rule, one) for rule in never)]


def _inside(space: Space, cells: int, machine: Mapping[str, str]) -> bool:
    only = {name: (value,) for name, value in machine.items() if name in space.values}
    return bool(space.where(only) & cells)


@given(NEVER, _when(0), _when(0), _when(0))
@settings(max_examples=200)
def test_sets_hold_the_machines_that_meet_a_condition(
    never: tuple[When, ...], covers: When, one: When, other: When
) -> None:
    """Both conditions, either, and the one without the other hold for the same machines as asked one by one."""
    space = Space(equipment_of(never), covers, {*one, *other})
    for machine in _machines(never, covers):
        first, second = may_hold(one, machine), may_hold(other, machine)
        assert _inside(space, space.where(one) & space.where(other), machine) is (first and second)
        assert _inside(space, space.where(one) | space.where(other), machine) is (first or second)
        assert _inside(space, space.where(one) & ~space.where(other), machine) is (first and not second)


@given(NEVER, _when(0), _when(1))
@settings(max_examples=200)
def test_a_set_has_as_many_cells_as_machines_over_its_features(
    never: tuple[When, ...], covers: When, when: When
) -> None:
    """Every machine has its cell, and a space is never larger than it was said to be."""
    space = Space(equipment_of(never), covers, when)
    names = list(space.values)
    alive = {tuple(machine[name] for name in names) for machine in _machines(never, covers)}
    # What ties the features of the space to others is in it too, so a cell is alive by the rules named here alone.
    assert space.every.bit_count() >= len(alive)
    assert {
        tuple(m[name] for name in names) for m in _machines(never, covers) if _inside(space, space.where(when), m)
    } == {tuple(m[name] for name in names) for m in _machines(never, covers) if may_hold(when, m)}
    assert cells_of(equipment_of(never), covers, when) >= space.every.bit_count()


@given(NEVER, st.lists(_when(1), min_size=1, max_size=3))
@settings(max_examples=200)
def test_the_fewest_features_show_the_fault_and_one_fewer_does_not(never: tuple[When, ...], whens: list[When]) -> None:
    """Every machine with these features is in the set, and no choice of fewer features can say so."""
    space = Space(equipment_of(never), {}, FEATURES)
    cells = 0
    for when in whens:
        cells |= space.where(when)
    assume(cells)
    fewest = space.fewest(cells)
    machines = _machines(never, {})
    bad = [one for one in machines if any(may_hold(when, one) for when in whens)]
    assert all(one in bad for one in machines if all(one[name] == value for name, value in fewest.items()))
    for names in itertools.combinations(FEATURES, max(len(fewest) - 1, 0)):
        for one in bad if len(names) < len(fewest) else ():
            assert any(all(other[name] == one[name] for name in names) and other not in bad for other in machines)


@given(NEVER, st.lists(_when(1), min_size=1, max_size=3))
@settings(max_examples=200)
def test_groups_say_exactly_the_set(never: tuple[When, ...], whens: list[When]) -> None:
    """A machine meets one of the groups exactly when it is in the set, and no group is idle."""
    space = Space(equipment_of(never), {}, FEATURES)
    cells = 0
    for when in whens:
        cells |= space.where(when)
    groups = list(space.groups(cells))
    for machine in _machines(never, {}):
        assert any(may_hold(group, machine) for group in groups) is _inside(space, cells, machine)
    assert all(space.where(group) for group in groups)


@given(NEVER, st.lists(_when(1), min_size=1, max_size=3), _when(0))
@settings(max_examples=200)
def test_among_some_the_others_do_not_count(never: tuple[When, ...], whens: list[When], asked: When) -> None:
    """The features told show a bad machine among those asked about, none that is fine, and none can be left out."""
    space = Space(equipment_of(never), {}, FEATURES)
    bad = space.either(whens) & space.where(asked)
    assume(bad)
    fewest = space.fewest(bad, space.where(asked))
    machines = [one for one in _machines(never, {}) if may_hold(asked, one)]
    good = [one for one in machines if not any(may_hold(when, one) for when in whens)]
    assert any(fewest.items() <= one.items() for one in machines)
    assert not any(fewest.items() <= one.items() for one in good)
    for name in fewest:
        fewer = {each: value for each, value in fewest.items() if each != name}
        assert any(fewer.items() <= one.items() for one in good)


@given(NEVER, _when(1), st.sets(st.sampled_from(sorted(FEATURES))))
@settings(max_examples=200)
def test_whatever_some_features_are(never: tuple[When, ...], when: When, free: set[str]) -> None:
    """A machine is in the widened set when one that differs from it in these features only is in the set."""
    space = Space(equipment_of(never), {}, FEATURES)
    wide = space.whatever(space.where(when), free)
    machines = _machines(never, {})
    kept = [name for name in FEATURES if name not in free]
    inside = {tuple(one[name] for name in kept) for one in machines if may_hold(when, one)}
    for machine in machines:
        assert _inside(space, wide, machine) is (tuple(machine[name] for name in kept) in inside)


def test_only_what_is_named_is_laid_out() -> None:
    """Twenty features of four values cost no more than the one that is named; a tie brings its features in."""
    many = {f"f{number}": ("a", "b", "c", "d") for number in range(20)}
    vehicle = equipment_of(({"f1": ("a",), "f2": ("b",)},), many)
    assert Space(vehicle, {}, {"f0"}).every.bit_count() == 4
    assert set(Space(vehicle, {}, {"f1"}).values) == {"f1", "f2"}
    assert Space(vehicle, {}, {"f1"}).every.bit_count() == 15
    assert cells_of(vehicle, {}, {"f0", "f1"}) == 64


def test_what_is_only_tied_is_not_told() -> None:
    """A disc brake is never with a wide axle: who asks about brakes is answered in brakes, and not in axles."""
    space = Space(equipment_of(({"brake": ("disc",), "axle": ("wide",)},)), {}, {"brake"})
    discs = space.where({"brake": ("disc",)})
    assert space.fewest(discs) == {"brake": "disc"}
    assert list(space.groups(discs)) == [{"brake": ("disc",)}]
    assert space.fewest(space.where({"brake": ("drum",)})) == {"brake": "drum"}


def test_a_thousand_features_of_one_value_are_one_cell() -> None:
    """Where a job covers one value of each, nothing is there to choose, and nothing is told."""
    many = {f"f{number}": ("a", "b") for number in range(1000)}
    space = Space(equipment_of((), many), dict.fromkeys(many, ("a",)), many)
    assert space.every == 1
    assert space.fewest(1) == {}
    assert list(space.groups(1)) == [{}]


def test_a_million_cells_are_told_in_groups_that_are_shared() -> None:
    """An odd number of b among twenty features is told in half a million groups, of which the first come at once."""
    many = {f"f{number}": ("a", "b") for number in range(20)}
    space = Space(equipment_of((), many), {}, many)
    odd = 0
    for name in many:
        odd ^= space.where({name: ("b",)})
    begun = time.perf_counter()
    first = list(itertools.islice(space.groups(odd), 5))
    assert all(sum(one[name] == ("b",) for name in many) % 2 for one in first)
    fewest = space.fewest(odd)
    assert len(fewest) == 20
    assert sum(value == "b" for value in fewest.values()) % 2
    assert time.perf_counter() - begun < 10


def test_eight_features_of_four_values_are_one_number() -> None:
    """What couples eight features still answers at once, and the fewest are found among 65,536."""
    many = {f"f{number}": ("a", "b", "c", "d") for number in range(8)}
    space = Space(equipment_of((), many), {}, many)
    assert space.every.bit_count() == 4**8
    assert space.fewest(space.where({"f3": ("b",), "f5": ("c",)})) == {"f3": "b", "f5": "c"}
    assert space.one_of(space.where({"f7": ("d",)}))["f7"] == "d"
