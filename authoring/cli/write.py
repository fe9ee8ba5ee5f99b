"""The disk: whole files out."""

from __future__ import annotations

import os
from collections.abc import Mapping
from pathlib import Path

from authoring.cli.wrong_use import WrongUseError


def write_whole(folder: str, files: Mapping[str, bytes]) -> None:
    """Write files so that each appears whole or not at all; all are on the disk before the first appears."""
    root = Path(folder)
    # Not by the tempfile module: it draws in compression and random numbers, a twentieth of a whole build.
    waiting = {name: root / f".{name}.{os.getpid()}" for name in files}
    try:
        root.mkdir(parents=True, exist_ok=True)
        try:
            for name, content in files.items():
                waiting[name].write_bytes(content)
            for name in files:
                waiting[name].replace(root / name)
        finally:
            for left in waiting.values():
                left.unlink(missing_ok=True)
    except OSError as error:
        message = f'cannot write to "{folder}": {error.strerror or error}'
        raise WrongUseError(message) from error
