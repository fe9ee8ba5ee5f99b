"""The golden booklets: which there are, and how they are written anew."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

from authoring.cli.disk import read_library
from authoring.pipeline import Checked, check, compose
from tests.booklet.plain_text import plain_text

HERE = Path(__file__).parent
TREE = HERE.parent.parent

BOOKLETS: tuple[tuple[str, str, str, dict[str, str]], ...] = (
    ("base-FL-110", "tests/base", "FL-110", {}),
    ("FL-110", "procedures", "FL-110", {}),
    ("FL-120", "procedures", "FL-120", {}),
    ("FL-120_brake-disc", "procedures", "FL-120", {"brake": "disc"}),
)


def checked(folder: str) -> Checked:
    """Read and check a library of this tree."""
    return check(*read_library(str(TREE / folder)))


def written() -> Iterator[tuple[Path, str]]:
    """Yield each golden file and the text it must hold."""
    libraries = {folder: checked(folder) for _, folder, _, _ in BOOKLETS}
    for name, folder, number, selection in BOOKLETS:
        yield HERE / "golden" / f"{name}.txt", plain_text(compose(libraries[folder], number, selection))


if __name__ == "__main__":
    for path, text in written():
        path.write_text(text, encoding="utf-8")
        print(path.relative_to(TREE), file=sys.stderr)  # noqa: T201  # a script that says what it wrote
