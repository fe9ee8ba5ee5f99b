"""The programs that the outside checkers stand on: found, or the test fails and says how to get them."""

from __future__ import annotations

import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]

CURE = "Run ./run test, which installs what the tests need."


def program(*names: str) -> str:
    """Return the path of the first of these programs that is installed; fail the test when there is none.

    A missing checker never skips a test: what was not checked would look like what passed.
    """
    for name in names:
        found = shutil.which(name)
        if found:
            return found
    pytest.fail(f"The program {' or '.join(names)} is missing. {CURE}")


def node_module(path: str) -> Path:
    """Return a file inside `node_modules`; fail the test when it is not there."""
    found = ROOT / "node_modules" / path
    if not found.is_file():
        pytest.fail(f"{path} is missing from node_modules. {CURE}")
    return found


def output(*command: str | Path, timeout: float = 120) -> subprocess.CompletedProcess[str]:
    """Run a program to its end, whatever its exit status, and return what it said as UTF-8 text."""
    return subprocess.run(command, capture_output=True, encoding="utf-8", check=False, timeout=timeout)
