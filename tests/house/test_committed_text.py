from __future__ import annotations

import pytest

from tests.house.committed_text import committed_files, told_on
from tests.outside_checkers.program import ROOT

# Put together here, so that this file does not itself say what it forbids.
FORBIDDEN = [
    "see " + "/home" + "/ann/notes.txt",
    "see '" + "/root" + "/x'",
    "open " + "C:" + "\\Users\\ann",
    "--index-url https://" + "pypi." + "org/simple",
    "https://files." + "pythonhosted." + "org/packages/aa/x.whl",
    '"resolved": "https://' + "registry." + "npmjs" + '.org/axe-core"',
    "deb http://" + "deb." + "debian.org/debian bookworm main",
]

ALLOWED = [
    "procedures/work/a.yaml",
    "#!/bin/sh",
    "https://example.org/home/ann/",
    "the root/branch of a fault tree",
    "2 m/root mean square",
]


def test_no_committed_file_names_a_machine_or_a_registry() -> None:
    """What is committed works for everybody: from any folder, and from whatever registry a machine is set up for."""
    told = {}
    for path in committed_files(ROOT):
        try:
            text = path.read_text(encoding="utf-8")
        except UnicodeDecodeError:
            continue  # a font or a picture
        if found := told_on(text):
            told[str(path.relative_to(ROOT))] = found
    assert told == {}


def test_committed_files_are_seen() -> None:
    """The list holds this project's own files, so that the check above looks at something."""
    names = {path.relative_to(ROOT).as_posix() for path in committed_files(ROOT)}
    assert {"run", "pyproject.toml", "requirements.lock", "package-lock.json"} <= names


@pytest.mark.parametrize("text", FORBIDDEN)
def test_each_forbidden_text_is_told_on(text: str) -> None:
    """A home folder, a registry's address: named as they stand."""
    assert told_on(text)


@pytest.mark.parametrize("text", ALLOWED)
def test_lawful_text_passes(text: str) -> None:
    """A path inside the project and a page about something else are no secrets."""
    assert told_on(text) == []
