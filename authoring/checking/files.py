"""What is on the disk held against what is kept: which files are as they were, and what the others are."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence

from msgspec import Struct
from msgspec.structs import replace

from authoring.checking.digest import digest
from authoring.checking.known import Head, Kept, Signature, State
from authoring.checking.loader import TangledError
from authoring.diagnostics.diagnostic import Diagnostic
from authoring.source.images import Image, read_image

_YAML = (".yaml", ".yml")
_OF_A_PROCEDURE = re.compile(rb"(?m)^procedure:")
SHARED = frozenset({"shop", "stock", "equipment"})


class Disk(Struct, frozen=True):
    """The files of a library: how the disk signs each, and how to read one, or to learn why it cannot be read.

    `unread` tells of what could not even be looked at; what was last changed before `at_rest_before`, in ns, cannot
    change any more without another signature.
    """

    signatures: Mapping[str, Signature]
    read: Callable[[str], bytes | Diagnostic]
    unread: Sequence[Diagnostic] = ()
    at_rest_before: int = 0


class Files:
    """The files of one run by their paths; a file that has changed has no head until somebody has read it."""

    def __init__(self, disk: Disk, kept: State) -> None:
        self.unread = list(disk.unread)
        self.by_path: dict[str, Kept] = {}
        self.images: dict[str, Image] = {}
        self._contents: dict[str, bytes] = {}
        self._disk = disk
        for path, signature in disk.signatures.items():
            was = kept.files.get(path)
            if was is not None and was.trusted and was.signature == signature:
                self.by_path[path] = was
            else:
                self._look(path, signature, was)

    def _look(self, path: str, signature: Signature, was: Kept | None) -> None:
        content = self._disk.read(path)
        if isinstance(content, Diagnostic):
            self.unread.append(content)
            return
        checksum = digest(content)
        trusted = max(signature[1:3]) < self._disk.at_rest_before
        if was is not None and was.digest == checksum:
            self.by_path[path] = replace(was, signature=signature, trusted=trusted)
        elif path.lower().endswith(_YAML):
            self._contents[path] = content
            self.by_path[path] = Kept(signature, trusted, checksum)
        else:
            image, reason = read_image(path, content)
            if image is not None:
                self.images[path] = image
            self.by_path[path] = Kept(signature, trusted, checksum, reason=reason)

    def read(self, path: str) -> bytes:
        """Return the content of a file that is here; raises TangledError where it has changed under our hands."""
        if path in self._contents:
            return self._contents[path]
        content = self._disk.read(path)
        if isinstance(content, Diagnostic) or digest(content) != self.by_path[path].digest:
            raise TangledError
        return content

    def learn(self, heads: Mapping[str, Head]) -> None:
        """Take the heads of files that were read."""
        for path, head in heads.items():
            self.by_path[path] = replace(self.by_path[path], head=head)

    def heads(self) -> dict[str, Head]:
        """Return the heads that are known, by path."""
        return {path: one.head for path, one in self.by_path.items() if one.head is not None}

    def heads_of(self, paths: Iterable[str]) -> list[Head]:
        """Return the heads of files that are known."""
        return [head for path in paths if (head := self.by_path[path].head) is not None]

    def of_kind(self, kind: str) -> dict[str, Head]:
        """Return the heads of one kind of file by path; the empty kind is that of files that could not be used."""
        return {path: head for path, head in self.heads().items() if head.kind == kind}

    def unknown(self, *, procedures: bool) -> list[str]:
        """Return the files of which nothing is known yet: those that look like procedures, or the others."""
        return [
            path
            for path, content in self._contents.items()
            if self.by_path[path].head is None and bool(_OF_A_PROCEDURE.search(content)) is procedures
        ]

    def pictures(self) -> dict[str, str]:
        """Return for each picture why it cannot be shown; an empty text where it can."""
        return {path: one.reason for path, one in self.by_path.items() if not path.lower().endswith(_YAML)}
