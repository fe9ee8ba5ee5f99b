"""How long a file can keep the checker busy: a hostile one no longer than a large honest one."""

from __future__ import annotations

import time

import pytest

from authoring.model.build import build_library
from authoring.rules.rule import run_rules
from authoring.source.reader import read_document
from tests.rules.overlay import base_files

LARGEST = 990_000


def lines(many: str, one: str) -> bytes:
    """Return the base procedure with `many` in the place of its conditions, one entry after another up to the limit."""
    text = base_files()["procedure.yaml"].decode()
    filled = many.replace("…", one * ((LARGEST - len(text)) // len(one.encode())))
    return text.replace("conditions:\n  - The machine stands level.\n", f"conditions:\n{filled}\n").encode()


@pytest.mark.slow
@pytest.mark.parametrize(
    ("many", "one"),
    [
        ("  - x …", "[a] "),
        ("  - x …", "12 mm "),
        ("  - x …", "[a]("),
        ("  - x …", "*a "),
        ("…", "  - 1\n"),
        ("…", "  - x " + "[a] " * 2000 + "\n"),
        ("…", "  - x " + "12 mm " * 1500 + "\n"),
        ("…", "  - x " + "[a](" * 2000 + "\n"),
    ],
)
def test_the_largest_file_is_judged_in_seconds(many: str, one: str) -> None:
    """Whatever fills a file, every finding about it is there in less than twenty seconds."""
    files = base_files() | {"procedure.yaml": lines(many, one)}
    begun = time.perf_counter()
    read = [read_document(name, content)[0] for name, content in files.items()]
    documents = [one for one in read if one is not None]
    assert len(documents) == len(files)
    library, found = build_library(documents, {}, partial=False)
    found += run_rules(library)
    assert time.perf_counter() - begun < 20
    assert found
