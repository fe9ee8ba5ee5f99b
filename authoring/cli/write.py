"""The disk: whole files out."""

from __future__ import annotations

import fcntl
import os
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from pathlib import Path

from authoring.cli.wrong_use import WrongUseError


def write_whole(folder: str, files: Mapping[str, bytes]) -> None:
    """Write files so that each appears whole or not at all; all are on the disk before the first appears."""
    root = Path(folder)
    # Not by the tempfile module: it draws in compression and random numbers, a twentieth of a whole build.
    # The names are the same each time, so that what a killed build left is written over.
    waiting = {name: root / f".{name}.new" for name in files}
    try:
        root.mkdir(parents=True, exist_ok=True)
        with _alone_in(root):
            try:
                for name, content in files.items():
                    waiting[name].write_bytes(content)
                for name in files:
                    waiting[name].replace(root / name)
            finally:
                for left in waiting.values():
                    left.unlink(missing_ok=True)
    except FileExistsError as error:
        message = f'cannot write to "{folder}": it is a file; name a folder'
        raise WrongUseError(message) from error
    except OSError as error:
        message = f'cannot write to "{folder}": {error.strerror or error}'
        raise WrongUseError(message) from error


@contextmanager
def _alone_in(root: Path) -> Iterator[None]:
    """Wait until no other build writes into a folder, and keep others waiting; however we end, the system lets go."""
    held = os.open(root, os.O_RDONLY)
    try:
        fcntl.flock(held, fcntl.LOCK_EX)
        yield
    finally:
        os.close(held)
