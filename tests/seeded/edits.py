"""Changes of a document's plain data: pure, and only what lies on the way is made anew."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Any, TypeAlias

Path: TypeAlias = tuple[str | int, ...]
Edit: TypeAlias = Callable[[Any], Any]
"""From the data of a whole file to the data as it would be written otherwise."""


def at(data: Any, path: Path) -> Any:
    """Return what stands at a path."""
    for key in path:
        data = data[key]
    return data


def changed(data: Any, path: Path, change: Edit) -> Any:
    """Return the data with what stands at a path changed."""
    if not path:
        return change(data)
    key, *rest = path
    if isinstance(data, list):
        return [changed(one, tuple(rest), change) if place == key else one for place, one in enumerate(data)]
    return {name: changed(one, tuple(rest), change) if name == key else one for name, one in data.items()}


def put(path: Path, value: Any) -> Edit:
    """Return the edit that writes a value at a path; a key that is not there yet comes last in its group."""
    *owner, key = path

    def written(group: Any) -> Any:
        if isinstance(group, list):
            return [value if place == key else one for place, one in enumerate(group)]
        return {**group, key: value}

    return lambda data: changed(data, tuple(owner), written)


def cut(path: Path) -> Edit:
    """Return the edit that takes out a key or an entry of a list; a list or group of nothing else goes with it."""
    *owner, key = path

    def edit(data: Any) -> Any:
        if owner and len(at(data, tuple(owner))) == 1:
            return cut(tuple(owner))(data)
        return changed(data, tuple(owner), _without)

    def _without(group: Any) -> Any:
        if isinstance(group, list):
            return [one for place, one in enumerate(group) if place != key]
        return {name: one for name, one in group.items() if name != key}

    return edit


def order(path: Path, places: Sequence[int]) -> Edit:
    """Return the edit that writes the entries of a list in another order; a place may be named twice or not at all."""
    return lambda data: changed(data, path, lambda entries: [entries[place] for place in places])


def rekeyed(path: Path, names: Mapping[str, str]) -> Edit:
    """Return the edit that gives keys of a group other names, each at its old place."""
    return lambda data: changed(data, path, lambda group: {names.get(key, key): one for key, one in group.items()})


def moved(source: Path, target: Path) -> Edit:
    """Return the edit that takes an entry out of its list and puts it into another list, at a place of that one."""
    *owner, place = target
    assert isinstance(place, int)

    def edit(data: Any) -> Any:
        entry = at(data, source)

        def inserted(entries: list[Any]) -> list[Any]:
            return [*entries[:place], entry, *entries[place:]]

        return changed(cut(source)(data), tuple(owner), inserted)

    return edit


def both(*edits: Edit) -> Edit:
    """Return one edit that makes several, one after the other."""

    def edit(data: Any) -> Any:
        for one in edits:
            data = one(data)
        return data

    return edit


def everywhere(data: Any, change: Callable[[str], str]) -> Any:
    """Return data of any shape with every text in it changed; keys stay."""
    if isinstance(data, str):
        return change(data)
    if isinstance(data, list):
        return [everywhere(one, change) for one in data]
    if isinstance(data, dict):
        return {key: everywhere(one, change) for key, one in data.items()}
    return data
