from __future__ import annotations

import json

from msgspec.structs import replace

from authoring.diagnostics.as_json import as_json
from authoring.diagnostics.diagnostic import Diagnostic, Related, Severity, Span

_ONE = Diagnostic(
    "duplicate-key",
    Severity.WARNING,
    'The key "a" stands twice.',
    Span("procedures/a.yaml", 3, 1, 3, 2),
    "Keep one.",
    (Related(Span("procedures/b.yaml", 1, 1, 2, 4), "first here"),),
)


def test_the_keys_are_those_that_are_described() -> None:
    """Every field of a finding is there under its documented key, with the other places below it."""
    assert json.loads(as_json([_ONE])) == {
        "format": 1,
        "findings": [
            {
                "rule": "duplicate-key",
                "severity": "warning",
                "message": 'The key "a" stands twice.',
                "cure": "Keep one.",
                "fitments": "",
                "file": "procedures/a.yaml",
                "line": 3,
                "column": 1,
                "end_line": 3,
                "end_column": 2,
                "related": [
                    {
                        "message": "first here",
                        "file": "procedures/b.yaml",
                        "line": 1,
                        "column": 1,
                        "end_line": 2,
                        "end_column": 4,
                    }
                ],
            }
        ],
    }


def test_the_vehicles_are_named() -> None:
    """A finding about some vehicles says which."""
    (found,) = json.loads(as_json([replace(_ONE, fitments="parking brake: disc brake")]))["findings"]
    assert found["fitments"] == "parking brake: disc brake"


def test_the_text_is_safe_to_print_anywhere() -> None:
    """The output is ASCII, ends with a line end, keeps the order given, and takes a file name that is no text."""
    odd = Diagnostic("unreadable-file", Severity.ERROR, "It cannot be read.", Span("caf\udce9.yaml", 1, 1, 1, 1))
    text = as_json([odd, _ONE])
    assert text.isascii()
    assert text.endswith("}\n")
    assert [one["rule"] for one in json.loads(text)["findings"]] == ["unreadable-file", "duplicate-key"]
    assert json.loads(text)["findings"][0]["file"] == "caf\udce9.yaml"
    assert as_json([]) == '{\n  "format": 1,\n  "findings": []\n}\n'
