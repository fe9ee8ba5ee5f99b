from __future__ import annotations

import importlib
import math
import subprocess
import sys
import time
from pathlib import Path

import pytest
import yaml

from authoring.cli.disk import read_library
from authoring.pipeline import check
from tests.bench.bench import (
    BAYLEAF,
    LONG,
    NOTHING,
    PYTHON,
    ROOT,
    Computing,
    Pair,
    Run,
    computing,
    measured,
    only,
    report,
    report_computing,
    report_memory,
    run,
)
from tests.bench.computing import Clock, Watch
from tests.bench.make_library import NUMBER, make_library
from tests.bench.many import FITMENTS, make_many
from tests.bench.paged_page import paged_page
from tests.bench.without import leave_out, of_the_proof
from tests.cli.changing import change


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


@pytest.mark.parametrize(("seconds", "word"), [(0.016, "met"), (0.017, "MISSED")])
def test_computing_is_held_against_the_check(capsys: pytest.CaptureFixture[str], seconds: float, word: str) -> None:
    """Computing and loading together are a share of the check, by the medians."""
    computed = [Computing(seconds, 0.004, 7), Computing(seconds, 0.004, 7), Computing(9, 9, 7)]
    checks = [Run(0.2, 0), Run(0.2, 0), Run(9, 0)]
    assert report_computing(computed, checks) == (word == "met")
    assert f"goal 10%: {word}" in capsys.readouterr().out


def test_the_long_procedure_is_measured_alone(tmp_path: Path) -> None:
    """No other procedure's computations are in the figure, and what was measured is a part of the whole."""
    library = only(LONG, tmp_path / "long")
    assert [path.stem for path in Path(library).glob("FL-*.yaml")] == [LONG]
    whole = run((PYTHON, "-m", "tests.bench.computing", library, LONG))
    part = computing(library, LONG)
    assert part.asked > 100
    assert part.loading > 0
    assert 0 < part.seconds < whole.seconds


def test_a_clock_counts_once_however_deep() -> None:
    """What is called inside is part of what called it, and an error stops the clock as a return does."""
    clock = Clock()
    with clock, clock:
        time.sleep(0.02)
    with pytest.raises(ValueError, match="torn"), clock:
        raise ValueError("torn")  # noqa: EM101  # the words do not matter
    assert clock.entered == 2
    assert 0.02 <= clock.seconds < 0.04


def test_public_functions_of_the_watched_folder_are_timed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """One that calls another counts once; private ones, other folders and what was only imported are left alone."""
    for name, text in {
        "watched_yard/__init__.py": "",
        "watched_yard/slow.py": "import time\ndef slow():\n    time.sleep(0.02)\n    return 7\n",
        "watched_yard/twice.py": "from watched_yard.slow import slow\ndef _own():\n    return slow()\n"
        "def twice():\n    return slow() + _own()\n",
    }.items():
        (tmp_path / name).parent.mkdir(exist_ok=True)
        (tmp_path / name).write_text(text, encoding="utf-8")
    watch = Watch("watched_yard")
    monkeypatch.syspath_prepend(tmp_path)
    monkeypatch.setattr(sys, "meta_path", [watch, *sys.meta_path])
    twice = importlib.import_module("watched_yard.twice")
    assert twice.twice() == 14
    assert watch.computing.entered == 1
    assert watch.computing.seconds >= 0.04
    assert watch.loading.entered == 1
    assert watch.loading.seconds > 0
    assert not hasattr(twice._own, "__wrapped__")  # noqa: SLF001  # that it was left alone is the point


def test_the_library_of_many_is_what_the_report_says(tmp_path: Path) -> None:
    """So many procedures of one machine, each of 40 steps and for 64 fitments, and no finding."""
    make_many(tmp_path, 3)
    checked = check(*read_library(str(tmp_path)))
    assert checked.findings == []
    assert len(checked.library.procedures) == 3
    for procedure in checked.library.procedures.values():
        features = [len(feature.values) for feature in checked.library.equipment[procedure.equipment].features.values()]
        assert math.prod(features) == FITMENTS == 64
        assert sum(bool(section.when) for section in procedure.sections) == 6
        assert len(list(procedure.steps())) == 40


def test_a_check_without_some_rules_keeps_nothing(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """What is left out finds nothing and all else finds what it did; the next check of the whole is a whole one."""
    make_many(tmp_path / "library", 1)
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "kept"))
    change(tmp_path / "library", "plate-notes: {title", "unheard-of: {title", "sorrel.yaml")

    def told(*words: str) -> set[str]:
        command = (*words, str(tmp_path / "library"))
        out = subprocess.run(command, cwd=ROOT, capture_output=True, encoding="utf-8", check=False).stdout
        return {line.removeprefix("  Rule: ") for line in out.splitlines() if line.startswith("  Rule: ")}

    without = (PYTHON, "-m", "tests.bench.without", "unknown-source")
    assert "unknown-source" not in told(*without)
    assert not (tmp_path / "kept").exists()
    assert told(BAYLEAF, "check") == told(*without) | {"unknown-source"}


def test_the_proof_is_those_rules_that_walk_stories() -> None:
    """Rules are known by what they import; the name of one that is none is no measurement."""
    assert "reached-through-cover" in of_the_proof()
    assert "vague-word" not in of_the_proof()
    with pytest.raises(ValueError, match="no-such-rule"):
        leave_out(["no-such-rule"])


def test_each_run_of_ours_may_be_prepared(tmp_path: Path) -> None:
    """What comes before ours comes before each run of it, the unrecorded first one too, and never before the floor."""
    log = tmp_path / "log"
    log.touch()
    wrote = f"open({str(log)!r}, 'a').write('{{}}')"
    floor, ours = ((PYTHON, "-c", wrote.format(one)) for one in "fo")

    def before() -> None:
        log.write_text(log.read_text(encoding="utf-8") + "b", encoding="utf-8")

    measured(Pair("a job", ours, "nothing", floor, 2, 2, before=before))
    assert log.read_text(encoding="utf-8") == "fbo" * 3
