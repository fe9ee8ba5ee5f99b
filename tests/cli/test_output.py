"""Where the output goes: terminals without our signs, streams that are shut or full, folders that are none."""

from __future__ import annotations

import errno
import fcntl
import os
import subprocess
import sys
from pathlib import Path

import pytest

from authoring.cli.main import main
from tests.cli.changing import change

BAYLEAF = f"{sys.executable} -m authoring.cli.main"


def shell(words: str, **environment: str) -> subprocess.CompletedProcess[str]:
    """Run a command line through the shell, which can shut streams and lead them elsewhere."""
    return subprocess.run(
        ["/bin/sh", "-c", words],
        capture_output=True,
        encoding="utf-8",
        errors="replace",
        check=False,
        env=os.environ | environment,
        timeout=60,
    )


@pytest.mark.parametrize("encoding", ["ascii", "cp1252", "utf-8"])
def test_a_terminal_without_our_signs_still_gets_the_finding(library: Path, encoding: str) -> None:
    """A sign that the terminal's encoding lacks is shown by its code, and the status is that of the library."""
    change(library, "42 ± 4 N·m", "42 ± 4 mN ≤", "equipment.yaml")
    done = shell(f"{BAYLEAF} check {library}", PYTHONIOENCODING=encoding)
    assert (done.returncode, done.stderr) == (1, "")
    assert "bad-quantity" in done.stdout


def test_a_stream_that_is_shut_changes_no_status(library: Path) -> None:
    """Whoever shuts our output wants the status alone."""
    change(library, "- remove: level-plug", "- remove: levle-plug")
    assert shell(f"{BAYLEAF} check {library} >&-").returncode == 1
    assert shell(f"{BAYLEAF} build {library} 2>&-").returncode == 1


@pytest.mark.parametrize("form", ["text", "json"])
def test_a_full_disk_is_no_bug_of_ours(library: Path, form: str) -> None:
    """Output that cannot be written is told in a sentence, with the status of wrong use."""
    done = shell(f"{BAYLEAF} check {library} --format {form} >/dev/full")
    assert done.returncode == 2
    assert done.stderr.splitlines() == ["bayleaf: the output cannot be written: No space left on device"]


def test_a_stream_that_is_for_reading_is_told(library: Path) -> None:
    """Output that is led into a file opened for reading cannot be written, which is no bug of ours."""
    done = shell(f"{BAYLEAF} check {library} 1</dev/null")
    assert done.returncode == 2
    assert done.stderr.splitlines() == ["bayleaf: the output cannot be written: Bad file descriptor"]


def test_a_reader_that_went_away_is_left_in_peace(library: Path) -> None:
    """Nothing is said to whoever has seen enough, and the status is not that of a sound library."""
    done = shell(f"{{ {BAYLEAF} check {library}; echo $? >&2; }} | true")
    assert done.stderr.splitlines() == ["1"]


@pytest.mark.parametrize("number", [errno.EMFILE, errno.ENOMEM, errno.EINVAL])
def test_another_refusal_of_the_system_is_told_as_what_it_is(
    library: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str], number: int
) -> None:
    """A refusal that is not about writing is not laid to the output, though it names no file."""

    def refused(*_: object) -> int:
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr("authoring.cli.check.run", refused)
    assert main(["check", str(library)]) == 3
    err = capsys.readouterr().err
    assert os.strerror(number) in err
    assert "output cannot be written" not in err


def test_a_name_that_no_disk_takes_is_wrong_use(capsys: pytest.CaptureFixture[str]) -> None:
    """The system's refusal is told as it is."""
    assert main(["check", "x" * 5000]) == 2
    assert "cannot be read" in capsys.readouterr().err


def test_out_that_is_a_file_is_told(library: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """A file in the place of the folder is named as what it is, and stays."""
    taken = library / "shop.yaml"
    before = taken.read_bytes()
    assert main(["build", str(library), "--html", "--out", str(taken)]) == 2
    assert "is a file; name a folder" in capsys.readouterr().err
    assert taken.read_bytes() == before


def test_what_is_printed_is_where_it_was_written(
    library: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Each printed path leads to its booklet, however the folder was named."""
    monkeypatch.chdir(tmp_path)
    for out in ("", ".", "a/", "a/b/../c"):
        assert main(["build", str(library), "--html", "--out", out]) == 0
        printed = capsys.readouterr().out.splitlines()[-1]
        assert Path(printed).stat().st_mtime_ns == max(path.stat().st_mtime_ns for path in tmp_path.rglob("*.html"))


def test_what_a_killed_build_left_does_not_stay(library: Path, tmp_path: Path) -> None:
    """A file that waited for its name when a build was killed is gone after the next one."""
    out = tmp_path / "out"
    out.mkdir()
    (out / ".FL-110.html.new").write_text("half", encoding="utf-8")
    assert main(["build", str(library), "--html", "--out", str(out)]) == 0
    assert [path.name for path in out.iterdir()] == ["FL-110.html"]


def test_two_builds_into_one_folder_follow_one_another(library: Path, tmp_path: Path) -> None:
    """While one build writes, another waits, so that the booklets of two runs never mix."""
    out = tmp_path / "out"
    out.mkdir()
    held = os.open(out, os.O_RDONLY)
    fcntl.flock(held, fcntl.LOCK_EX)
    words = [*BAYLEAF.split(), "build", str(library), "--html", "--out", str(out)]
    with subprocess.Popen(words, stdout=subprocess.PIPE) as second:
        with pytest.raises(subprocess.TimeoutExpired):
            second.wait(timeout=3)
        assert list(out.iterdir()) == []
        os.close(held)
        assert second.wait(timeout=60) == 0
    assert [path.name for path in out.iterdir()] == ["FL-110.html"]


def test_one_feature_cannot_have_two_values(library: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """No vehicle has both, and the later of the two must not win in silence."""
    assert main(["build", str(library), "--html", "--for", "brake=disc", "--for", "brake=drum"]) == 2
    assert "disc and drum" in capsys.readouterr().err
