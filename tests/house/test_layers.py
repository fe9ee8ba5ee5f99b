from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from tests.outside_checkers.program import ROOT

LAYERS = "A folder imports only itself and lower ones"
FOLDERS = [
    "cli",
    "checking",
    "render",
    "booklet",
    "rules",
    "proof",
    "model",
    "workshop",
    "source",
    "quantities",
    "diagnostics",
]

# Where a fault is planted, what it imports, and the contract that must break.
FAULTS = [
    ("diagnostics/planted.py", "from authoring.model import thing", LAYERS),
    ("source/planted.py", "from authoring.quantities import thing", LAYERS),
    ("quantities/planted.py", "from authoring.source import thing", LAYERS),
    ("workshop/planted.py", "from authoring.model import thing", LAYERS),
    ("workshop/planted.py", "from authoring.source import thing", "The workshop's engineering knows"),
    ("model/planted.py", "from authoring.rules import thing", LAYERS),
    ("rules/planted.py", "from authoring.booklet import thing", LAYERS),
    ("booklet/planted.py", "from authoring.render import thing", LAYERS),
    ("render/planted.py", "from authoring import pipeline", LAYERS),
    ("rules/planted.py", "from authoring.checking import thing", LAYERS),
    ("checking/planted.py", "from authoring import pipeline", LAYERS),
    ("pipeline.py", "from authoring.cli import thing", LAYERS),
    ("render/planted.py", "def later():\n    from authoring.cli import thing", LAYERS),
    ("stray/__init__.py", "", LAYERS),
    ("booklet/planted.py", "from authoring.rules import thing", "A booklet is made from the model"),
    ("quantities/planted.py", "from authoring.diagnostics import thing", "Quantities know no procedure"),
    ("model/thing.py", "from authoring.model import other", "No folder's parts import each other"),
]


def broken_contracts(folder: Path) -> list[str]:
    """Return the names of the contracts in `pyproject.toml` that the package in a folder breaks."""
    # Run with the tool's own library in a process of its own, since it remembers the package it has read.
    command = [
        *(sys.executable, "-c", "import sys; from importlinter.cli import lint_imports_command as c; c()"),
        *("--no-cache", "--no-logo", "--config", str(ROOT / "pyproject.toml")),
    ]
    told = subprocess.run(
        command, cwd=folder, capture_output=True, encoding="utf-8", check=False, env={"COLUMNS": "200"}
    )
    names = [line.removesuffix(" BROKEN") for line in told.stdout.splitlines() if line.endswith(" BROKEN")]
    assert bool(told.returncode) == bool(names), told.stdout + told.stderr
    return names


def small_package(folder: Path) -> Path:
    """Write a lawful package with our folders and hardly an import, and return its root."""
    root = folder / "authoring"
    for name in FOLDERS:
        (root / name).mkdir(parents=True)
        (root / name / "__init__.py").touch()
        (root / name / "thing.py").touch()
    (root / "__init__.py").touch()
    (root / "pipeline.py").touch()
    (root / "model" / "other.py").write_text("from authoring.model import thing\n", encoding="utf-8")
    return root


def test_every_import_goes_downward() -> None:
    """Our package keeps every contract: the order of layers, and what must not know what."""
    assert broken_contracts(ROOT) == []


def test_a_lawful_package_breaks_nothing(tmp_path: Path) -> None:
    """The small package that faults are planted in is itself clean."""
    small_package(tmp_path)
    assert broken_contracts(tmp_path) == []


@pytest.mark.parametrize(("place", "line", "contract"), FAULTS)
def test_each_planted_import_breaks_its_contract(tmp_path: Path, place: str, line: str, contract: str) -> None:
    """One import against the order, a folder that nobody placed, or a ring: each breaks its contract and no other."""
    path = small_package(tmp_path) / place
    path.parent.mkdir(exist_ok=True)
    path.write_text(line + "\n", encoding="utf-8")
    (name,) = broken_contracts(tmp_path)
    assert name.startswith(contract)
