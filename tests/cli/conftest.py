"""What every test of the command line begins with."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

BASE = Path(__file__).parent.parent / "base"


@pytest.fixture
def library(tmp_path: Path) -> Path:
    """Give a copy of the small sound library."""
    return Path(shutil.copytree(BASE, tmp_path / "library"))
