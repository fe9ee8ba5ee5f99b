from __future__ import annotations

import json
import re
import subprocess
import tomllib
from collections.abc import Callable
from pathlib import Path

import pytest
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

from tests.outside_checkers.program import ROOT, program

PIN = re.compile(r"^(?P<name>[\w.-]+)==(?P<version>[^\s;]+)", re.MULTILINE)
LOCKS = ["requirements.lock", "requirements-dev.lock"]
SETTINGS = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))


def pins(lock: str) -> set[tuple[str, str]]:
    """Return the name and version of every package that a lock file pins."""
    text = (ROOT / lock).read_text(encoding="utf-8")
    return {(canonicalize_name(pin["name"]), pin["version"]) for pin in PIN.finditer(text)}


Run = Callable[..., subprocess.CompletedProcess[str]]


@pytest.fixture
def run(tmp_path: Path) -> Run:
    """Give a call of the project's script on a system that has a shell and next to nothing else."""
    for name in ("cat", "dirname"):
        (tmp_path / name).symlink_to(program(name))
    shell = program("sh")

    def call(*arguments: str) -> subprocess.CompletedProcess[str]:
        command = [shell, str(ROOT / "run"), *arguments]
        settings = {"PATH": str(tmp_path)}
        return subprocess.run(command, env=settings, capture_output=True, encoding="utf-8", check=False)

    return call


@pytest.mark.parametrize("lock", LOCKS)
def test_every_pin_has_a_checksum_and_no_address(lock: str) -> None:
    """Each package is taken by version and checksum, from whatever registry the machine is set up for."""
    text = (ROOT / lock).read_text(encoding="utf-8")
    for entry in re.split(r"\n(?=\w)", text.strip()):
        assert PIN.match(entry), entry
        assert "--hash=sha256:" in entry, entry
    assert "://" not in text


def test_the_two_locks_agree() -> None:
    """Every run-time pin is a development pin too, so one .venv can serve both."""
    assert pins("requirements.lock")
    assert pins("requirements.lock") < pins("requirements-dev.lock")


@pytest.mark.parametrize(
    ("lock", "groups"), [("requirements.lock", ["build"]), ("requirements-dev.lock", ["build", "dev"])]
)
def test_the_locks_hold_what_the_project_asks_for(lock: str, groups: list[str]) -> None:
    """Each dependency stands in its lock, at a version the project accepts."""
    wanted = [*SETTINGS["project"]["dependencies"]]
    for group in groups:
        wanted += SETTINGS["dependency-groups"][group]
    locked = pins(lock)
    for line in wanted:
        one = Requirement(line)
        versions = [version for name, version in locked if name == canonicalize_name(one.name)]
        assert versions, line
        assert all(one.specifier.contains(version) for version in versions), line


def test_the_node_lock_has_checksums_and_no_address() -> None:
    """The two checkers from Node's registry are pinned by checksum, without the registry's address."""
    packages = json.loads((ROOT / "package-lock.json").read_text(encoding="utf-8"))["packages"]
    assert {"node_modules/axe-core", "node_modules/vnu-jar"} <= packages.keys()
    for name, package in packages.items():
        assert "resolved" not in package
        assert not name or package["integrity"].startswith("sha512-")


def test_run_tells_its_commands(run: Run) -> None:
    """Without a command, or asked for help, the script says what it can do."""
    for arguments in ((), ("help",), ("--help",)):
        told = run(*arguments)
        assert told.returncode == 0
        for command in ("demo", "test", "lint", "bench", "schema"):
            assert re.search(rf"^  {command}\b", told.stdout, re.MULTILINE)


def test_run_refuses_an_unknown_command(run: Run) -> None:
    """A mistyped command ends with status 2 and the list of commands."""
    told = run("tset")
    assert told.returncode == 2
    assert "usage:" in told.stderr


def test_run_says_what_to_install_where_there_is_no_apt(run: Run) -> None:
    """On a system without apt-get and Python, the script names each thing that is missing and touches nothing."""
    told = run("demo")
    assert told.returncode == 1
    assert "(Debian's names): python3 python3-venv libpango-1.0-0" in told.stderr
    assert "libpangoft2-1.0 and libharfbuzz-subset," in told.stderr
    assert "Traceback" not in told.stderr


def test_continuous_integration_runs_the_tests() -> None:
    """The same command as a person's, and both scripts are plain POSIX shell and may be executed."""
    for script in ("run", ".ci/run"):
        assert (ROOT / script).read_text(encoding="utf-8").startswith("#!/bin/sh\n")
        assert (ROOT / script).stat().st_mode & 0o111
        assert subprocess.run([program("sh"), "-n", str(ROOT / script)], check=False).returncode == 0
    assert "exec ./run test" in (ROOT / ".ci/run").read_text(encoding="utf-8")
