"""What a run of the command line does not pay for."""

from __future__ import annotations

import gc
import platform
import subprocess
import sys
from pathlib import Path

import pytest

from authoring.cli.main import main


def run(code: str, *words: str) -> list[str]:
    """Run Python code in a process of its own and return the lines it prints."""
    return subprocess.run(
        [sys.executable, "-c", code, *words], capture_output=True, text=True, check=True
    ).stdout.splitlines()


def test_a_check_loads_nothing_it_does_not_use(library: Path) -> None:
    """Sockets, random numbers and the tools that look into code are no part of checking a library."""
    code = (
        "import sys; from authoring.cli.main import main; main(['check', sys.argv[1]]); print(*sys.modules, sep='\\n')"
    )
    loaded = set(run(code, str(library)))
    assert {"msgspec", "yaml"} <= loaded
    assert not loaded & {
        "email.utils",
        "inspect",
        "jinja2",
        "markdown_it",
        "platform",
        "random",
        "socket",
        "typing_extensions",
    }


def test_what_was_held_back_can_be_imported_later(library: Path) -> None:
    """A library that comes after and wants the real modules finds them."""
    code = (
        "import sys; from authoring.cli.main import main; main(['check', sys.argv[1]]);"
        "import email.utils, platform, typing_extensions;"
        "print(email.utils.quote('a'), typing_extensions.Protocol.__name__, platform.python_implementation())"
    )
    assert run(code, str(library))[-1] == f"a Protocol {platform.python_implementation()}"


def test_the_end_of_the_process_searches_for_no_rings() -> None:
    """What is left at the end is out of the collector's sight."""
    code = (
        "import atexit, gc; atexit.register(lambda: print(gc.get_freeze_count() > 10_000));"
        "from authoring.cli.main import main; main(['explain'])"
    )
    assert run(code)[-1] == "True"


@pytest.mark.parametrize("words", [["explain"], ["explain", "no-such-rule"], ["--version"]])
def test_a_caller_keeps_its_collector(words: list[str]) -> None:
    """However a run ends, whoever called it from Python goes on with the collector as it was, and nothing frozen."""
    frozen = gc.get_freeze_count()
    try:
        main(words)
    except SystemExit:
        assert words == ["--version"]
    assert gc.isenabled()
    assert gc.get_freeze_count() == frozen
