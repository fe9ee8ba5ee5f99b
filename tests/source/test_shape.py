from __future__ import annotations

from typing import Any

import pytest

from authoring.diagnostics.diagnostic import Diagnostic
from authoring.source.reader import read_document
from authoring.source.shape import Shape
from tests.source.inside import text_of

SCHEMA: dict[str, Any] = {
    "$schema": "https://json-schema.org/draft/2020-12/schema",
    "type": "object",
    "additionalProperties": False,
    "required": ["id", "title"],
    "properties": {
        "id": {"$ref": "#/$defs/id"},
        "title": {"type": "string", "description": "What the reader sees on top", "minLength": 1},
        "brake": {"enum": ["drum", "disc"]},
        "count": {"type": "integer", "minimum": 1, "maximum": 40},
        "ratio": {"type": "number", "exclusiveMinimum": 0},
        "reused": {"type": "boolean"},
        "bolts": {
            "type": "object",
            "minProperties": 1,
            "propertyNames": {"pattern": "^[a-z-]+$", "x-wording": "A name is small letters and dashes"},
            "additionalProperties": {"$ref": "#/$defs/bolt"},
        },
        "steps": {
            "type": "array",
            "minItems": 1,
            "x-wording": "Write at least one step",
            "items": {"$ref": "#/$defs/step"},
        },
        "parts": {"type": ["string", "array"], "uniqueItems": True, "items": {"type": "string"}},
        "sides": {"type": "object", "propertyNames": {"enum": ["left", "right"]}, "maxProperties": 1},
        "form": {"type": "string", "pattern": "^[0-9]+$"},
    },
    "$defs": {
        "id": {
            "type": "string",
            "description": "the name others refer to it by",
            "pattern": "^[a-z][a-z0-9-]*$",
            "x-wording": "An id is small letters, digits and dashes",
        },
        "bolt": {
            "type": "object",
            "additionalProperties": False,
            "required": ["torque"],
            "properties": {"torque": {"type": "string"}, "count": {"type": "integer"}},
        },
        "step": {
            "type": "object",
            "additionalProperties": False,
            "required": ["say"],
            "properties": {"say": {"type": "string", "description": "The instruction"}, "id": {"$ref": "#/$defs/id"}},
        },
    },
}
_SHAPE = Shape(SCHEMA)
_HEAD = "id: x\ntitle: y\n"


def _findings(text: str) -> list[Diagnostic]:
    document, findings = read_document("x.yaml", text.encode())
    assert findings == []
    assert document is not None
    return _SHAPE.check(document)


@pytest.mark.parametrize(
    ("text", "rule", "words", "message", "cure"),
    [
        ("titel: y", "unknown-key", "titel", 'The key "titel" is unknown in this file.', 'Did you mean "title"?'),
        (
            "title: y\nzzz: 1",
            "unknown-key",
            "zzz",
            'The key "zzz" is unknown in this file.',
            "Keys known here: id, title, brake, count, ratio, reused, bolts, steps, parts, sides, form.",
        ),
        (
            "brake: drun",
            "wrong-value",
            "drun",
            '"drun" is not one of the values for "brake".',
            'Did you mean "drum"? Allowed are: drum, disc.',
        ),
        ("brake: 1", "wrong-value", "1", '"1" is not one of the values for "brake".', "Allowed are: drum, disc."),
        ("brake:\n  drum: 1", "wrong-value", "brake", '"brake" is a group of keys.', "Write one of: drum, disc."),
        ("brake:", "wrong-value", "brake", '"brake" is empty.', "Write one of: drum, disc."),
        (
            "count: two",
            "wrong-type",
            "two",
            '"count" is text ("two"), but a whole number is wanted.',
            "Write digits only.",
        ),
        (
            'count: "2"',
            "wrong-type",
            '"2"',
            '"count" is text ("2"), but a whole number is wanted.',
            "Take the quotes away.",
        ),
        (
            "count: 2.5",
            "wrong-type",
            "2.5",
            '"count" is a number (2.5), but a whole number is wanted.',
            "Write it without decimals.",
        ),
        ("count: 0", "wrong-value", "0", '"count" is 0, but must be at least 1.', "Write a number at least 1."),
        ("count: 41", "wrong-value", "41", '"count" is 41, but must be at most 40.', "Write a number at most 40."),
        ("ratio: 0", "wrong-value", "0", '"ratio" is 0, but must be more than 0.', "Write a number more than 0."),
        ("ratio: [1]", "wrong-type", "ratio", '"ratio" is a list, but a number is wanted.', "Write a number instead."),
        (
            "reused: yes",
            "wrong-type",
            "yes",
            '"reused" is text ("yes"), but true or false is wanted.',
            "Write true or false, without quotes.",
        ),
        ("form: 012", "wrong-type", "012", '"form" is a number (012), but text is wanted.', 'Put it in quotes: "012".'),
        (
            "form: true",
            "wrong-type",
            "true",
            '"form" is the sign for yes or no (true), but text is wanted.',
            'Put it in quotes: "true".',
        ),
        ("form: ~", "wrong-type", "~", '"form" is empty (~), but text is wanted.', 'Put it in quotes: "~".'),
        (
            "form:",
            "wrong-type",
            "form",
            '"form" is empty, but text is wanted.',
            "Write text behind the colon, or delete the key.",
        ),
        (
            "form: abc",
            "wrong-value",
            "abc",
            '"abc" is not written in the form that "form" needs.',
            "Compare it with the others like it.",
        ),
        (
            "form: |\n  12\n",
            "wrong-value",
            "|\n  12",
            '"12" is not written in the form that "form" needs.',
            "Compare it with the others like it.",
        ),
        (
            "bolts: {}",
            "wrong-value",
            "bolts",
            '"bolts" has no key, but needs at least 1.',
            'Add what is missing, or delete "bolts".',
        ),
        (
            "bolts:\n  A1: {torque: 9 N·m}",
            "wrong-value",
            "A1",
            '"A1" cannot be a key of "bolts".',
            "A name is small letters and dashes.",
        ),
        ("bolts:\n  plug: {count: 1}", "missing-key", "plug", '"torque" is missing in "plug".', 'Add "torque".'),
        (
            "bolts:\n  plug: 9 N·m",
            "wrong-type",
            "9 N·m",
            '"plug" is text ("9 N·m"), but a group of keys is wanted.',
            'Write lines of "key: value" below it, indented.',
        ),
        (
            "bolts:\n  plug: torque:9",
            "wrong-type",
            "torque:9",
            '"plug" is text ("torque:9"), but a group of keys is wanted.',
            'Write lines of "key: value" below it, indented. Put a space behind each colon.',
        ),
        (
            "steps: []",
            "wrong-value",
            "steps",
            '"steps" has no entry, but needs at least 1.',
            "Write at least one step.",
        ),
        (
            "steps: {say: x}",
            "wrong-type",
            "steps",
            '"steps" is a group of keys, but a list is wanted.',
            'Start each entry on a line of its own with "- ".',
        ),
        (
            "steps:\n  - id: a",
            "missing-key",
            "i",
            '"say" is missing in entry 1 of "steps".',
            'Add "say". The instruction.',
        ),
        (
            "steps:\n  - say: a\n  - id: A\n    say: b",
            "wrong-value",
            "A",
            '"A" is not written in the form that "id" needs.',
            "An id is small letters, digits and dashes.",
        ),
        (
            "parts: [a, b, a]",
            "wrong-value",
            "parts",
            '"parts" holds the same entry twice ("a").',
            "Keep one of the two.",
        ),
        (
            "parts: 3",
            "wrong-type",
            "3",
            '"parts" is a number (3), but text or a list is wanted.',
            'Put it in quotes: "3".',
        ),
        (
            "parts: [1]",
            "wrong-type",
            "1",
            'Entry 1 of "parts" is a number (1), but text is wanted.',
            'Put it in quotes: "1".',
        ),
        ("sides: {lefft: 1}", "unknown-key", "lefft", '"lefft" cannot be a key of "sides".', 'Did you mean "left"?'),
        (
            "sides: {left: 1, right: 2}",
            "wrong-value",
            "sides",
            '"sides" has 2 keys, but needs at most 1.',
            "Take some out, or split it.",
        ),
    ],
)
def test_each_fault_is_told_once_in_plain_words(text: str, rule: str, words: str, message: str, cure: str) -> None:
    """One fault gives one finding, whose stretch is the smallest that shows it and whose cure can be acted on."""
    text = text if "tit" in text else _HEAD + text
    text = text if "id: x" in text else "id: x\n" + text
    [finding] = _findings(text)
    assert (finding.rule, finding.message, finding.cure) == (rule, message, cure)
    assert text_of(finding.span, text.split("\n")) == words


def test_a_good_document_has_no_findings() -> None:
    """Nothing is said about a file that fits."""
    assert (
        _findings(_HEAD + "brake: disc\ncount: 3\nbolts:\n  a: {torque: 9 N·m}\nsteps:\n  - say: go\nparts: x\n") == []
    )


def test_missing_keys_stand_at_the_first_character_and_say_what_they_are_for() -> None:
    """Where no key leads to the object, its first character is marked; the purpose comes through a reference."""
    findings = _findings("# a comment\ncount: 1\n")
    assert [(one.rule, one.span.line, one.span.column, one.span.end_column) for one in findings] == [
        ("missing-key", 2, 1, 2)
    ] * 2
    assert [(one.message, one.cure) for one in findings] == [
        ('"id" is missing in this file.', 'Add "id". The name others refer to it by.'),
        ('"title" is missing in this file.', 'Add "title". What the reader sees on top.'),
    ]


def test_findings_are_sorted_by_place() -> None:
    """Whatever order the library gives, findings come from top to bottom."""
    findings = _findings("title: 1\nzzz: 1\nid: A\nsteps: []\n")
    assert [one.span.line for one in findings] == [1, 2, 3, 4]


def test_many_allowed_values_are_not_listed() -> None:
    """More than twelve names are no help to read."""
    shape = Shape({"properties": {"a": {"enum": [f"v{i}" for i in range(13)]}}})
    document, _ = read_document("x.yaml", b"a: qqq")
    assert document is not None
    assert [one.cure for one in shape.check(document)] == ["Check its spelling."]


def test_a_mistyped_key_is_not_also_missing() -> None:
    """A required key that is spelt wrong is told as the unknown key it is, and another missing one is still told."""
    assert [(one.rule, one.cure) for one in _findings("titel: y\n")] == [
        ("missing-key", 'Add "id". The name others refer to it by.'),
        ("unknown-key", 'Did you mean "title"?'),
    ]


def test_a_key_that_a_schema_bars_is_told() -> None:
    """A key whose schema is `false` cannot stand there at all."""
    document, _ = read_document("x.yaml", b"a: {b: 1}")
    assert document is not None
    [finding] = Shape({"properties": {"a": {"properties": {"b": False}}}}).check(document)
    assert (finding.rule, finding.message) == ("unknown-key", '"b" cannot stand in "a".')
