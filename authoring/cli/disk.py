"""The disk: a library's files in."""

from __future__ import annotations

import os
import stat
from collections.abc import Iterator
from pathlib import Path

from authoring.cli.wrong_use import WrongUseError
from authoring.diagnostics.diagnostic import Diagnostic, Severity, Span

KNOWN = frozenset({".yaml", ".yml", ".svg", ".png", ".jpg", ".jpeg"})

# One byte more than the largest file any reader takes, so that a larger one is refused there without being read whole.
_ENOUGH = 10_000_001


def read_library(folder: str) -> tuple[dict[str, bytes], list[Diagnostic]]:
    """Return the contents of a library's files by path, and a finding for each that could not be read.

    Hidden files and folders are passed over, and so are kinds of file that a library does not use.
    """
    root = Path(folder)
    # An empty name is what an unset variable of a shell gives; it must not stand for the folder we are in.
    what = _why_no_folder(root) if folder else "has no name"
    if what:
        message = f'the library "{folder}" {what}'
        raise WrongUseError(message)
    files: dict[str, bytes] = {}
    unread: list[Diagnostic] = []
    for path in _paths(root, unread):
        name = path.relative_to(root).as_posix()
        try:
            files[name] = _read(path, root)
        except _UnreadableError as error:
            unread.append(_unreadable(name, str(error)))
        except OSError as error:
            unread.append(_unreadable(name, f"This file cannot be read: {error.strerror or error}."))
    return files, unread


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
