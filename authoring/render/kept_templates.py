"""Compiled templates kept beside their sources, as Python keeps compiled modules."""

from __future__ import annotations

import contextlib
import sys
from pathlib import Path

from jinja2 import BytecodeCache
from jinja2.bccache import Bucket


class KeptTemplates(BytecodeCache):
    """A cache in one folder; what cannot be read or written there is compiled anew, and nothing is said.

    A kept template carries the checksum of its source, so a changed one is never used.
    Like Python, it writes nothing where PYTHONDONTWRITEBYTECODE asks for that, unless `always` is set.
    """

    def __init__(self, folder: Path, *, always: bool = False) -> None:
        self._folder = folder
        self._writes = always or not sys.dont_write_bytecode

    def load_bytecode(self, bucket: Bucket) -> None:
        """Fill a bucket from the folder, if a template is kept there."""
        with contextlib.suppress(OSError), self._path(bucket).open("rb") as file:
            bucket.load_bytecode(file)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep a compiled template; it appears whole or not at all."""
        if not self._writes:
            return
        path = self._path(bucket)
        with contextlib.suppress(OSError):
            path.parent.mkdir(exist_ok=True)
            waiting = path.with_suffix(".writing")
            with waiting.open("wb") as file:
                bucket.write_bytecode(file)
            waiting.replace(path)

    def _path(self, bucket: Bucket) -> Path:
        return self._folder / f"{bucket.key}.{sys.implementation.cache_tag}"
