"""Every key of the demo library's files, and the variants that lack one of them."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from msgspec import Struct

from authoring.source.document import Document
from tests.seeded.demo import Demo
from tests.seeded.edits import Path, cut
from tests.seeded.variant import Kind, Variant


class KeyAt(Struct, frozen=True):
    """One key of one file: its path and what stands behind it."""

    document: Document
    path: Path
    value: Any

    @property
    def name(self) -> str:
        """The key as it was written."""
        return str(self.path[-1])

    @property
    def owner(self) -> str:
        """The nearest name above the key, such as an item's or an action's."""
        return str(next((one for one in reversed(self.path[:-1]) if isinstance(one, str)), self.document.file))

    def variant(self, told: str) -> Variant:
        """Return the variant without the key."""
        return Variant(self.document.file, self.path, told, (cut(self.path),))


def keys(demo: Demo, kind: str) -> Iterator[KeyAt]:
    """Yield every key of the files of a kind, names of the author's among them."""
    for document in demo.of_kind(kind):
        yield from _keys(document, document.data, ())


def _keys(document: Document, data: Any, path: Path) -> Iterator[KeyAt]:
    inside = enumerate(data) if isinstance(data, list) else data.items() if isinstance(data, dict) else ()
    for key, below in inside:
        here = (*path, key)
        if isinstance(key, str):
            yield KeyAt(document, here, below)
        yield from _keys(document, below, here)


def dropping(kind: str, *names: str, below: str = "") -> Kind:
    """Return the kind of fault that leaves out one of these keys in files of a kind; `below` a certain key only."""

    def variants(demo: Demo) -> Iterator[Variant]:
        for key in keys(demo, kind):
            if key.name in names and (not below or below in key.path[:-1]):
                yield key.variant(f'"{key.name}: {_short(key.value)}" is left out at {key.owner}')

    return variants


def dropping_entry(kind: str, *names: str) -> Kind:
    """Return the kind of fault that leaves out one entry of a list or group under one of these keys."""

    def variants(demo: Demo) -> Iterator[Variant]:
        for key in keys(demo, kind):
            if key.name in names and isinstance(key.value, list | dict):
                entries = range(len(key.value)) if isinstance(key.value, list) else list(key.value)
                for entry in entries:
                    told = f'"{_short(key.value[entry])}" is left out of "{key.name}" at {key.owner}'
                    if isinstance(key.value, dict):
                        told = f'"{entry}: {_short(key.value[entry])}" is left out of "{key.name}" at {key.owner}'
                    path = (*key.path, entry)
                    yield Variant(key.document.file, path, told, (cut(path),))

    return variants


def both_kinds(*kinds: Kind) -> Kind:
    """Return the kind of fault that is any of several."""

    def variants(demo: Demo) -> Iterator[Variant]:
        for one in kinds:
            yield from one(demo)

    return variants


_LONGEST = 50


def _short(value: Any) -> str:
    words = " ".join(str(value).split())
    return words if len(words) <= _LONGEST else f"{words[:_LONGEST]}..."
