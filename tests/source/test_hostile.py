from __future__ import annotations

import time

import pytest

from authoring.source.names import RULES
from authoring.source.reader import read_document
from tests.source.inside import assert_inside, shown_lines, text_of

# Each input with the rule it breaks first, the place (line, column), and the words underlined there.
HOSTILE: dict[str, tuple[str | bytes, str, int, int, str]] = {
    "alias bomb": (
        "a0: &a0 [x,x]\n" + "".join(f"a{i}: &a{i} [*a{i - 1},*a{i - 1}]\n" for i in range(1, 30)),
        "yaml-feature",
        1,
        5,
        "&a0",
    ),
    "merge key": ("a: {x: 1}\nb: {<<: {y: 2}}", "yaml-feature", 2, 5, "<<"),
    "alias of itself": ("a: &a [*a]", "yaml-feature", 1, 4, "&a"),
    "alias of nothing": ("a: *x", "yaml-feature", 1, 4, "*x"),
    "alias as key": ("*x : 1", "yaml-feature", 1, 1, "*x"),
    "anchor on a key": ("&k a: 1", "yaml-feature", 1, 1, "&k"),
    "flow lists 1,000 deep": ("a: " + "[" * 999 + "]" * 999, "nesting-limit", 1, 67, "["),
    "50,000 open brackets": ("[" * 50_000, "nesting-limit", 1, 1001, "["),
    "20,000 open groups": ("{a: " * 20_000, "nesting-limit", 1, 257, "{"),
    "list 5,000 deep": ("- " * 5000 + "x", "nesting-limit", 1, 129, "-"),
    "groups 400 deep": ("".join(" " * i + "a:\n" for i in range(400)), "nesting-limit", 65, 65, "a"),
    "3,000 question marks": ("? " * 3000, "yaml-feature", 1, 3, "?"),
    "python object tag": (
        "a: !!python/object/apply:os.system [id]",
        "yaml-feature",
        1,
        4,
        "!!python/object/apply:os.system",
    ),
    "python name tag": ("a: !!python/name:os.system", "yaml-feature", 1, 4, "!!python/name:os.system"),
    "local tag": ("a: !foo 1", "yaml-feature", 1, 4, "!foo"),
    "local tag on a group": ("a: !foo {b: 1}", "yaml-feature", 1, 4, "!foo"),
    "standard tag": ("a: !!str 1", "yaml-feature", 1, 4, "!!str"),
    "bare tag": ("a: ! x", "yaml-feature", 1, 4, "!"),
    "tag on a list": ("a: !!set [x]", "yaml-feature", 1, 4, "!!set"),
    "key twice": ("a: 1\na: 2", "duplicate-key", 2, 1, "a"),
    "key twice in brackets": ("a: {b: 1, b: 2}", "duplicate-key", 1, 11, "b"),
    "key twice, once quoted": ("a: 1\n'a': 2", "duplicate-key", 2, 1, "'a'"),
    "list as key": ("? [a]\n: 1", "yaml-feature", 1, 3, "["),
    "group as key": ("{a: 1}: 2", "yaml-feature", 1, 1, "{"),
    "empty key": (": 1", "yaml-syntax", 1, 1, ":"),
    "two documents": ("a: 1\n---\nb: 2", "yaml-feature", 2, 1, "---"),
    "text behind the document": ("a: 1\n...\nx", "yaml-syntax", 3, 1, "x"),
    "directive": ("%YAML 1.1\n---\na: no", "yaml-feature", 1, 1, "%YAML 1.1"),
    "unknown directive": ("%FOO\n---\na: 1", "yaml-syntax", 1, 4, "O"),
    "empty": ("", "empty-file", 1, 1, ""),
    "white space": (" \n\n ", "empty-file", 1, 1, ""),
    "comment only": ("# x", "empty-file", 1, 1, ""),
    "byte order mark only": (b"\xef\xbb\xbf", "empty-file", 1, 1, ""),
    "document mark only": ("---\n", "empty-file", 1, 1, ""),
    "one word": ("hello", "wrong-type", 1, 1, "hello"),
    "no space behind the colon": ("a:1", "wrong-type", 1, 1, "a:1"),
    "null": ("null", "wrong-type", 1, 1, "null"),
    "list": ("- a\n- b", "wrong-type", 1, 1, "- a"),
    "NUL": ("a: x\0", "forbidden-character", 1, 5, "\0"),
    "escape": ("a: \x1b[31mred", "forbidden-character", 1, 4, "\x1b"),
    "delete": ("a: b\nc: \x7f", "forbidden-character", 2, 4, "\x7f"),
    "C1 control": ("a: \x9b", "forbidden-character", 1, 4, "\x9b"),
    "form feed": ("a: 1\n\x0cb: 2", "forbidden-character", 2, 1, "\x0c"),
    "next line": ("a: x\u0085b: 2", "forbidden-character", 1, 5, "\u0085"),
    "line separator": ("a: x\u2028b: 2", "forbidden-character", 1, 5, "\u2028"),
    "paragraph separator": ("a: x\u2029b: 2", "forbidden-character", 1, 5, "\u2029"),
    "right-to-left override": ("a: 1\nb: 90\u202e mN", "forbidden-character", 2, 6, "\u202e"),
    "isolate": ("a: \u2066x\u2069", "forbidden-character", 1, 4, "\u2066"),
    "right-to-left mark": ("a: \u200f", "forbidden-character", 1, 4, "\u200f"),
    "Arabic letter mark": ("a: \u061c", "forbidden-character", 1, 4, "\u061c"),
    "zero width space": ("a\u200bb: 1", "forbidden-character", 1, 2, "\u200b"),
    "byte order mark inside": ("a: 1\n\ufeffb: 2", "forbidden-character", 2, 1, "\ufeff"),
    "two byte order marks": ("\ufeff\ufeffa: 1", "forbidden-character", 1, 1, "\ufeff"),
    "tag character": ("a: x\U000e0041", "forbidden-character", 1, 5, "\U000e0041"),
    "no character": ("a: \uffff", "forbidden-character", 1, 4, "\uffff"),
    "escaped NUL": ('a: "x\\0"', "forbidden-character", 1, 4, '"x\\0"'),
    "escaped override": ('a: "\\u202e"', "forbidden-character", 1, 4, '"\\u202e"'),
    "escaped override in a key": ('"\\u202e": 1', "forbidden-character", 1, 1, '"\\u202e"'),
    "escaped surrogate": ('a: "\\ud800"', "yaml-syntax", 1, 7, "d"),
    "surrogate as bytes": (b"a: \xed\xa0\x80", "not-utf8", 1, 4, "\ufffd"),
    "Latin-1": (b"a: 1\nb: \xe9", "not-utf8", 2, 4, "\ufffd"),
    "bad byte behind a byte order mark": (b"\xef\xbb\xbfa: \xff", "not-utf8", 1, 4, "\ufffd"),
    "cut off in a character": (b"a: \xe2\x82", "not-utf8", 1, 4, "\ufffd"),
    "overlong slash": (b"a: \xc0\xaf", "not-utf8", 1, 4, "\ufffd"),
    "UTF-16 with mark": ("a: é".encode("utf-16"), "not-utf8", 1, 1, ""),
    "UTF-16 without mark": ("a: é ".encode("utf-16-le"), "not-utf8", 1, 1, ""),
    "UTF-32": ("a: é".encode("utf-32"), "not-utf8", 1, 1, ""),
    "tab as indent": ("a:\n\tb: 1", "yaml-syntax", 2, 1, "\t"),
    "quote never closed": ('a: 1\nb: "x\nc: 2\n', "yaml-syntax", 2, 4, '"'),
    "single quote never closed": ("a: 'x\nb: 1", "yaml-syntax", 1, 4, "'"),
    "bracket never closed": ("a: [1,\nb: 2\n", "yaml-syntax", 2, 4, "2"),
    "bracket too many": ("a: ]", "yaml-syntax", 1, 4, "]"),
    "indent between two levels": ("a:\n   b: 1\n  c: 2", "yaml-syntax", 3, 3, "c"),
    "indent too deep": ("a: 1\n  b: 2", "yaml-syntax", 2, 3, "b"),
    "key beside a list": ("a:\n  - b\n c: d", "yaml-syntax", 3, 2, "c"),
    "list goes on as a group": ("- a\nb: 1", "yaml-syntax", 2, 1, "b"),
    "second colon": ("a: b: c", "yaml-syntax", 1, 5, ":"),
    "colon missing": ("a: 1\nfoo\nb: 2", "yaml-syntax", 2, 1, "f"),
    "text behind a quote": ("a: 'b' c", "yaml-syntax", 1, 8, "c"),
    "starts with at": ("a: @x", "yaml-syntax", 1, 4, "@"),
    "starts with a star": ("a: *", "yaml-syntax", 1, 4, "*"),
    "text behind a bar": ("a: |x\n b", "yaml-syntax", 1, 5, "x"),
    "unknown escape": ('a: "\\q"', "yaml-syntax", 1, 5, "\\"),
    "5,000 digits": ("a: " + "9" * 5000, "number-limit", 1, 4, "9" * 5000),
    "101 digits": ("a: " + "9" * 101, "number-limit", 1, 4, "9" * 101),
    "5,000 hex digits": ("a: 0x" + "f" * 5000, "number-limit", 1, 4, "0x" + "f" * 5000),
    "5,000 decimals": ("a: 1." + "0" * 5000, "number-limit", 1, 4, "1." + "0" * 5000),
    "number too large": ("a: 1e999", "number-limit", 1, 4, "1e999"),
    "number too small": ("a: -1e-999", "number-limit", 1, 4, "-1e-999"),
    "infinity": ("a: .inf", "number-limit", 1, 4, ".inf"),
    "minus infinity": ("a: [1, -.INF]", "number-limit", 1, 8, "-.INF"),
    "not a number": ("a: .NaN", "number-limit", 1, 4, ".NaN"),
    "30 MB": (b"a: " + b"x" * 30_000_000, "file-too-large", 1, 1, ""),
    "30 MB of newlines": (b"\n" * 30_000_000, "file-too-large", 1, 1, ""),
}


@pytest.mark.parametrize("name", HOSTILE)
def test_hostile_input_is_refused_at_its_place(name: str) -> None:
    """Each hostile file gives no document, and its first finding has the rule and underlines the words at fault."""
    source, rule, line, column, words = HOSTILE[name]
    content = source.encode() if isinstance(source, str) else source
    before = time.perf_counter()
    document, findings = read_document("procedures/x.yaml", content)
    took = time.perf_counter() - before
    lines = shown_lines(content[:100_000])
    assert document is None
    assert findings
    assert (findings[0].rule, findings[0].span.line, findings[0].span.column) == (rule, line, column)
    assert text_of(findings[0].span, lines) == words
    assert took < 1
    for finding in findings:
        assert finding.rule in RULES
        assert finding.cure
        assert_inside(finding.span, lines)


@pytest.mark.parametrize(
    ("source", "data"),
    [
        ("a: 1\r\nb: 2\r\n", {"a": 1, "b": 2}),
        ("\ufeffa: 1", {"a": 1}),
        ("---\na: 1\n...\n", {"a": 1}),
        ("a: no\nb: 12:30:45\nc: 2024-01-02\nd: 1_000", {"a": "no", "b": "12:30:45", "c": "2024-01-02", "d": "1_000"}),
        (
            "a: 0o17\nb: 0x1F\nc: 012\nd: -0\ne: 1e3\nf: .5\ng: 5.",
            {"a": 15, "b": 31, "c": 12, "d": 0, "e": 1e3, "f": 0.5, "g": 5.0},
        ),
        ("1: a\ntrue: b\nnull: c\n1.0: d", {"1": "a", "true": "b", "null": "c", "1.0": "d"}),
        ("a:\nb: ~\nc: ''\nd: null", {"a": None, "b": None, "c": "", "d": None}),
        ("a: 'true'\nb: \"1\"\nc: |\n  1\n", {"a": "true", "b": "1", "c": "1\n"}),
        ("'<<': 1", {"<<": 1}),
        ("a: " + "9" * 100, {"a": int("9" * 100)}),
        ("a: " + "[" * 63 + "]" * 63, None),
    ],
)
def test_plain_yaml_is_read(source: str, data: dict[str, object] | None) -> None:
    """What is well formed is read after the core schema of YAML 1.2, up to the limits themselves."""
    document, findings = read_document("x.yaml", source.encode())
    assert findings == []
    assert document is not None
    if data is not None:
        assert document.data == data
        assert [type(value) for value in document.data.values()] == [type(value) for value in data.values()]


@pytest.mark.parametrize(
    ("source", "told"),
    [
        ("a:\n  b: 1\n\tc: 2", "A tab stands"),
        ("a: - b", "A list begins on the line of its key."),
        ("a: {b:, c: 1}", "No value stands"),
        ("a: {b:}", "No value stands"),
        ("a: [x] y", "behind the end of the value"),
        ("a: }", "A value is missing"),
    ],
)
def test_a_slip_is_named_and_not_the_readers_own_words_repeated(source: str, told: str) -> None:
    """A slip that people make is told for what it is, with a cure of ours."""
    _, [finding] = read_document("x.yaml", source.encode())
    assert told in finding.message
    assert "YAML reader says" not in finding.cure


def test_a_stretch_of_invisible_characters_is_told_once() -> None:
    """A file that a full disk left as NULs is one fault, and so is each character that stands apart."""
    _, findings = read_document("x.yaml", b"a: b\0\0\0\0\nc: \0")
    assert [(one.span.line, one.span.column, one.span.end_column) for one in findings] == [(1, 5, 9), (2, 4, 5)]
    assert "U+0000 NUL, 4 times" in findings[0].message


def test_each_fault_is_told_up_to_twenty() -> None:
    """Faults that do not hide one another are told in one go, and a flood of them is cut off."""
    _, findings = read_document("x.yaml", b"a: &x 1\nb: .inf\na: 2\n")
    assert [finding.rule for finding in findings] == ["yaml-feature", "number-limit", "duplicate-key"]
    _, findings = read_document("x.yaml", b"".join(b"k%d: !t 1\n" % i for i in range(1000)))
    assert len(findings) == 20


def test_a_key_told_twice_names_the_first() -> None:
    """The second key carries the finding and the first one is its related place."""
    _, [finding] = read_document("x.yaml", b"b:\n  a: 1\n  a: 2\n")
    assert finding.span.line == 3
    assert [(other.span.line, other.span.column) for other in finding.related] == [(2, 3)]


def test_a_byte_order_mark_does_not_move_columns() -> None:
    """A file with the mark of UTF-8 has its columns counted from the first visible character."""
    document, _ = read_document("x.yaml", b"\xef\xbb\xbfname: 1")
    assert document is not None
    assert document.places.key(("name",)).column == 1
    assert document.places.value(("name",)).column == 7
