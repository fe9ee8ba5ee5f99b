"""The Nu Html Checker: does a file keep to the HTML standard?"""

from __future__ import annotations

import json
from collections.abc import Iterable
from pathlib import Path
from typing import Any

import pytest

from tests.outside_checkers.program import node_module, output, program


def nu_html(files: Iterable[Path]) -> list[str]:
    """Return the checker's errors on these files, each as `name:line:column: message`; empty when all are valid.

    Starting Java takes two seconds and a file some milliseconds, so give all files at once.
    The checker needs no network.
    """
    paths = [path.resolve() for path in files]
    if not paths:
        pytest.fail("No file was given to the HTML checker, so nothing would have been checked.")
    jar = node_module("vnu-jar/build/dist/vnu.jar")
    told = output(program("java"), "-Xss4m", "-jar", jar, "--errors-only", "--format", "json", *paths)
    try:
        messages = json.loads(told.stderr)["messages"]
    except (ValueError, KeyError):
        pytest.fail(f"The HTML checker did not answer in JSON:\n{told.stderr}{told.stdout}")
    if told.returncode != 0 and not messages:
        pytest.fail(f"The HTML checker failed without a message, exit status {told.returncode}.")
    return [_line(message) for message in messages]


def _line(message: dict[str, Any]) -> str:
    name = str(message.get("url", "")).rpartition("/")[2]
    return f"{name}:{message.get('lastLine', 0)}:{message.get('firstColumn', 0)}: {message.get('message')}"
