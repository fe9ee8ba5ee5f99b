"""The command line: what it says, what it writes, and the status it leaves with."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from authoring.cli import build, check
from authoring.cli.main import main
from authoring.render.pango_missing import PangoMissing
from tests.cli.changing import change

DEMO = Path(__file__).parent.parent.parent / "procedures"


def test_a_sound_library_passes(library: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Status 0, and the last line counts procedures and findings."""
    assert main(["check", str(library)]) == 0
    assert capsys.readouterr().out.splitlines()[-1] == "1 procedure checked: no finding."


def test_an_error_names_its_place_and_cure(library: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Status 1; the finding shows file, line, the line itself and the nearest name."""
    change(library, "- remove: level-plug", "- remove: levle-plug")
    assert main(["check", str(library)]) == 1
    out = capsys.readouterr().out
    assert "procedure.yaml:18:" in out
    assert "- remove: levle-plug" in out
    assert "level-plug" in out.split("levle-plug")[-1]
    assert "unknown-name" in out


def test_warnings_alone_pass_unless_strict(library: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """An unused tool is a warning: status 0, and 1 under --strict."""
    change(library, "  wrench:", "  mallet: {name: rubber mallet}\n  wrench:", "stock.yaml")
    assert main(["check", str(library)]) == 0
    assert "1 warning." in capsys.readouterr().out
    assert main(["check", str(library), "--strict"]) == 1


def test_json_is_for_programs(library: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """The JSON form holds each finding with rule, severity and place, and nothing else is printed."""
    change(library, "- remove: level-plug", "- remove: levle-plug")
    assert main(["check", str(library), "--format", "json"]) == 1
    findings = json.loads(capsys.readouterr().out)["findings"]
    assert {"unknown-name"} == {one["rule"] for one in findings}


def test_build_writes_each_booklet(library: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Without --html and --pdf both are written, and each is named on a line."""
    out = tmp_path / "out"
    assert main(["build", str(library), "--out", str(out), "--html"]) == 0
    assert [path.name for path in out.iterdir()] == ["FL-110.html"]
    assert capsys.readouterr().out.splitlines() == [f"{out}/FL-110.html"]


def test_with_errors_nothing_is_written_and_old_booklets_stay(library: Path, tmp_path: Path) -> None:
    """A library that stops passing leaves the booklets of yesterday untouched."""
    out = tmp_path / "out"
    main(["build", str(library), "--out", str(out), "--html"])
    before = (out / "FL-110.html").read_bytes()
    change(library, "- remove: level-plug", "- remove: levle-plug")
    assert main(["build", str(library), "--out", str(out), "--html"]) == 1
    assert [path.name for path in out.iterdir()] == ["FL-110.html"]
    assert (out / "FL-110.html").read_bytes() == before


@pytest.mark.slow
def test_a_broken_page_rule_stops_the_build(library: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Cautions that cannot stand on one page with their step are told, and no file appears."""
    shop = (library / "shop.yaml").read_text(encoding="utf-8")
    many = [f"pipe-{n}" for n in range(30)]
    message = shop[shop.index("  hot-pipe:") :]
    copies = [message.replace("hot-pipe:", f"{name}:") for name in many]
    (library / "shop.yaml").write_text(shop + "".join(copies), encoding="utf-8")
    change(library, "safety: [hot-pipe]", f"safety: [{', '.join(many)}]")
    out = tmp_path / "out"
    assert main(["build", str(library), "--out", str(out), "--pdf"]) == 1
    report = capsys.readouterr().out
    told = [line for line in report.splitlines() if "WARNING block" in line]
    assert told
    assert len(told) == len(set(told))
    lines = (library / "procedure.yaml").read_text(encoding="utf-8").splitlines()
    step = next(number for number, line in enumerate(lines, 1) if "pipe-0" in line) - 1
    assert report.count(f"procedure.yaml:{step}:") == len(told), "each finding points at the step"
    assert not out.exists()


def test_only_the_steps_of_a_fitment(library: Path, tmp_path: Path) -> None:
    """--for keeps what applies, drops what does not, and names the fitment on the page and in the file's name."""
    change(
        library,
        "      - step: Tighten the",
        "      - step: Mark the [drop-box].\n        when: {brake: drum}\n"
        "        do:\n          - mark: drop-box\n      - step: Tighten the",
    )
    out = tmp_path / "out"
    assert main(["build", str(library), "--out", str(out), "--html", "--for", "brake=disc"]) == 0
    disc = (out / "FL-110_brake-disc.html").read_text(encoding="utf-8")
    assert main(["build", str(library), "--out", str(out), "--html"]) == 0
    both = (out / "FL-110.html").read_text(encoding="utf-8")
    assert "parking brake: disc brake" in disc
    assert "Mark the drop box" not in disc.replace("<span>", "").replace("</span>", "")
    assert "All fitments" in both
    assert "parking brake: drum brake" in both


def test_an_option_of_the_job_is_chosen_like_a_feature(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """--for takes what is decided in the job, in the file's name and on the page; a job without it is left out."""
    library = Path(__file__).parent.parent / "booklet" / "rare"
    out = tmp_path / "out"
    assert main(["build", str(library), "--out", str(out), "--html", "--for", "breather=hose"]) == 0
    assert [path.name for path in out.iterdir()] == ["FL-310_breather-hose.html"]
    assert "Only if chosen: raised hose" in (out / "FL-310_breather-hose.html").read_text(encoding="utf-8")
    assert "FL-300 is left out" in capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--for", "brake"], "FEATURE=VALUE"),
        (["--for", "brak=disc"], "brake"),
        (["--for", "brake=disk"], "disc"),
        (["--only", "FL-111"], "FL-110"),
    ],
)
def test_wrong_use_is_told_apart(
    library: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str], words: list[str], said: str
) -> None:
    """Status 2, one sentence that offers the right word, and nothing written."""
    out = tmp_path / "out"
    assert main(["build", str(library), "--out", str(out), *words]) == 2
    assert said in capsys.readouterr().err
    assert not out.exists()


def test_a_library_that_is_not_there(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    """Status 2 and the name that was asked for."""
    assert main(["check", ""]) == 2
    assert "has no name" in capsys.readouterr().err
    assert main(["check", str(tmp_path / "nowhere")]) == 2
    assert "nowhere" in capsys.readouterr().err


def test_our_own_bug_is_said_so(
    library: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """Status 3 and a sentence with the place; no traceback."""

    def broken(*_: object) -> None:
        message = "planted"
        raise RuntimeError(message)

    monkeypatch.setattr(check, "check_library", broken)
    assert main(["check", str(library)]) == 3
    err = capsys.readouterr().err
    assert "fault of bayleaf itself" in err
    assert "planted" in err
    assert "Traceback" not in err


def test_without_pango_html_works_and_pdf_says_what_to_install(
    library: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    """A missing Pango stops only the PDF, with the packages named, and leaves nothing half written."""

    def missing(*_: object) -> None:
        raise PangoMissing

    monkeypatch.setattr(build, "pdf", missing)
    out = tmp_path / "out"
    assert main(["build", str(library), "--out", str(out)]) == 2
    assert "libpango-1.0-0" in capsys.readouterr().err
    assert not out.exists()
    assert main(["build", str(library), "--out", str(out), "--html"]) == 0


def test_explain_prints_a_page_and_lists_all(capsys: pytest.CaptureFixture[str]) -> None:
    """A rule's page has its examples; an unknown rule offers the nearest."""
    assert main(["explain", "unknown-name"]) == 0
    assert "Wrong:" in capsys.readouterr().out
    assert main(["explain"]) == 0
    assert "  unknown-name" in capsys.readouterr().out
    assert main(["explain", "unknown-nam"]) == 2
    assert "unknown-name" in capsys.readouterr().err


def run(*words: str, **environment: str) -> subprocess.CompletedProcess[str]:
    """Run the command line as a whole process."""
    command = [sys.executable, "-m", "authoring.cli.main", *words]
    return subprocess.run(
        command, capture_output=True, text=True, check=False, env=os.environ | environment, timeout=120
    )


def test_no_colour_off_a_terminal(library: Path) -> None:
    """Output into a pipe holds no escape sequence."""
    change(library, "- remove: level-plug", "- remove: levle-plug")
    done = run("check", str(library))
    assert done.returncode == 1
    assert "\x1b" not in done.stdout + done.stderr


def test_wrong_words_are_status_two() -> None:
    """An unknown command or option is wrong use."""
    assert run("chekc").returncode == 2
    assert run("check", "--colour").returncode == 2


@pytest.mark.slow
def test_the_same_library_gives_the_same_bytes(tmp_path: Path) -> None:
    """HTML and PDF of the demo are equal in two processes with other hash seeds, time zones and folders."""
    for name, seed, zone in (("one", "1", "UTC"), ("two", "2", "Asia/Tokyo")):
        done = run("build", str(DEMO), "--out", str(tmp_path / name), "--only", "FL-110", PYTHONHASHSEED=seed, TZ=zone)
        assert done.returncode == 0, done.stdout + done.stderr
    for path in (tmp_path / "one").iterdir():
        assert path.read_bytes() == (tmp_path / "two" / path.name).read_bytes(), path.name


def test_a_file_that_cannot_appear_leaves_nothing_half_written(
    library: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    """When a booklet's name is taken by a folder, the command says so, and no waiting file is left."""
    out = tmp_path / "out"
    (out / "FL-110.html" / "inside").mkdir(parents=True)
    assert main(["build", str(library), "--out", str(out), "--html"]) == 2
    assert "cannot write" in capsys.readouterr().err
    assert [path.name for path in out.iterdir()] == ["FL-110.html"]
