"""The version is stated where the program finds it fast, and where a package index reads it."""

from __future__ import annotations

import tomllib

from authoring.cli.version import VERSION
from tests.outside_checkers.program import ROOT


def test_both_say_the_same() -> None:
    """`--version` tells what the package was built as."""
    assert tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["version"] == VERSION
