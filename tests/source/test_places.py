from __future__ import annotations

import pytest

from authoring.diagnostics.diagnostic import Span
from authoring.source.document import Document, Where
from authoring.source.reader import read_document
from tests.source.inside import text_of

SOURCE = """\
id: change-oil  # told apart by this
torque:
  drain: 90 N·m
steps:
  - id: drain   # first
    say: >-
      Put the tray below and take
      the plug out, then the plug's washer.
    parts: [washer, {part: plug,
      count: 1}]
  - - inner
  - single: 'it''s the driver''s
      seat'
    double: "the \\"big\\" bolt, \\xe9t\\u00e9, joined w\\
      ord and
      fold"
    literal: |  # the plug
      line one
        the plug and the plug
      the
      end
    plain: some words that
      go on, and [on] (x+y)
    empty:
    number: 12
"""


@pytest.fixture(scope="module")
def document() -> Document:
    """Return the one sample of all styles."""
    found, findings = read_document("x.yaml", SOURCE.encode())
    assert findings == []
    assert found is not None
    return found


def _words(document: Document, where: Span) -> str:
    return text_of(where, document.text.split("\n"))


@pytest.mark.parametrize(
    ("path", "value", "key"),
    [
        ((), "id: change-oil", "id: change-oil"),
        (("id",), "change-oil", "id"),
        (("torque",), "drain: 90 N·m", "torque"),
        (("torque", "drain"), "90 N·m", "drain"),
        (("steps",), "- id: drain", "steps"),
        (("steps", 0), "id: drain", "id: drain"),
        (("steps", 0, "id"), "drain", "id"),
        (("steps", 0, "parts"), "[washer, {part: plug,\n      count: 1}]", "parts"),
        (("steps", 0, "parts", 0), "washer", "washer"),
        (("steps", 0, "parts", 1), "{part: plug,\n      count: 1}", "{part: plug,\n      count: 1}"),
        (("steps", 0, "parts", 1, "count"), "1", "count"),
        (("steps", 1), "- inner", "- inner"),
        (("steps", 1, 0), "inner", "inner"),
        (("steps", 2, "single"), "'it''s the driver''s\n      seat'", "single"),
        (("steps", 2, "empty"), "empty", "empty"),
        (("steps", 2, "number"), "12", "number"),
    ],
)
def test_places_underline_keys_and_values(
    document: Document, path: tuple[str | int, ...], value: str, key: str
) -> None:
    """A value's stretch is its own text, a block collection's its first line, a missing value's its key."""
    assert _words(document, document.places.value(path)) == value
    assert _words(document, document.places.key(path)) == key


def test_where_never_raises(document: Document) -> None:
    """A path that leads nowhere gives the nearest ancestor that is there."""
    step = Where(document, ("steps", 0))
    assert _words(document, step.span) == "id: drain"
    assert _words(document, step.of("id")) == "drain"
    assert _words(document, step.of("nothing", 3)) == "id: drain"
    assert _words(document, step.of("parts", 1, "nothing")).startswith("{part")
    assert _words(document, step.child("parts", 0).span) == "washer"
    assert _words(document, step.key("say")) == "say"
    assert _words(document, Where(document, ("torque",)).span) == "torque"
    assert _words(document, Where(document, ("torque",)).of("nothing")) == "torque"
    assert _words(document, Where(document, ("no", "way")).of("at", "all")) == "id: change-oil"
    assert _words(document, Where(document).span) == "id: change-oil"


@pytest.mark.parametrize(
    ("needle", "keys", "nth", "line", "words"),
    [
        ("tray below", (0, "say"), 0, 7, "tray below"),
        ("take the plug", (0, "say"), 0, 7, "take\n      the plug"),
        ("the plug", (0, "say"), 1, 8, "the plug"),
        ("it's the driver's seat", (2, "single"), 0, 12, "it''s the driver''s\n      seat"),
        ("driver's", (2, "single"), 0, 12, "driver''s"),
        ('"big" bolt', (2, "double"), 0, 14, '\\"big\\" bolt'),
        ("été", (2, "double"), 0, 14, "\\xe9t\\u00e9"),
        ("joined word and fold", (2, "double"), 0, 14, "joined w\\\n      ord and\n      fold"),
        ("the plug", (2, "literal"), 0, 19, "the plug"),
        ("the plug", (2, "literal"), 1, 19, "the plug"),
        ("the end", (2, "literal"), 0, 20, "the\n      end"),
        ("the\nend", (2, "literal"), 0, 20, "the\n      end"),
        ("words that go on", (2, "plain"), 0, 22, "words that\n      go on"),
        ("[on] (x+y)", (2, "plain"), 0, 23, "[on] (x+y)"),
        ("12", (2, "number"), 0, 25, "12"),
        ("washer", (0, "parts", 0), 0, 9, "washer"),
        ("N·m", (), 0, 5, "id: drain"),
    ],
)
def test_find_underlines_words_in_every_style(
    document: Document, needle: str, keys: tuple[str | int, ...], nth: int, line: int, words: str
) -> None:
    """Words of a value are found where its source spells them: quotes doubled, escaped, folded or broken over lines."""
    step = Where(document, ("steps", *keys[:1])) if keys else Where(document, ("steps", 0))
    span = step.find(needle, *keys[1:], nth=nth)
    assert (span.line, _words(document, span)) == (line, words)


@pytest.mark.parametrize(
    ("needle", "nth"), [("no such words", 0), ("the plug", 2), ("the plug", -1), ("", 0), ("  ", 0)]
)
def test_find_falls_back_to_the_whole_value(document: Document, needle: str, nth: int) -> None:
    """Words that are not there, or not that often, give the place of the whole value; so does a list."""
    step = Where(document, ("steps", 2))
    assert step.find(needle, "literal", nth=nth) == step.of("literal")
    assert step.find("x", "nothing") == step.span
    assert Where(document).find("id", "steps") == Where(document).of("steps")


def test_a_comment_is_no_part_of_a_first_line() -> None:
    """The first line of a group ends behind its key when the value stands below, whatever comment follows."""
    found, _ = read_document("x.yaml", b"a:  # why\n  b: 1\n")
    assert found is not None
    assert _words(found, found.places.value(())) == "a"
