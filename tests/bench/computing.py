"""Measure, in this fresh process, how long the workshop computes while one procedure is checked and composed.

    python -m tests.bench.computing LIBRARY NUMBER

Prints, as one line, the seconds in which the workshop's functions ran, the seconds in which its files were loaded, and
how often it was asked.
Nothing is cached: whatever is worked out for the first time is worked out here.
Every public function of `authoring.workshop` is timed from the outermost call on, so that one that calls another counts
once; time that it spends in other folders counts too.
"""

from __future__ import annotations

import functools
import sys
import time
from collections.abc import Callable, Sequence
from importlib.machinery import ModuleSpec, PathFinder, SourceFileLoader
from types import FunctionType, ModuleType
from typing import Any

FOLDER = "authoring.workshop"


class Clock:
    """Time spent inside, counted once however deep the calls go; and how often it was entered from outside."""

    def __init__(self) -> None:
        """Begin at nothing."""
        self.seconds = 0.0
        self.entered = 0
        self._depth = 0
        self._since = 0.0

    def __enter__(self) -> None:
        if self._depth == 0:
            self.entered += 1
            self._since = time.perf_counter()
        self._depth += 1

    def __exit__(self, *_: object) -> None:
        self._depth -= 1
        if self._depth == 0:
            self.seconds += time.perf_counter() - self._since


class Watch:
    """Puts itself before every file of one folder as it is loaded, and before every public function in it."""

    def __init__(self, folder: str) -> None:
        """Watch the package of this name; files that are loaded already are not seen."""
        self.folder = folder
        self.computing = Clock()
        self.loading = Clock()

    def find_spec(self, name: str, path: Sequence[str] | None, target: ModuleType | None = None) -> ModuleSpec | None:
        """Find a file of the folder for the import system, with a loader that is timed; nothing else is touched."""
        if not name.startswith(f"{self.folder}."):
            return None
        spec = PathFinder.find_spec(name, path, target)
        if spec is not None and isinstance(spec.loader, SourceFileLoader):
            spec.loader = _Timed(spec.loader.name, spec.loader.path, self)
        return spec

    def timed(self, function: FunctionType) -> Callable[..., Any]:
        """Return a function that does the same and is timed."""

        @functools.wraps(function)
        def run(*given: Any, **named: Any) -> Any:
            with self.computing:
                return function(*given, **named)

        return run


class _Timed(SourceFileLoader):
    def __init__(self, name: str, path: str, watch: Watch) -> None:
        super().__init__(name, path)
        self._watch = watch

    def exec_module(self, module: ModuleType) -> None:
        with self._watch.loading:
            super().exec_module(module)
        for name, value in list(vars(module).items()):
            if isinstance(value, FunctionType) and value.__module__ == module.__name__ and not name.startswith("_"):
                setattr(module, name, self._watch.timed(value))


def main(library: str, number: str) -> None:
    """Check the library, compose the booklet for every fitment, and print the line."""
    watch = Watch(FOLDER)
    sys.meta_path.insert(0, watch)
    # Only now may anything load the folder that is watched.
    from authoring.cli.disk import read_library  # noqa: PLC0415  # see above
    from authoring.pipeline import check, compose  # noqa: PLC0415  # see above

    compose(check(*read_library(library)), number, {})
    if not watch.computing.entered:
        # Either the folder was loaded before it was watched, or it has another name by now.
        sys.exit(f"nothing of {FOLDER} was asked, so nothing was measured")
    sys.stdout.write(f"{watch.computing.seconds} {watch.loading.seconds} {watch.computing.entered}\n")


if __name__ == "__main__":
    main(*sys.argv[1:])
