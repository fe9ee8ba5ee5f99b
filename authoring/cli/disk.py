"""The disk: a library's files in."""

from __future__ import annotations

import os
import stat
import time
from collections.abc import Collection, Iterator
from pathlib import Path

from authoring.checking.files import Disk
from authoring.cli.answer import AT_REST, KNOWN
from authoring.cli.wrong_use import WrongUseError
from authoring.diagnostics.diagnostic import Diagnostic, Severity, Span
from authoring.source.decode import as_shown

# One byte more than the largest file any reader takes, so that a larger one is refused there without being read whole.
_ENOUGH = 10_000_001


def read_library(folder: str) -> tuple[dict[str, bytes], list[Diagnostic]]:
    """Return the contents of a library's files by path, and a finding for each that could not be read.

    Hidden files and folders are passed over, and so are kinds of file that a library does not use.
    """
    root = _root(folder)
    files: dict[str, bytes] = {}
    unread: list[Diagnostic] = []
    for path in _paths(root, unread):
        name = path.relative_to(root).as_posix()
        content = _content(name, path, root)
        if isinstance(content, Diagnostic):
            unread.append(content)
        else:
            files[name] = content
    return files, unread


def signed_library(folder: str) -> Disk:
    """Return a library's files as the disk signs them, in the order of `read_library`, to be read as far as need be."""
    root = _root(folder)
    # What was changed by now, and not long before, may be changed once more and be signed alike.
    at_rest_before = time.time_ns() - AT_REST
    signatures: dict[str, tuple[int, int, int, int]] = {}
    unread: list[Diagnostic] = []
    for path in _paths(root, unread):
        name = path.relative_to(root).as_posix()
        try:
            stated = path.stat()
        except OSError:
            stated = None  # reading it will tell why
        signatures[name] = (0, 0, 0, 0) if stated is None else _signature(stated)
    return Disk(signatures, lambda name: _content(name, root / name, root), unread, at_rest_before)


def texts(folder: str, files: Collection[str]) -> dict[str, str]:
    """Return those of some files of a library that are text, for excerpts; what cannot be read is left out."""
    found: dict[str, str] = {}
    for name in files:
        content = _content(name, Path(folder) / name, Path(folder))
        text = as_shown(content) if name.lower().endswith((".yaml", ".yml")) and isinstance(content, bytes) else ""
        if text:
            found[name] = text
    return found


def _signature(stated: os.stat_result) -> tuple[int, int, int, int]:
    return stated.st_size, stated.st_mtime_ns, stated.st_ctime_ns, stated.st_ino


def _content(name: str, path: Path, root: Path) -> bytes | Diagnostic:
    try:
        return _read(path, root)
    except _UnreadableError as error:
        return _unreadable(name, str(error))
    except OSError as error:
        return _unreadable(name, f"This file cannot be read: {error.strerror or error}.")


def _root(folder: str) -> Path:
    root = Path(folder)
    # An empty name is what an unset variable of a shell gives; it must not stand for the folder we are in.
    what = _why_no_folder(root) if folder else "has no name"
    if what:
        message = f'the library "{folder}" {what}'
        raise WrongUseError(message)
    return root


def _why_no_folder(root: Path) -> str:
    try:
        if root.is_dir():
            return ""
        return "is a file; name the folder it is in" if root.exists() else "does not exist"
    except OSError as error:
        return f"cannot be read: {error.strerror or error}"


class _UnreadableError(Exception):
    """Why a file of the library is not read; the message is the finding's sentence."""


def _paths(root: Path, unread: list[Diagnostic]) -> Iterator[Path]:
    def refused(error: OSError) -> None:
        name = Path(error.filename).relative_to(root).as_posix() if error.filename else ""
        unread.append(_unreadable(name, f"This folder cannot be read: {error.strerror or error}."))

    for folder, folders, names in os.walk(root, onerror=refused):
        folders[:] = sorted(name for name in folders if not name.startswith("."))
        for name in folders:
            if (Path(folder) / name).is_symlink():
                inside = (Path(folder) / name).relative_to(root).as_posix()
                unread.append(_unreadable(inside, "This folder is a link, and links to folders are not followed."))
        for name in sorted(names):
            if not name.startswith(".") and Path(name).suffix.lower() in KNOWN:
                yield Path(folder) / name


def _read(path: Path, root: Path) -> bytes:
    # Folders are not followed, so only the file itself can be a link.
    # Strict, so that a ring of links is an error of the system like any other, and not an endless walk.
    if path.is_symlink() and not Path(os.path.realpath(path, strict=True)).is_relative_to(root.resolve()):
        message = "This file is a link out of the library, and a library stands on its own."
        raise _UnreadableError(message)
    if not stat.S_ISREG(path.stat().st_mode):
        message = "This is no plain file."
        raise _UnreadableError(message)
    with path.open("rb") as file:
        return file.read(_ENOUGH)


def _unreadable(name: str, message: str) -> Diagnostic:
    # A name that is no UTF-8 must not break the output that shows it.
    shown = name.encode("utf-8", "backslashreplace").decode()
    cure = "Put a readable file in its place, or take it out of the library."
    return Diagnostic("unreadable-file", Severity.ERROR, message, Span(shown, 1, 1, 1, 1), cure)
