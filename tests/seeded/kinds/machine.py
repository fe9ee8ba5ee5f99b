"""Facts of the machine, of its fasteners and fluids, and of the stores that are forgotten or stated otherwise."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from tests.seeded.demo import Demo
from tests.seeded.edits import put, rekeyed
from tests.seeded.keys import both_kinds, dropping, dropping_entry, keys
from tests.seeded.variant import Kind, Variant

_CLASSES = {"8.8": "10.9", "10.9": "12.9"}
_JOINTS = {"A": "B", "B": "A"}
_DANGERS = ("hazards", "hot", "pressure", "voltage", "voltage-ac", "height", "mass")


def count_one_more(demo: Demo) -> Iterator[Variant]:
    """One fastener more is counted than there are."""
    for key in keys(demo, "equipment"):
        if key.name == "count":
            told = f'"count: {key.value}" becomes {key.value + 1} at {key.path[-2]}'
            yield Variant(key.document.file, key.path, told, (put(key.path, key.value + 1),))


def state_another_class(demo: Demo) -> Iterator[Variant]:
    """A bolt is said to be of the next stronger class."""
    for key in keys(demo, "equipment"):
        if key.name == "class":
            told = f'"class: {key.value}" becomes {_CLASSES[key.value]} at {key.path[-2]}'
            yield Variant(key.document.file, key.path, told, (put(key.path, _CLASSES[key.value]),))


def state_another_joint(demo: Demo) -> Iterator[Variant]:
    """The rank of a joint is that of the others."""
    for key in keys(demo, "equipment"):
        if key.name == "joint":
            told = f'"joint: {key.value}" becomes {_JOINTS[key.value]} at {key.path[-2]}'
            yield Variant(key.document.file, key.path, told, (put(key.path, _JOINTS[key.value]),))


def cover_another_thing(demo: Demo) -> Iterator[Variant]:
    """A thing is said to cover what its neighbour in the list covers."""
    for document in demo.of_kind("equipment"):
        covering = [(name, one["covers"]) for name, one in document.data["items"].items() if "covers" in one]
        for (name, mine), (other, theirs) in pairwise(covering):
            if mine != theirs:
                path = ("items", name, "covers")
                told = f"{name} covers what {other} covers: {theirs} in place of {mine}"
                yield Variant(document.file, path, told, (put(path, theirs),))


def stand_on_another_item(demo: Demo) -> Iterator[Variant]:
    """A group is said to sit on what its neighbour in the list sits on."""
    for document in demo.of_kind("equipment"):
        groups = [(name, one["on"]) for name, one in document.data["fasteners"].items() if "on" in one]
        for (name, mine), (_, theirs) in pairwise(groups):
            if mine != theirs:
                path = ("fasteners", name, "on")
                told = f"{name} sits on {theirs} in place of {mine}"
                yield Variant(document.file, path, told, (put(path, theirs),))


def name_a_position_otherwise(demo: Demo) -> Iterator[Variant]:
    """A position of a lever has another short name than the steps use."""
    for key in keys(demo, "equipment"):
        if key.name == "positions" and key.path[0] == "items":
            first = next(iter(key.value))
            told = f'the position "{first}" of {key.path[-2]} is called "other"'
            yield Variant(key.document.file, (*key.path, first), told, (rekeyed(key.path, {first: "other"}),))


KINDS: dict[str, Kind] = {
    "drop a cover": dropping_entry("equipment", "covers"),
    "cover another thing": cover_another_thing,
    "drop part-of": dropping("equipment", "part-of"),
    "drop where it sits": dropping("equipment", "on", "in"),
    "stand on another item": stand_on_another_item,
    "drop a danger": dropping("equipment", *_DANGERS, below="items"),
    "drop a cooling": dropping("equipment", "cooling", "cooled"),
    "drop a reuse": both_kinds(dropping("equipment", "reuse"), dropping("stock", "one-time")),
    "drop what is critical": both_kinds(dropping("equipment", "critical"), dropping("stock", "critical")),
    "drop what stays untouched": dropping("equipment", "untouched", "among"),
    "drop a torque": dropping("equipment", "torque"),
    "drop stages or order": dropping("equipment", "stages", "order", below="fasteners"),
    "drop a fact of a joint": dropping("equipment", "class", "joint", "threads", "friction", "nut-factor", "grip"),
    "drop a release sequence": dropping("equipment", "release", "open-while-running"),
    "drop a twin": dropping("equipment", "twin"),
    "drop a fact of a fluid": dropping("equipment", "capacity", "left-in", "mixes-with", "circuit", "expansion"),
    "drop a window of a value": dropping_entry("equipment", "windows"),
    "drop a fact of a gauge": dropping("stock", "range", "resolution", "accuracy", "by-eye", "adapter", "length"),
    "drop how it is thrown away": both_kinds(dropping("equipment", "disposal"), dropping("stock", "disposal")),
    "count one more": count_one_more,
    "state another class": state_another_class,
    "state another joint": state_another_joint,
    "name a position otherwise": name_a_position_otherwise,
}
