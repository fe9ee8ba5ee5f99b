"""The files of a library read once each, as far as somebody asks for them."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from typing import Any

from authoring.checking.known import Head, Left
from authoring.diagnostics.diagnostic import Diagnostic
from authoring.model.allowances import Allowance
from authoring.model.build import build_library, kind_of
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.source.document import Document
from authoring.source.images import Image
from authoring.source.reader import read_document

_NUMBER = re.compile(r"[A-Z]{1,4}-[0-9]{2,5}")
"""What may be the number of a procedure, wherever it stands; the schema asks for this form."""

Read = Callable[[str], bytes]


class TangledError(Exception):
    """The files hang together in a way that only a check of the whole library does justice to."""


class Loader:
    """The documents of a library, its shared files as one library, and its procedures by their files."""

    def __init__(self, read: Read, images: Mapping[str, Image | str]) -> None:
        self._read = read
        self.images = images
        self.documents: dict[str, Document | None] = {}
        self.procedures: dict[str, Procedure] = {}
        self.shared = Library(None, None, {}, {}, images)
        self._shared: list[Document] = []
        self._told: dict[str, list[Diagnostic]] = {}
        self._left: dict[str, list[Allowance]] = {}

    def load_shared(self, paths: Sequence[str]) -> None:
        """Read the shared files; raises TangledError where one of them is none, or there are several of one name."""
        self._shared = self._documents(paths)
        self.shared = self._build(self._shared)
        if self.shared.procedures:
            raise TangledError

    def load(self, paths: Sequence[str]) -> None:
        """Read procedures beside the shared files; raises TangledError as `load_shared` does."""
        new = [path for path in paths if path not in self.documents]
        documents = self._documents(new)
        if any(kind_of(document) not in {None, "procedure"} for document in documents):
            raise TangledError
        if documents:
            machines = [one.where.document for one in self.shared.equipment.values()]
            library = self._build(documents, machines)
            self.procedures |= {one.where.document.file: one for one in library.procedures.values()}

    def told(self, path: str) -> tuple[Diagnostic, ...]:
        """Return what was found while a file was read."""
        return tuple(self._told[path])

    def heads(self, paths: Iterable[str], against: Mapping[str, bytes]) -> Iterator[tuple[str, Head]]:
        """Yield the heads of files that were read; `against` has the checksum of each equipment by its short name."""
        for path in paths:
            yield path, self._head(path, against)

    def _documents(self, paths: Sequence[str]) -> list[Document]:
        for path in paths:
            self.documents[path], self._told[path] = read_document(path, self._read(path))
        return [document for path in paths if (document := self.documents[path]) is not None]

    def _build(self, documents: Sequence[Document], beside: Sequence[Document] = ()) -> Library:
        # As if a file could not be read, so that nobody is told of one that is missing.
        library, wrong = build_library(documents, self.images, partial=True, beside=beside)
        seen = {document.file for document in documents}
        self._left |= {file: [] for file in seen}
        for allowance in library.allowances:
            self._left[allowance.span.file].append(allowance)
        found: dict[str, list[Diagnostic]] = {file: [] for file in seen}
        for one in wrong:
            if one.rule == "duplicate-name":
                raise TangledError
            found[one.span.file].append(one)
        for file, told in found.items():
            self._told[file] = told
        return library

    def _head(self, path: str, against: Mapping[str, bytes]) -> Head:
        document = self.documents[path]
        told, left = self.told(path), tuple(_left(one) for one in self._left.get(path, ()))
        if document is None:
            return Head("", told=told)
        numbers = tuple(sorted(_numbers(document.data)))
        procedure = self.procedures.get(path)
        if procedure is not None:
            figures = tuple(dict.fromkeys(figure.file for figure in procedure.figures.values()))
            equipment = procedure.equipment
            words = procedure.number, procedure.title, equipment, against.get(equipment, b"")
            return Head("procedure", *words, numbers, figures, told, left)
        for kind, thing in _shared_things(self.shared):
            if thing.where.document.file == path:
                tools = thing.tools.values() if kind == "stock" else ()
                figures = tuple(tool.drawing.file for tool in tools if tool.drawing is not None)
                return Head(kind, getattr(thing, "id", ""), numbers=numbers, figures=figures, told=told, left=left)
        return Head("", told=told, left=left)


def _shared_things(library: Library) -> Iterator[tuple[str, Any]]:
    if library.shop is not None:
        yield "shop", library.shop
    if library.stock is not None:
        yield "stock", library.stock
    for equipment in library.equipment.values():
        yield "equipment", equipment


def _left(allowance: Allowance) -> Left:
    first, last = allowance.scope.document.places.lines(allowance.scope.path) if allowance.scope.path else (0, 0)
    return Left(allowance.rule, allowance.why, allowance.span, first, last)


def _numbers(data: Any) -> set[str]:
    """Return whatever in a document looks like the number of a procedure, in keys and in values."""
    found: set[str] = set()
    waiting = [data]
    while waiting:
        one = waiting.pop()
        if isinstance(one, str):
            if "-" in one:
                found.update(_NUMBER.findall(one))
        elif isinstance(one, dict):
            waiting += one
            waiting += one.values()
        elif isinstance(one, list):
            waiting += one
    return found
