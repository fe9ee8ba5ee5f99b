"""The files of a library as the disk has them: unreadable, misnamed, missing, linked, too large."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from authoring.cli.disk import read_library
from authoring.cli.main import main
from tests.cli.changing import change


@pytest.mark.parametrize(
    ("content", "line"),
    [
        (b"stock: Stores\ntools:\n\tspanner: {name: spanner}\n", "     3      spanner: {name: spanner}"),
        (b"\xef\xbb\xbfstock: Stores: main\n", "     1  stock: Stores: main"),
        (b"stock: Stores \xb1\n", "     1  stock: Stores \N{REPLACEMENT CHARACTER}"),
    ],
)
def test_a_file_that_cannot_be_read_shows_its_line(
    library: Path, capsys: pytest.CaptureFixture[str], content: bytes, line: str
) -> None:
    """The line at fault is shown although nothing of the file could be used."""
    (library / "stock.yaml").write_bytes(content)
    assert main(["check", str(library)]) == 1
    assert line in capsys.readouterr().out.splitlines()


@pytest.mark.parametrize("content", [b"", "stock: Stores".encode("utf-16")])
def test_what_is_no_text_shows_no_line(library: Path, capsys: pytest.CaptureFixture[str], content: bytes) -> None:
    """An empty file and one of another encoding have a finding without a line."""
    (library / "stock.yaml").write_bytes(content)
    assert main(["check", str(library)]) == 1
    assert "~" not in capsys.readouterr().out


def test_a_file_with_capitals_in_its_ending_is_read(library: Path) -> None:
    """A file that a phone or an old program named in capitals is part of the library like any other."""
    (library / "procedure.yaml").rename(library / "PROCEDURE.YAML")
    assert main(["check", str(library)]) == 0
    change(library, "- remove: level-plug", "- remove: levle-plug", "PROCEDURE.YAML")
    assert main(["check", str(library)]) == 1


def test_what_the_whole_library_lacks_has_no_line(library: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A missing file is told of the library, not of line 1 of nothing."""
    (library / "stock.yaml").unlink()
    assert main(["check", str(library)]) == 1
    assert "the library  error" in capsys.readouterr().out.splitlines()


def test_links_out_of_the_library_and_odd_files(library: Path, tmp_path: Path) -> None:
    """A link out of the library, a pipe and a folder with a file's name are findings or passed over, never read."""
    secret = tmp_path / "secret.yaml"
    secret.write_text("stock: Secret", encoding="utf-8")
    (library / "link.yaml").symlink_to(secret)
    (library / "ring.yaml").symlink_to("ring2.yaml")
    (library / "ring2.yaml").symlink_to("ring.yaml")
    (library / "nowhere.yaml").symlink_to("not-there.yaml")
    (library / "elsewhere").symlink_to(tmp_path)
    os.mkfifo(library / "pipe.yaml")
    (library / "folder.yaml").mkdir()
    files, unread = read_library(str(library))
    told = {"link.yaml", "pipe.yaml", "ring.yaml", "ring2.yaml", "nowhere.yaml", "elsewhere"}
    assert {one.span.file for one in unread} == told
    assert {one.rule for one in unread} == {"unreadable-file"}
    assert sorted(files) == ["equipment.yaml", "procedure.yaml", "shop.yaml", "stock.yaml"]


def test_many_findings_are_cut_short_for_people(library: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The first two hundred are shown, the rest are counted, and JSON has them all."""
    keys = "".join(f"key-{n}: 1\n" for n in range(500))
    (library / "odd.yaml").write_text(f"equipment: odd\nname: Odd\nitems: {{a: {{name: a}}}}\n{keys}", encoding="utf-8")
    assert main(["check", str(library)]) == 1
    out = capsys.readouterr().out
    assert out.count("Rule: unknown-key") == 200
    assert "300 more are not shown" in out
    assert main(["check", str(library), "--format", "json"]) == 1
    assert len(json.loads(capsys.readouterr().out)["findings"]) == 500


def test_a_file_of_thirty_megabytes_is_refused(library: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """It is a finding at its place; the other files are still read."""
    with (library / "big.yaml").open("wb") as file:
        file.truncate(30_000_000)
    assert main(["check", str(library)]) == 1
    out = capsys.readouterr().out
    assert "big.yaml" in out
    assert "file-too-large" in out
