from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import Any

import pytest
import ruamel.yaml
import yaml

from authoring.source import reader
from authoring.source.reader import read_document

_ROOT = Path(__file__).parents[2]
_CORPUS = sorted([*_ROOT.glob("tests/base/*.yaml"), *_ROOT.glob("procedures/**/*.yaml")])

_STYLES = """\
plain: two words
folded plain: two
  words
quoted: "tab\\tand \\
  join, line\\nend, \\xe9 \\u20ac \\U0001f527"
single: 'it''s
  folded'
literal: |
  one
    two

  three
literal kept: |+
  one

literal stripped: |-
  one
indented: |2
    two more
folded: >
  one
  two

  three
    four
  five
empty:
words: [yes, no, on, off, y, n, True, FALSE, Null, ~]
numbers: [0, -1, +2, 0o17, 0x1F, 1.5, -0.5, .5, 5., 1e3, 1E-3, +1.0e+2]
text like numbers: [1:30, 12:30:45, 1.2.3, 0x, 1e, 1_x, "12", '1.0', -, --1]
nested: {a: [1, {b: []}], c: {}}
list:
- at the same level
- - list in list
- key: in list
  other: "#1" # a comment
"""
_FILES = {"scalar styles": _STYLES, **{path.name: path.read_text(encoding="utf-8") for path in _CORPUS}}


@pytest.mark.parametrize("name", _FILES)
def test_another_yaml_reader_gives_the_same_data(name: str) -> None:
    """ruamel.yaml's pure reader, which shares no code with libyaml, gives the same data and types, but for dates."""
    document, findings = read_document(name, _FILES[name].encode())
    assert findings == []
    assert document is not None
    other = ruamel.yaml.YAML(typ="safe", pure=True).load(_FILES[name])
    assert repr(document.data) == repr(_dates_as_text(other))


@pytest.mark.parametrize(
    ("written", "ours", "theirs"),
    [
        ("1_000", "1_000", 1000),
        ("0b11", "0b11", 3),
        ("2024-01-02", "2024-01-02", "date"),
    ],
)
def test_where_the_readers_differ(written: str, ours: object, theirs: object) -> None:
    """The only differences: the other reader keeps three forms of YAML 1.1 that YAML 1.2.2 section 10.3.2 has not."""
    document, _ = read_document("x.yaml", f"v: {written}".encode())
    assert document is not None
    assert document.data["v"] == ours
    other = ruamel.yaml.YAML(typ="safe", pure=True).load(f"v: {written}")["v"]
    assert (type(other).__name__ if theirs == "date" else other) == theirs


@pytest.mark.parametrize("name", _FILES)
def test_the_slow_parser_gives_the_same(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the compiled parser is missing, PyYAML's own gives the same data and the same places."""
    fast, _ = read_document(name, _FILES[name].encode())
    monkeypatch.setattr(reader, "_PARSER", yaml.SafeLoader)
    slow, findings = read_document(name, _FILES[name].encode())
    assert findings == []
    assert fast is not None
    assert slow is not None
    assert slow.data == fast.data
    for path in _paths(fast.data):
        assert slow.places.key(path) == fast.places.key(path)
        assert slow.places.value(path) == fast.places.value(path)


@pytest.mark.parametrize(
    "text",
    ["a:\n\tb: 1", "a: 'x", "a: [1", "a: b: c", "a: @x", "a:\n   b: 1\n  c: 2", "a: 1\nfoo\nb: 2", "a: ]", "- a\nb: 1"],
)
def test_the_slow_parser_refuses_the_same(text: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """A fault is told in the same words on the same line whichever parser reads."""
    _, fast = read_document("x.yaml", text.encode())
    monkeypatch.setattr(reader, "_PARSER", yaml.SafeLoader)
    _, slow = read_document("x.yaml", text.encode())
    assert fast
    assert [(one.rule, one.span.line, one.message) for one in slow] == [
        (one.rule, one.span.line, one.message) for one in fast
    ]


def test_the_slow_parser_does_not_recurse(monkeypatch: pytest.MonkeyPatch) -> None:
    """Deep nesting ends at our own limit, before it can end the interpreter's stack."""
    monkeypatch.setattr(reader, "_PARSER", yaml.SafeLoader)
    _, findings = read_document("x.yaml", b"[" * 5000)
    assert [one.rule for one in findings] == ["nesting-limit"]


def _dates_as_text(data: Any) -> Any:
    if isinstance(data, dict):
        return {key: _dates_as_text(value) for key, value in data.items()}
    if isinstance(data, list):
        return [_dates_as_text(value) for value in data]
    return data.isoformat() if isinstance(data, dt.date) else data


def _paths(data: Any, above: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    below = data.items() if isinstance(data, dict) else enumerate(data) if isinstance(data, list) else ()
    return [above, *(path for key, value in below for path in _paths(value, (*above, key)))]
