from __future__ import annotations

import subprocess
from pathlib import Path

import pytest
import yaml

from authoring.cli.disk import read_library
from authoring.pipeline import check
from tests.bench.bench import NOTHING, PYTHON, Pair, Run, report, report_memory, run
from tests.bench.make_library import NUMBER, make_library
from tests.bench.paged_page import paged_page


def test_the_large_library_is_as_large_as_the_report_says(tmp_path: Path) -> None:
    """One procedure of 60 KB within a twentieth, 40 steps and 15 figures, as a second YAML reader counts them."""
    procedure = make_library(tmp_path)
    written = yaml.safe_load(procedure.read_text(encoding="utf-8"))
    assert 57_000 <= procedure.stat().st_size <= 63_000
    assert sum(len(section["steps"]) for section in written["sections"]) == 40
    assert len(written["figures"]) == 15


def test_the_large_library_has_no_finding(tmp_path: Path) -> None:
    """What is measured is the work on a sound library, not the printing of findings."""
    make_library(tmp_path)
    checked = check(*read_library(str(tmp_path)))
    assert checked.findings == []
    assert list(checked.library.procedures) == [NUMBER]


def test_the_page_for_the_engine_alone_has_its_pictures_inside(tmp_path: Path) -> None:
    """The floor lays out the same pictures as the booklet, and needs nobody to hand them out."""
    make_library(tmp_path)
    page = paged_page(str(tmp_path), NUMBER)
    assert page.count('src="data:image/svg+xml;base64,') >= 15
    assert 'src="asset:' not in page


def test_a_command_that_fails_stops_the_run() -> None:
    """A failing command is no fast command: its status and words come out as an error."""
    with pytest.raises(subprocess.CalledProcessError) as told:
        run((PYTHON, "-c", "raise SystemExit('torn')"))
    assert told.value.returncode == 1
    assert "torn" in "".join(told.value.__notes__)


def test_time_and_memory_are_those_of_the_process() -> None:
    """A process that sleeps a fifth of a second and holds 50 MB takes and holds at least that."""
    idle = run(NOTHING)
    busy = run((PYTHON, "-c", "import time; held = b'x' * 50_000_000; time.sleep(0.2)"))
    assert busy.seconds >= 0.2
    assert busy.megabytes - idle.megabytes == pytest.approx(50, abs=10)


@pytest.mark.parametrize(("goal", "word"), [(2.0, "met"), (1.9, "MISSED")])
def test_a_missed_goal_is_told(capsys: pytest.CaptureFixture[str], goal: float, word: str) -> None:
    """The ratio is that of the medians, and a goal is met up to its very figure."""
    ours, floor = [Run(0.4, 0), Run(0.2, 0), Run(0.1, 0)], [Run(0.1, 0), Run(0.1, 0), Run(0.9, 0)]
    assert report(Pair("a job", (), "nothing", (), goal, 3), ours, floor) == (word == "met")
    assert f"ratio      2.00; goal {goal:g}: {word}" in capsys.readouterr().out


@pytest.mark.parametrize(("megabytes", "met"), [(105.0, True), (105.1, False)])
def test_memory_is_held_against_the_pages(megabytes: float, *, met: bool) -> None:
    """Ten pages may take 80 MB and 2.5 MB each; the hungriest run counts."""
    assert report_memory([Run(1, 90), Run(1, megabytes)], 10) == met
