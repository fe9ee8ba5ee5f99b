"""How an action is done, which way round, and what it needs besides: forgotten, or turned round."""

from __future__ import annotations

from collections.abc import Iterator

from tests.seeded.demo import Demo
from tests.seeded.edits import put
from tests.seeded.keys import dropping, keys
from tests.seeded.variant import Kind, Variant


def point_it_at_another_thing(demo: Demo) -> Iterator[Variant]:
    """A lip or a mark points at another thing of the same kind."""
    for key in keys(demo, "procedure"):
        if key.name == "towards":
            other = demo.nearest(key.document, key.value, set())
            if other is not None:
                told = f'"towards: {key.value}" becomes "{other}"'
                yield Variant(key.document.file, key.path, told, (put(key.path, other),))


def count_other_parts(demo: Demo) -> Iterator[Variant]:
    """One part too few is put up, or one place too few is measured."""
    for key in keys(demo, "procedure"):
        if key.name in {"count", "places"} and isinstance(key.value, int) and key.value > 1:
            told = f'"{key.name}: {key.value}" becomes {key.value - 1}'
            yield Variant(key.document.file, key.path, told, (put(key.path, key.value - 1),))


def hold_by_another_hand(demo: Demo) -> Iterator[Variant]:
    """What a helper holds is said to be held with the other hand."""
    for key in keys(demo, "procedure"):
        if key.name == "by" and key.value == "helper":
            told = '"by: helper" becomes "other-hand"'
            yield Variant(key.document.file, key.path, told, (put(key.path, "other-hand"),))


KINDS: dict[str, Kind] = {
    "drop how it is done": dropping("procedure", "how", below="do"),
    "drop which way round": dropping("procedure", "orientation"),
    "point it at another thing": point_it_at_another_thing,
    "drop how it is confirmed": dropping("procedure", "confirmed"),
    "drop what it goes into": dropping("procedure", "engages"),
    "drop what to keep clear of": dropping("procedure", "clear-of"),
    "drop a force": dropping("procedure", "force"),
    "drop a partner": dropping("procedure", "on", "into", "in", "replaces", "with", below="do"),
    "drop a value of an action": dropping("procedure", "value", "expected", "window", "level", "depth", below="do"),
    "drop how many": dropping("procedure", "count", "places", below="do"),
    "count other parts": count_other_parts,
    "hold by another hand": hold_by_another_hand,
    "drop the time": dropping("procedure", "time"),
    "drop a safe stop": dropping("procedure", "safe-to-stop"),
    "drop a reason": dropping("procedure", "why"),
}
