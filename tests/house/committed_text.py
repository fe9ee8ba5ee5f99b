"""What no committed file may say: a path of somebody's machine, or the host of a package registry."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

from tests.outside_checkers.program import program

# An absolute path that only somebody's own machine has; a path inside the project or a web address is none.
MACHINE_PATH = re.compile(
    r"(?<![\w.~/-])(?:/(?:home|Users)/\w+|/(?:root|work|workspace|builds|mnt)|[A-Z]:\\Users)[/\\]"
)

REGISTRY_HOST = re.compile(
    r"\b(?:(?:test\.)?pypi\.org|files\.pythonhosted\.org|registry\.\w+\.(?:org|com)|npmjs\.(?:org|com)"
    r"|(?:deb|snapshot|security)\.debian\.org)\b"
)


def committed_files(root: Path) -> list[Path]:
    """Return the files under version control below `root` that are still there."""
    listed = subprocess.run([program("git"), "ls-files", "-z"], cwd=root, capture_output=True, check=True)
    paths = [root / name for name in listed.stdout.decode().split("\0") if name]
    return [path for path in paths if path.is_file()]


def told_on(text: str) -> list[str]:
    """Return the machine paths and registry hosts that a text names."""
    return [found[0] for pattern in (MACHINE_PATH, REGISTRY_HOST) for found in pattern.finditer(text)]
