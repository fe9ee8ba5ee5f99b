"""Our modules compiled into one file: to open four hundred of them one by one takes a tenth of a run.

    python -m authoring.cli.kept_code

Set-up writes the file once the modules are compiled.
A module whose source has another time or size than then has changed, as it has for Python, and is imported as ever;
so is one that the file does not hold, and all of them where there is no such file.
"""

from __future__ import annotations

import marshal
import os
import sys
from collections.abc import Iterator, Sequence
from contextlib import contextmanager, suppress
from importlib.machinery import ModuleSpec, SourceFileLoader
from pathlib import Path
from types import CodeType, ModuleType

import authoring

_FOLDER = authoring.__path__[0]
_FILE = f"{_FOLDER}/__pycache__/kept.{sys.implementation.cache_tag}"
_MADE_FOR = (sys.version, sys.flags.optimize, _FOLDER)
"""What else the code depends on; it names the files it comes from."""

_HEAD = 8
"""Bytes before the codes, which say where the table behind them begins."""

_Kept = dict[str, tuple[str, int, int, int, int]]
"""The table: by a module's name its source, the source's time in ns and size in bytes, where its code is, how long."""


class _Loader(SourceFileLoader):
    """Loads one module as Python does, but takes its code from the open file."""

    def __init__(self, name: str, source: str, stretch: tuple[int, int, int]) -> None:
        super().__init__(name, source)
        self._stretch = stretch

    def get_code(self, fullname: str) -> CodeType | None:
        """Return the code that was kept, or what Python makes of the source where that is damaged."""
        with suppress(Exception):  # as in `_contents`
            code = marshal.loads(os.pread(*self._stretch))  # noqa: S302  # beside Python's, of the same kind
            if isinstance(code, CodeType):
                return code
        return super().get_code(fullname)


class _Finder:
    """Finds kept modules, each once: who imports one again wants it read anew."""

    def __init__(self, file: int, kept: _Kept) -> None:
        self._file = file
        self._kept = kept

    def find_spec(
        self,
        name: str,
        path: Sequence[str] | None,  # noqa: ARG002  # Python hands it to every finder
        target: ModuleType | None = None,  # noqa: ARG002  # as above
    ) -> ModuleSpec | None:
        """Return how to import a module, or nothing where that is for Python to find."""
        if name not in self._kept:
            return None
        try:
            source, time, size, start, length = self._kept.pop(name)
            fresh = _time_and_size(source) == (time, size)
        except (TypeError, ValueError):  # the table is damaged
            return None
        if not fresh:
            return None
        spec = ModuleSpec(name, _Loader(name, source, (self._file, length, start)), origin=source)
        spec.has_location = True
        folder, _, file = source.rpartition("/")
        if file == "__init__.py":
            spec.submodule_search_locations = [folder]
        return spec


@contextmanager
def kept_code() -> Iterator[None]:
    """Let our modules be imported from the file, if this Python made it for this folder."""
    try:
        file = os.open(_FILE, os.O_RDONLY)
    except OSError:
        yield
        return
    finder = _Finder(file, _contents(file))
    sys.meta_path.insert(0, finder)
    try:
        yield
    finally:
        sys.meta_path.remove(finder)
        os.close(file)


def _contents(file: int) -> _Kept:
    with suppress(Exception):  # whatever is damaged, the sources are there: no kind of it is worth ending a command
        place = int.from_bytes(os.pread(file, _HEAD, 0), "big")
        made_for, kept = marshal.loads(os.pread(file, os.fstat(file).st_size - place, place))  # noqa: S302  # as above
        if made_for == _MADE_FOR:
            return dict(kept)
    return {}


def keep() -> None:
    """Compile all our modules and write the file; it appears whole or not at all."""
    kept: _Kept = {}
    codes = []
    place = _HEAD
    for path in sorted(Path(_FOLDER).rglob("*.py")):
        name = ".".join([authoring.__name__, *path.relative_to(_FOLDER).with_suffix("").parts])
        name = name.removesuffix(".__init__")
        stated = _time_and_size(str(path))
        if stated is not None:
            codes.append(marshal.dumps(SourceFileLoader(name, str(path)).get_code(name)))
            kept[name] = (str(path), *stated, place, len(codes[-1]))
            place += len(codes[-1])
    waiting = Path(f"{_FILE}.writing")
    waiting.parent.mkdir(exist_ok=True)
    waiting.write_bytes(place.to_bytes(_HEAD, "big") + b"".join(codes) + marshal.dumps((_MADE_FOR, kept)))
    waiting.replace(_FILE)


def _time_and_size(source: str) -> tuple[int, int] | None:
    try:
        stated = os.stat(source)  # noqa: PTH116  # a path would take longer to make than the answer takes
    except OSError:
        return None
    return stated.st_mtime_ns, stated.st_size


if __name__ == "__main__":
    keep()
