"""What is for some vehicles only: said for all, for fewer, or for the others."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from authoring.source.document import Document
from tests.seeded.demo import Demo
from tests.seeded.edits import cut, put
from tests.seeded.keys import KeyAt, dropping, dropping_entry, keys
from tests.seeded.variant import Kind, Variant


def _features(demo: Demo, document: Document) -> dict[str, list[str]]:
    """Return the features that a file may speak of, each with its values in order: the machine's and the job's."""
    name = document.data["equipment"]
    found: dict[str, list[str]] = {}
    for one in (*demo.of_kind("equipment"), document):
        if one.data.get("equipment") == name:
            for key in ("features", "options"):
                found |= {feature: list(stated["values"]) for feature, stated in one.data.get(key, {}).items()}
    return found


def _whens(demo: Demo) -> Iterator[tuple[KeyAt, str, list[str], list[str]]]:
    """Yield each feature of each `when`, with the values named and all values."""
    for kind in ("procedure", "equipment"):
        for key in keys(demo, kind):
            if key.name != "when" or not isinstance(key.value, dict):
                continue
            known = _features(demo, key.document)
            for feature, stated in key.value.items():
                if feature in known:
                    yield key, feature, _named(stated, known[feature]), known[feature]


def _named(stated: Any, values: list[str]) -> list[str]:
    if isinstance(stated, dict):
        first = values.index(stated.get("from", values[0]))
        return values[first : values.index(stated.get("to", values[-1])) + 1]
    return [stated] if isinstance(stated, str) else list(stated)


def _owner(key: KeyAt) -> str:
    return str(next((one for one in reversed(key.path[:-1]) if isinstance(one, str)), ""))


def narrow_a_when(demo: Demo) -> Iterator[Variant]:
    """A condition that names several values forgets one of them."""
    for key, feature, named, _ in _whens(demo):
        for value in named if len(named) > 1 else ():
            path = (*key.path, feature)
            told = f"{_owner(key)} is no longer for {feature} {value}"
            yield Variant(key.document.file, path, told, (put(path, [one for one in named if one != value]),))


def turn_a_when(demo: Demo) -> Iterator[Variant]:
    """A condition names the other vehicles."""
    for key, feature, named, values in _whens(demo):
        others = [one for one in values if one not in named]
        if others:
            path = (*key.path, feature)
            told = f"{_owner(key)} is for {feature} {', '.join(others)} in place of {', '.join(named)}"
            yield Variant(key.document.file, path, told, (put(path, others),))


def add_a_when(demo: Demo) -> Iterator[Variant]:
    """A step that is for all is said to be for some only."""
    for step in demo.steps():
        known = _features(demo, step.document)
        covered = step.document.data.get("covers", {})
        if "when" in step.data or step.is_method:
            continue
        for feature, values in list(known.items())[:1]:
            allowed = [one for one in values if one in covered.get(feature, values)]
            if len(allowed) > 1:
                told = f'"{step.title}" is for {feature} {allowed[0]} only'
                edit = put((*step.path, "when"), {feature: allowed[0]})
                yield Variant(step.document.file, step.path, told, (edit,))


def drop_the_covers(demo: Demo) -> Iterator[Variant]:
    """A job for some vehicles is said to be for all."""
    for document in demo.of_kind("procedure"):
        if "covers" in document.data:
            yield Variant(document.file, ("covers",), '"covers" is left out', (cut(("covers",)),))


def narrow_the_covers(demo: Demo) -> Iterator[Variant]:
    """A job forgets the vehicles of one value of a feature."""
    for document in demo.of_kind("procedure"):
        known = _features(demo, document)
        covered = document.data.get("covers", {})
        own = document.data.get("options", {})
        for feature, values in known.items():
            named = covered.get(feature, values)
            for value in named if len(named) > 1 and feature not in own else ():
                narrowed = {**covered, feature: [one for one in named if one != value]}
                told = f"the job no longer covers {feature} {value}"
                yield Variant(document.file, ("covers",), told, (put(("covers",), narrowed),))


KINDS: dict[str, Kind] = {
    "drop a when": dropping("procedure", "when"),
    "drop a when of the machine": dropping("equipment", "when"),
    "narrow a when": narrow_a_when,
    "turn a when": turn_a_when,
    "add a when": add_a_when,
    "drop the covers": drop_the_covers,
    "narrow the covers": narrow_the_covers,
    "drop a part of a choice": dropping_entry("procedure", "parts"),
    "drop a size of a choice": dropping("procedure", "size", "sizes"),
    "drop what cannot be": dropping_entry("equipment", "never"),
    "drop what is critical for some": dropping("procedure", "critical-when"),
    "drop part of a modification": dropping("procedure", "adds", "replaces", "leaves-out", below="modifications"),
}
