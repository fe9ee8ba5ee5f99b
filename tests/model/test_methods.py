"""The methods of one step: each has a letter of its own, and there are no more methods than letters."""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Diagnostic
from authoring.model.build import build_library
from authoring.model.library import Library
from authoring.source.reader import read_document
from tests.rules.overlay import base_files, overlay


def built(count: int) -> tuple[Library, list[Diagnostic]]:
    """Return the base library with a step of so many methods, and what is found as it is read."""
    methods = "          - do: [{clean: drop-box}]\n" * count
    text = f"sections:\n  - title: Clean\n    steps:\n      - either:\n{methods}"
    files = base_files() | overlay([("procedure", text)]).files
    documents = [document for name, content in files.items() if (document := read_document(name, content)[0])]
    return build_library(documents, {}, partial=False)


def test_letters_are_apart_and_one_method_is_the_first() -> None:
    """Twenty-six methods have the letters a to z, and only a is the first."""
    library, found = built(26)
    assert not found
    methods = [step.method for _, step in library.procedures["FL-110"].steps()]
    assert "".join(one.letter for one in methods if one is not None) == "abcdefghijklmnopqrstuvwxyz"
    assert [one.is_first for one in methods if one is not None] == [True] + 25 * [False]


def test_more_methods_than_letters_are_refused() -> None:
    """A step of twenty-seven methods is told of once."""
    _, found = built(27)
    assert [one.message for one in found] == ['"either" has 27 entries, but needs at most 26.']
