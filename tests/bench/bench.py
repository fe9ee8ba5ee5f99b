"""Measure what a person waits for and what memory it takes, each figure beside its floor in the same run.

    python -m tests.bench.bench [RUNS]

Each figure is the median, the least and the most of whole processes, from start to exit, on an installed and compiled
package with warm disk caches.
Of what checks keep nothing is found, but where the figure says so.
Ours and its floor take turns, so that a machine that slows down slows both; budgets are ratios for the same reason.
The exit status is 1 when a goal is missed, and the run stops when a measured command fails.
"""

from __future__ import annotations

import os
import shutil
import statistics
import subprocess
import sys
import tempfile
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from pathlib import Path

import pikepdf
import yaml

from tests.bench.make_features import make_apart
from tests.bench.make_library import NUMBER, make_library
from tests.bench.many import FITMENTS, make_many

ROOT = Path(__file__).parents[2]
PYTHON = sys.executable
BAYLEAF = str(Path(PYTHON).with_name("bayleaf"))

TIMED = (PYTHON, "-I", "-S", str(Path(__file__).with_name("timed.py")))

NOTHING = (PYTHON, "-c", "pass")
ENGINE = (
    "import sys, weasyprint;"
    "weasyprint.HTML(filename=sys.argv[1]).write_pdf(sys.argv[2], pdf_variant='pdf/ua-1', pdf_tags=True)"
)

NOTHING_KEPT = os.devnull
"""Stands for a folder in which nothing can be kept, so that every check is a cold one."""

LEAST_RUNS = 7
SHORT_FACTOR = 3
"""How many times more often the short commands run, whose figures scatter more."""

LONG = "FL-210"
"""The longest procedure of the demo library."""

COMPUTING_SHARE = 0.10
"""What all computations of one procedure may take of the time of its check."""

MANY = 1000
FEWER = 100
"""The procedures of a library that is checked from its beginning and still leaves time for a coffee."""

ON_ONE_CORE = (
    "import os, sys; os.sched_setaffinity(0, {min(os.sched_getaffinity(0))}); os.execv(sys.argv[1], sys.argv[1:])"
)

MB_A_PAGE = 2.5
MB_AT_REST = 80


@dataclass(frozen=True, slots=True)
class Run:
    """One process: how long it took, in seconds, and the most memory it held, in MB of 10^6 bytes."""

    seconds: float
    megabytes: float


@dataclass(frozen=True, slots=True)
class Pair:
    """A command of ours, the floor it stands on, and how many times the floor it may take.

    `kept` is the folder in which ours finds what checks have kept; `before` is done before each run of ours.
    """

    name: str
    ours: Sequence[str]
    floor_name: str
    floor: Sequence[str]
    goal: float
    runs: int
    kept: str = NOTHING_KEPT
    before: Callable[[], object] | None = None


@dataclass(frozen=True, slots=True)
class Computing:
    """What one cold process computed: the seconds of that, the seconds of loading it, and how often it was asked."""

    seconds: float
    loading: float
    asked: int


def run(command: Sequence[str], kept: str = NOTHING_KEPT) -> Run:
    """Run a command, its program given by its path, to its end; raises CalledProcessError when it fails."""
    fonts = str(ROOT / "authoring/render/fonts/fonts.conf")
    settings = os.environ | {"FONTCONFIG_FILE": fonts, "XDG_CACHE_HOME": kept}
    told = subprocess.run([*TIMED, *command], env=settings, capture_output=True, encoding="utf-8", check=True)
    seconds, peak, status = told.stdout.split()
    if status != "0":
        failed = subprocess.CalledProcessError(int(status), list(command), told.stderr)
        failed.add_note(told.stderr)
        raise failed
    # Linux counts in KiB, macOS in bytes.
    return Run(float(seconds), int(peak) * (1 if sys.platform == "darwin" else 1024) / 1e6)


def measured(pair: Pair) -> tuple[list[Run], list[Run]]:
    """Run ours and the floor in turns, once each unrecorded to warm the caches; return their runs."""
    turns = [(run(pair.floor), _ours(pair)) for _ in range(1 + pair.runs)][1:]
    return [ours for _, ours in turns], [floor for floor, _ in turns]


def _ours(pair: Pair) -> Run:
    if pair.before is not None:
        pair.before()
    return run(pair.ours, pair.kept)


def shown(runs: Sequence[Run]) -> str:
    """Return the median, least and most time of some runs, in milliseconds."""
    times = [1000 * one.seconds for one in runs]
    return f"{statistics.median(times):8.1f} ({min(times):.1f} to {max(times):.1f})"


def middle(runs: Sequence[Run]) -> float:
    """Return the median time of some runs in seconds."""
    return statistics.median(one.seconds for one in runs)


def report(pair: Pair, ours: Sequence[Run], floor: Sequence[Run]) -> bool:
    """Print one pair and return whether the goal is met."""
    ratio = middle(ours) / middle(floor)
    met = ratio <= pair.goal
    print(f"{pair.name}, {pair.runs} runs of each")
    print(f"  ours   {shown(ours)} ms")
    print(f"  floor  {shown(floor)} ms  {pair.floor_name}")
    print(f"  ratio  {ratio:8.2f}; goal {pair.goal:g}: {'met' if met else 'MISSED'}\n", flush=True)
    return met


def report_memory(runs: Sequence[Run], pages: int) -> bool:
    """Print the most memory that the PDF took and return whether it is within what its pages may take."""
    most = max(one.megabytes for one in runs)
    budget = MB_AT_REST + MB_A_PAGE * pages
    met = most <= budget
    print(f"Peak memory of the PDF build, the most of {len(runs)} runs, {pages} pages")
    print(f"  ours   {most:8.1f} MB")
    print(
        f"  goal   {budget:8.1f} MB, {MB_AT_REST} and {MB_A_PAGE:g} a page: {'met' if met else 'MISSED'}\n", flush=True
    )
    return met


def computing(library: str, number: str) -> Computing:
    """Check and compose one procedure in a fresh process; raises CalledProcessError when nothing was measured."""
    command = (PYTHON, "-m", "tests.bench.computing", library, number)
    told = subprocess.run(command, cwd=ROOT, capture_output=True, encoding="utf-8", check=True)
    seconds, loading, asked = told.stdout.split()
    return Computing(float(seconds), float(loading), int(asked))


def only(number: str, folder: Path) -> str:
    """Copy of the demo library one procedure and what all share, and return where it is."""
    shutil.copytree(ROOT / "procedures", folder)
    kept = folder / f"{number}.yaml"
    machine = folder / f"{yaml.safe_load(kept.read_text(encoding='utf-8'))['equipment']}.yaml"
    for file in folder.glob("*.yaml"):
        if file not in {kept, machine, folder / "shop.yaml", folder / "stock.yaml"}:
            file.unlink()
    return str(folder)


def report_computing(computed: Sequence[Computing], checks: Sequence[Run]) -> bool:
    """Print how long the computations of one procedure take beside its check; return whether the goal is met."""
    seconds = statistics.median(one.seconds for one in computed)
    loading = statistics.median(one.loading for one in computed)
    share = (seconds + loading) / middle(checks)
    met = share <= COMPUTING_SHARE
    print(f"All computations of {LONG}, checked and composed, cold, {len(computed)} runs of each")
    print(f"  ours   {1000 * seconds:8.1f} ms for {computed[0].asked} questions, {1000 * loading:.1f} ms to load")
    print(f"  check  {shown(checks)} ms  bayleaf check of that procedure alone")
    print(f"  share  {share:8.1%}; goal {COMPUTING_SHARE:.0%}: {'met' if met else 'MISSED'}\n", flush=True)
    return met


def measured_computing(folder: Path, runs: int) -> tuple[list[Computing], list[Run]]:
    """Compute and check one procedure in turns, once each unrecorded to warm the disk's caches."""
    library = only(LONG, folder / "long")
    check = (BAYLEAF, "check", library)
    run(check)
    computing(library, LONG)
    turns = [(computing(library, LONG), run(check)) for _ in range(runs)]
    return [computed for computed, _ in turns], [checked for _, checked in turns]


def pairs(folder: Path, runs: int) -> list[Pair]:
    """Write the large library into a folder and return what is measured on it, the PDF last."""
    library, out = str(folder / "library"), str(folder / "out")
    size = make_library(folder / "library").stat().st_size / 1000
    page = str(folder / "page.html")
    run((PYTHON, "-m", "tests.bench.paged_page", library, NUMBER, page))
    engine, bare = "the page engine alone on the same page", "python -c pass"
    often = SHORT_FACTOR * runs
    build = (BAYLEAF, "build", library, "--out", out)
    return [
        Pair("bayleaf --help", (BAYLEAF, "--help"), bare, NOTHING, 3.3, often),
        Pair(f"bayleaf check, a procedure of {size:.0f} KB", (BAYLEAF, "check", library), bare, NOTHING, 14, often),
        Pair("bayleaf build --html, 40 steps", (*build, "--html"), bare, NOTHING, 18, often),
        Pair(
            *("bayleaf build --pdf, 40 steps", (*build, "--pdf"), engine),
            *((PYTHON, "-c", ENGINE, page, str(folder / "bare.pdf")), 1.15, runs),
        ),
    ]


def pairs_of_the_proof(folder: Path, runs: int) -> list[Pair]:
    """Return what the proof of the longest procedure takes, and that of a job with many features against one of few."""
    many, few = folder / "many-features", folder / "few-features"
    for one, features in ((many, 20), (few, 2)):
        one.mkdir()
        make_apart(one, features)
    check, often, bare = (BAYLEAF, "check"), SHORT_FACTOR * runs, "python -c pass"
    long = only(LONG, folder / "longest")
    return [
        Pair(f"bayleaf check of {LONG} alone, the proof in full", (*check, long), bare, NOTHING, 18, often),
        Pair(
            *("bayleaf check, 20 covers that differ by 20 features", (*check, str(many)), "by 2 features"),
            *((*check, str(few)), 2, often),
        ),
    ]


def pairs_of_many(folder: Path, runs: int) -> list[Pair]:
    """Write a library of a thousand procedures, check it once, and return what is measured on it."""
    many, fewer, one = (folder / name for name in ("many", "fewer", "one"))
    changed = make_many(many, MANY)[MANY // 2]
    make_many(fewer, FEWER)
    make_many(one, 1)
    kept = str(folder / "kept")
    check, words = (
        (BAYLEAF, "check", str(many)),
        f"bayleaf check, {MANY} procedures of 40 steps and {FITMENTS} fitments",
    )
    run(check, kept)
    edits = iter(range(1_000_000))

    def edit() -> None:
        with changed.open("a", encoding="utf-8") as file:
            file.write(f"# Read once more, {next(edits)}.\n")

    often, alone, bare = SHORT_FACTOR * runs, "the check of a library of one such procedure", "python -c pass"
    core = (PYTHON, "-c", ON_ONE_CORE, BAYLEAF, "check", str(fewer))
    return [
        Pair(f"{words}, nothing changed", check, bare, NOTHING, 3, often, kept),
        Pair(f"{words}, one changed", check, alone, (BAYLEAF, "check", str(one)), 3, runs, kept, edit),
        Pair(
            f"the same, {FEWER} of them, cold, on all cores", (*check[:2], str(fewer)), "on one core", core, 0.75, runs
        ),
        Pair(
            *(f"{words}, cold", check, "without the proof"),
            *((PYTHON, "-m", "tests.bench.without", "--proof", str(many)), 2, 1),
        ),
    ]


def main(runs: int) -> int:
    """Measure everything, print it, and return the exit status."""
    met = []
    os.chdir(ROOT)
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        for pair in pairs(folder, runs):
            ours, floor = measured(pair)
            met.append(report(pair, ours, floor))
        met.append(report_computing(*measured_computing(folder, runs)))
        last = ours
        met += [report(pair, *measured(pair)) for pair in pairs_of_the_proof(folder, runs)]
        met += [report(pair, *measured(pair)) for pair in pairs_of_many(folder, runs)]
        with pikepdf.open(folder / "out" / f"{NUMBER}.pdf") as booklet:
            met.append(report_memory(last, len(booklet.pages)))
    return 0 if all(met) else 1


if __name__ == "__main__":
    sys.exit(main(max(LEAST_RUNS, int(sys.argv[1]) if len(sys.argv) > 1 else LEAST_RUNS)))
