"""Values that do not fit, as people leave them: begun and not finished, or taken for something else by YAML."""

from __future__ import annotations

from typing import Any

import pytest

from authoring.source.reader import read_document
from authoring.source.shape import Shape

SCHEMA: dict[str, Any] = {
    "properties": {
        "text": {"type": "string", "pattern": r"\S"},
        "texts": {"type": "array", "items": {"type": "string"}},
    }
}


@pytest.mark.parametrize(
    ("source", "message", "cure"),
    [
        ("text:", '"text" is empty, but text is wanted.', "Write text behind the colon, or delete the key."),
        (
            "texts:\n  - a\n  -\n",
            'Entry 2 of "texts" is empty, but text is wanted.',
            "Write text behind the hyphen, or delete the entry.",
        ),
        (
            "text: [level-plug]",
            '"text" is a list, but text is wanted.',
            "Put the whole text in quotes, since it begins with a bracket.",
        ),
        ("text:\n  - level-plug", '"text" is a list, but text is wanted.', "Write text instead."),
        ('text: " "', '"text" is an empty text.', "Compare it with the others like it."),
    ],
)
def test_what_was_left_out_or_misread_is_told(source: str, message: str, cure: str) -> None:
    """An entry is told by its hyphen and a key by its colon, and a bracket that opens a text is known for one."""
    document, _ = read_document("x.yaml", source.encode())
    assert document is not None
    assert [(one.message, one.cure) for one in Shape(SCHEMA).check(document)] == [(message, cure)]
