"""Where what a check came to is kept: the user's cache folder, as the XDG Base Directory Specification 0.8 has it.

Nothing of it is needed: what is missing, damaged or cannot be written changes how long a check takes, and nothing else.
A file holds a checksum of all that follows, so that one that is damaged is as good as none; it appears whole.
"""

from __future__ import annotations

import marshal
import os
import sys
import time

import authoring
from authoring.checking.digest import digest

_DAYS = 30
_SECONDS = 24 * 3600

_HEAD = len(digest(b""))


def place(library: str, what: str) -> str:
    """Return the path of what is kept of a library's folder; an empty text where there is no place for it."""
    home = os.environ.get("XDG_CACHE_HOME", "")
    if not os.path.isabs(home):  # which the specification tells to ignore
        home = os.path.expanduser("~/.cache")
    if not os.path.isabs(home):
        return ""
    name = digest(os.path.realpath(library).encode("utf-8", "surrogateescape")).hex()
    return f"{home}/bayleaf/{name}.{what}"


def recall(path: str) -> bytes:
    """Return what is kept at a place; nothing where there is none, or where it is damaged."""
    try:
        with open(path, "rb") as file:
            kept = file.read()
    except (OSError, ValueError):
        return b""
    return kept[_HEAD:] if digest(kept[_HEAD:]) == kept[:_HEAD] else b""


def keep(path: str, content: bytes) -> None:
    """Keep something at a place, if that can be; what nobody has asked for in a month is thrown away."""
    if not path:
        return
    folder = os.path.dirname(path)
    waiting = f"{path}.{os.getpid()}.new"
    try:
        os.makedirs(folder, mode=0o700, exist_ok=True)
        try:
            with open(waiting, "wb") as file:
                file.write(digest(content) + content)
            os.replace(waiting, path)
        except OSError:
            os.unlink(waiting)
            raise
        _tidy(folder)
    except OSError:
        return  # the next check takes as long as this one


def _tidy(folder: str) -> None:
    old = time.time() - _DAYS * _SECONDS
    with os.scandir(folder) as entries:
        for entry in entries:
            if entry.is_file(follow_symlinks=False) and entry.stat().st_mtime < old:
                os.unlink(entry.path)


_CODE: list[bytes] = []


def code() -> bytes:
    """Return a checksum of what turns a library into findings: our modules, the libraries, Python, and who we are.

    It is that of the first time it was asked for, so that what changes while we run is not taken for what ran.
    """
    if not _CODE:
        _CODE.append(_code())
    return _CODE[0]


def _code() -> bytes:
    told: list[tuple[str, int, int]] = [(sys.version, os.getuid(), 0)]
    # To install anything changes the time of the folder.
    installed = (path for path in sys.path if path.endswith("-packages") and os.path.isdir(path))
    told += ((path, 0, os.stat(path).st_mtime_ns) for path in installed)
    waiting = list(authoring.__path__)
    while waiting:
        with os.scandir(waiting.pop()) as entries:
            for entry in entries:
                name = entry.name
                if name.endswith(".py"):
                    stated = entry.stat()
                    told.append((entry.path, stated.st_size, stated.st_mtime_ns))
                elif "." not in name and name != "__pycache__" and entry.is_dir():
                    waiting.append(entry.path)
    return digest(written(told))


def written(rows: list[tuple[str, int, int]] | list[tuple[str, int, int, int, int]]) -> bytes:
    """Return rows in an order that no disk decides on, as the same bytes each time."""
    rows.sort()
    return marshal.dumps(rows, 2)  # the last version that does not tell how often a value is used elsewhere
