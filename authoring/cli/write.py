"""The disk: whole files out."""

from __future__ import annotations

import tempfile
from collections.abc import Mapping
from pathlib import Path

from authoring.cli.wrong_use import WrongUseError


def write_whole(folder: str, files: Mapping[str, bytes]) -> None:
    """Write files so that each appears whole or not at all; all are on the disk before the first appears."""
    root = Path(folder)
    try:
        root.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryDirectory(dir=root, prefix=".writing-") as waiting:
            for name, content in files.items():
                (Path(waiting) / name).write_bytes(content)
            for name in files:
                (Path(waiting) / name).replace(root / name)
    except OSError as error:
        message = f'cannot write to "{folder}": {error.strerror or error}'
        raise WrongUseError(message) from error
