"""The file of compiled modules changes how long an import takes, and nothing else."""

from __future__ import annotations

import marshal
import os
import shutil
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from authoring.cli.main import main
from tests.outside_checkers.program import ROOT

RULE = "authoring.rules.language.vague_word"
SOURCE = "authoring/rules/language/vague_word.py"
KEPT = f"authoring/__pycache__/kept.{sys.implementation.cache_tag}"
CHECK = f"""
import sys
from authoring.cli.main import main
status = main(["check", sys.argv[1]])
rule = sys.modules["{RULE}"]
print(status, rule.__file__, type(rule.__loader__).__name__, rule.check.__code__.co_filename, hasattr(rule, "NEW"))
"""


@pytest.fixture(scope="module")
def shared(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give one copy of our package, compiled into one file, to tests that put that file back as they found it."""
    return compiled(tmp_path_factory.mktemp("shared"))


@pytest.fixture
def home(tmp_path: Path) -> Path:
    """Give a copy of our package, compiled into one file."""
    return compiled(tmp_path)


def compiled(folder: Path) -> Path:
    """Copy our package into a folder and compile it into one file."""
    shutil.copytree(ROOT / "authoring", folder / "home" / "authoring", ignore=shutil.ignore_patterns("__pycache__"))
    run(folder / "home", "-m", "authoring.cli.kept_code")
    return folder / "home"


def run(home: Path, *words: str) -> list[str]:
    """Run Python on a copy of our package and return the last line's words."""
    where = os.environ | {"PYTHONPATH": str(home)}
    told = subprocess.run([sys.executable, *words], capture_output=True, text=True, check=True, cwd=home, env=where)
    return told.stdout.splitlines()[-1].split() if told.stdout else []


def test_modules_come_from_the_file_and_say_where_they_stand(home: Path, library: Path) -> None:
    """A kept module knows its source as any other does, so that a trace shows its lines."""
    file = str(home / SOURCE)
    assert run(home, "-c", CHECK, str(library)) == ["0", file, "_Loader", file, "False"]


def changed(home: Path) -> Path:
    """Add a line to a source."""
    (home / SOURCE).write_text((home / SOURCE).read_text(encoding="utf-8") + "\nNEW = 1\n", encoding="utf-8")
    return home


def damaged(home: Path) -> Path:
    """Cut the file short, and change a source, so that the old code would be seen."""
    (home / KEPT).write_bytes((home / KEPT).read_bytes()[:-1000])
    return changed(home)


def copied(home: Path) -> Path:
    """Copy the whole package with its times to another folder."""
    return Path(shutil.copytree(home, home.with_name("elsewhere")))


def missing(home: Path) -> Path:
    """Take the file away."""
    (home / KEPT).unlink()
    return home


@pytest.mark.parametrize(("spoilt", "new"), [(changed, True), (damaged, True), (copied, False), (missing, False)])
def test_what_no_longer_holds_is_imported_as_ever(
    home: Path, library: Path, spoilt: Callable[[Path], Path], *, new: bool
) -> None:
    """A changed source, a damaged file, another folder, no file: the sources count, and nothing is said of it."""
    home = spoilt(home)
    file = str(home / SOURCE)
    assert run(home, "-c", CHECK, str(library)) == ["0", file, "SourceFileLoader", file, str(new)]


def _table(whole: bytes) -> tuple[bytes, tuple[Any, dict[str, Any]]]:
    """Return the codes with what stands before them, and the table behind them."""
    place = int.from_bytes(whole[:8], "big")
    return whole[:place], marshal.loads(whole[place:])  # noqa: S302  # our own file of a moment ago


def _without_rows(whole: bytes) -> bytes:
    codes, (made_for, kept) = _table(whole)
    return codes + marshal.dumps((made_for, dict.fromkeys(kept, 7)))


def _of_no_file(whole: bytes) -> bytes:
    codes, (made_for, kept) = _table(whole)
    return codes + marshal.dumps((made_for, dict.fromkeys(kept, ("\0", 1, 2, 3, 4))))


def _codes_spoilt(whole: bytes) -> bytes:
    codes, _ = _table(whole)
    return whole[:8] + b"\xff" * (len(codes) - 8) + whole[len(codes) :]


def _codes_moved(whole: bytes) -> bytes:
    """A place and a length that no file has."""
    codes, (made_for, kept) = _table(whole)
    moved = {name: (*row[:3], 2**70, 2**70) for name, row in kept.items()}
    return codes + marshal.dumps((made_for, moved))


@pytest.mark.parametrize(
    "damage",
    [
        pytest.param(lambda _: b"", id="empty"),
        pytest.param(lambda _: b"\xff" * 64, id="ones"),
        pytest.param(lambda whole: b"\0" * len(whole), id="noughts"),
        pytest.param(lambda _: b"Nothing of ours.", id="a text"),
        pytest.param(lambda whole: whole[:1000], id="its begin"),
        pytest.param(lambda whole: whole[1000:], id="its end"),
        pytest.param(lambda whole: whole[:-1], id="a byte short"),
        pytest.param(lambda _: bytes(7) + b"\x08" + marshal.dumps(7), id="a number"),
        pytest.param(lambda _: bytes(7) + b"\x08" + marshal.dumps((1, 2, 3)), id="too much"),
        pytest.param(_without_rows, id="no rows"),
        pytest.param(_of_no_file, id="no names of files"),
        pytest.param(_codes_spoilt, id="spoilt codes"),
        pytest.param(_codes_moved, id="codes moved"),
    ],
)
def test_a_damaged_file_is_as_good_as_none(shared: Path, library: Path, damage: Callable[[bytes], bytes]) -> None:
    """Whatever the damage, the sources count, and nothing is said of it."""
    whole = (shared / KEPT).read_bytes()
    (shared / KEPT).write_bytes(damage(whole))
    try:
        status, file, _, _, new = run(shared, "-c", CHECK, str(library))
    finally:
        (shared / KEPT).write_bytes(whole)
    assert (status, file, new) == ("0", str(shared / SOURCE), "False")


def test_a_source_that_is_gone_is_not_imported(home: Path, library: Path) -> None:
    """A rule that was taken away does not live on in the file."""
    (home / SOURCE).unlink()
    code = "import sys; from authoring.cli.main import main; main(sys.argv[1:3]); print(sys.argv[3] in sys.modules)"
    assert run(home, "-c", code, "check", str(library), RULE) == ["False"]


def test_a_caller_keeps_its_finders(library: Path) -> None:
    """Whoever called the command line from Python goes on importing as before."""
    before = list(sys.meta_path)
    main(["check", str(library)])
    assert sys.meta_path == before
