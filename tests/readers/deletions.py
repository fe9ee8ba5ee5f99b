"""Every key that an author wrote in a library, and the library without it."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from typing import Any

from msgspec import Struct
from msgspec.structs import replace

from authoring.model.assemble import schema_of
from authoring.model.build import kind_of
from authoring.model.language.checkpoint import CHECKPOINT_KEYS
from authoring.model.language.manner import MANNER
from authoring.source.document import Document

_IN_MANY_PLACES = {"allow", "values", "safety", "sources"}
_OF_EVERY_ACTION = {"what", "count", "way", *MANNER, *CHECKPOINT_KEYS}

Path = tuple[str | int, ...]


class Deletion(Struct, frozen=True):
    """One key of one file: where it stands, and its place in the language, such as equipment.items.*.place."""

    file: str
    path: Path
    element: str


def deletions(documents: Sequence[Document]) -> Iterator[Deletion]:
    """Yield every key of every document that is the language's own; names of the author's are passed through."""
    for document in documents:
        kind = kind_of(document)
        if kind is not None:
            schema = schema_of(kind)
            for path, element in _keys(document.data, schema, schema.get("$defs", {}), (), kind):
                yield Deletion(document.file, path, element)


def _keys(
    data: Any, schema: Mapping[str, Any], shared: Mapping[str, Any], path: Path, element: str
) -> Iterator[tuple[Path, str]]:
    schema, element = _resolved(schema, shared, element)
    if isinstance(data, list):
        for place, entry in enumerate(data):
            yield from _keys(entry, schema.get("items", {}), shared, (*path, place), element)
    if not isinstance(data, dict):
        return
    known = schema.get("properties", {})
    others = schema.get("additionalProperties", {})
    for key, below in data.items():
        inside = known.get(key, others if isinstance(others, dict) else {})
        called = _called(element, key) if key in known else f"{element}.*"
        if key in known:
            yield (*path, key), called
        yield from _keys(below, inside, shared, (*path, key), called)


def _called(element: str, key: str) -> str:
    """Return what an element is called; what stands in many places goes by one name."""
    if element.startswith("action.") and element.count(".") == 1 and key in _OF_EVERY_ACTION:
        return f"action.*.{key}"
    if element.endswith(".*") and key in {"from", "to"}:
        return f"range.{key}"
    return key if key in _IN_MANY_PLACES else f"{element}.{key}"


def _resolved(schema: Mapping[str, Any], shared: Mapping[str, Any], element: str) -> tuple[Mapping[str, Any], str]:
    """Return what a schema refers to; what several places share goes by its own name."""
    name = str(schema.get("$ref", "")).rpartition("/")[2]
    return (shared[name], name) if name else (schema, element)


def elements() -> set[str]:
    """Return every element of the language: each key of each object, as `deletions` calls them."""
    found: set[str] = set()
    for kind in ("shop", "stock", "equipment", "procedure"):
        schema = schema_of(kind)
        _collect(schema, schema.get("$defs", {}), kind, found)
    return found


def _collect(schema: Mapping[str, Any], shared: Mapping[str, Any], element: str, found: set[str]) -> None:
    schema, element = _resolved(schema, shared, element)
    for key, below in schema.get("properties", {}).items():
        called = _called(element, key)
        if called not in found:
            found.add(called)
            _collect(below, shared, called, found)
    others = schema.get("additionalProperties")
    if isinstance(others, dict):
        _collect(others, shared, f"{element}.*", found)
    if "items" in schema:
        _collect(schema["items"], shared, element, found)


def without(document: Document, path: Path) -> Document:
    """Return the document without one key; what it says elsewhere, and every place, stays."""
    return replace(document, data=_changed(document.data, path, lambda _: _GONE))


def otherwise(document: Document, path: Path, features: Mapping[str, Sequence[str]]) -> Document:
    """Return the document with another value under one key: other words, another truth, other vehicles.

    `features` has the values of each feature.
    """

    def other(value: Any) -> Any:
        if isinstance(value, bool):
            return not value
        if path[-1] == "when":
            return {feature: _others(feature, values, features) for feature, values in value.items()}
        if isinstance(value, list):
            return [f"{one}-too" for one in value]
        return _OTHER_WORD.get(value, f"{value} too")

    return replace(document, data=_changed(document.data, path, other))


_GONE = object()
_OTHER_WORD = {"ansi": "military"}


def _others(feature: str, values: Any, features: Mapping[str, Sequence[str]]) -> list[str]:
    named = [values] if isinstance(values, str) else list(values.values()) if isinstance(values, dict) else values
    return [value for value in features[feature] if value not in named] or list(named)


def _changed(data: Any, path: Path, change: Callable[[Any], Any]) -> Any:
    inside = enumerate(data) if isinstance(data, list) else data.items()
    kept = {
        key: (change(value) if len(path) == 1 else _changed(value, path[1:], change)) if key == path[0] else value
        for key, value in inside
    }
    kept = {key: value for key, value in kept.items() if value is not _GONE}
    return list(kept.values()) if isinstance(data, list) else kept
