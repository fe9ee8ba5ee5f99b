from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from authoring.source import engine
from authoring.source.document import Document
from authoring.source.reader import read_document
from authoring.source.shape import Shape
from tests.source.inside import assert_inside, shown_lines
from tests.source.test_shape import SCHEMA

_FAST = engine.compiled_check(SCHEMA)
_REFERENCE = engine.reference_check(SCHEMA)
_SHAPE = Shape(SCHEMA)

_KEYS = st.sampled_from(
    [
        *SCHEMA["properties"],
        "say",
        "torque",
        "left",
        "Left",
        "titel",
        "1",
        "01",
        "-1",
        str(10**20),
        "1.0",
        "a/b",
        "a~1b",
        "é",
    ]
)
_LEAVES = st.sampled_from(
    [None, True, False, 0, 1, -1, 41, 2.0, 2.5, 10**80, "", "x", "X", "12", "12\n", "drum", "drun", "é", "true"]
)
_VALUES = st.recursive(
    _LEAVES, lambda inner: st.lists(inner, max_size=3) | st.dictionaries(_KEYS, inner, max_size=4), max_leaves=12
)
_DATA = st.dictionaries(_KEYS, _VALUES, max_size=6)


def _faults(check: engine.Check, data: Any) -> set[tuple[engine.Path, str, str | None, str]]:
    """Return every fault as place, keyword, key name, and the subschema it was found in."""
    return {(fault.path, fault.keyword, fault.name, json.dumps(fault.schema, sort_keys=True)) for fault in check(data)}


@settings(deadline=None, derandomize=True, max_examples=500)
@given(_DATA)
def test_the_reference_library_sees_the_same_faults(data: dict[str, Any]) -> None:
    """jsonschema, the reference implementation in Python, gives the same places, keywords and subschemas."""
    assert _faults(_FAST, data) == _faults(_REFERENCE, data)


@settings(deadline=None, derandomize=True, max_examples=300)
@given(_DATA)
def test_checking_never_raises_and_hides_nothing(data: dict[str, Any]) -> None:
    """A document that either library refuses has findings, inside the text; one that both accept has none."""
    content = json.dumps(data, ensure_ascii=False).encode()
    document, findings = read_document("x.yaml", content)
    if document is None:
        assert findings
        return
    told = _SHAPE.check(document)
    assert bool(told) == bool(_faults(_REFERENCE, document.data))
    for finding in told:
        assert_inside(finding.span, shown_lines(content))
        assert finding.cure


_SCHEMAS = sorted(Path(__file__).parents[2].glob("schema/*.json"))


@pytest.mark.parametrize("path", _SCHEMAS, ids=lambda path: path.name)
def test_both_libraries_compile_each_schema(path: Path) -> None:
    """Each schema of the project is taken by both libraries, which see the same faults in an odd document."""
    schema = json.loads(path.read_text(encoding="utf-8"))
    odd = {"zzz": 1, **dict.fromkeys(schema.get("properties", {}), 1.5)}
    faults = _faults(engine.compiled_check(schema), odd)
    assert faults
    assert faults == _faults(engine.reference_check(schema), odd)


def test_the_fallback_gives_the_same_findings(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the fast library has no wheel, the reference library leads to the same findings."""
    document = _document("titel: 1\nbolts: {A: 1}\nsteps: [{}]\nform: |\n  12\n")
    fast = Shape(SCHEMA).check(document)

    def missing(_schema: dict[str, Any]) -> engine.Check:
        raise ImportError

    monkeypatch.setattr(engine, "_fast_check", missing)
    assert Shape(SCHEMA).check(document) == fast
    assert len(fast) == 6


def _document(text: str) -> Document:
    document, _ = read_document("x.yaml", text.encode())
    assert document is not None
    return document


def test_keys_that_spell_the_same_number_are_told_apart() -> None:
    """The fast library names both "1" and "01" by the number 1; the finding still stands at the right one."""
    document = _document('"1": text\n"01": 2\n')
    [finding] = Shape({"additionalProperties": {"type": "string"}}).check(document)
    assert (finding.span.line, finding.message) == (2, '"01" is a number (2), but text is wanted.')


def test_a_wrong_type_is_not_also_a_wrong_value() -> None:
    """A number where one of some words is wanted breaks two keywords and gives one finding."""
    [finding] = Shape({"properties": {"a": {"type": "string", "enum": ["b"]}}}).check(_document("a: 1"))
    assert finding.rule == "wrong-type"
