from __future__ import annotations

from typing import Any

import ruamel.yaml
import yaml
from hypothesis import example, given, settings
from hypothesis import strategies as st

from authoring.source.document import Document, Where
from authoring.source.reader import read_document
from tests.source.inside import assert_inside, shown_lines, text_of

_settings = settings(deadline=None, derandomize=True, max_examples=300)

_SAMPLE = """\
# A made-up job on a made-up machine.
id: change-gear-oil
title: "Change the \\"gear\\" oil \\u2013 both axles"
steps:
  - id: drain
    say: >-
      Put the tray below
      and take the plug out.
    torque: 90 N·m
    parts: [washer, {part: plug, count: 1}]
  - id: fill
    say: |
      Fill to the lower edge.

      Wait.
    count: 12
    ratio: 2.50
    note: 'It''s full'
"""
_SIGNS = st.sampled_from(
    [
        *"\t\n\r :-?[]{},#&*!|>'\"%@`~<\\0",
        "\r\n",
        "<<: ",
        "- ",
        ": ",
        "---\n",
        "...",
        "&a ",
        "*a",
        "\0",
        "\u2028",
        "é",
        "💧",
    ]
)


def check(content: bytes) -> Document | None:
    """Read anything: it gives a document or findings, never both, with every place inside the text."""
    document, findings = read_document("x.yaml", content)
    assert (document is None) == bool(findings)
    lines = shown_lines(content)
    for finding in findings:
        assert_inside(finding.span, lines)
        for other in finding.related:
            assert_inside(other.span, lines)
        assert finding.message.endswith((".", "!", "?"))
        assert finding.cure
    if document is not None:
        for path in paths(document.data):
            for span in (document.places.value(path), document.places.key(path), Where(document, path).span):
                assert_inside(span, lines)
    return document


def paths(data: Any, above: tuple[str | int, ...] = ()) -> list[tuple[str | int, ...]]:
    """Return the path of every value below and of the value itself."""
    found = [above]
    if isinstance(data, dict):
        for key, value in data.items():
            found += paths(value, (*above, key))
    elif isinstance(data, list):
        for index, value in enumerate(data):
            found += paths(value, (*above, index))
    return found


@_settings
@given(st.binary(max_size=200))
@example(b"\xff")
@example(b"a: \xe2")
def test_any_bytes(content: bytes) -> None:
    """Arbitrary bytes never raise."""
    check(content)


@_settings
@given(st.text(max_size=200))
@example("a:\r\rb: @")
@example("\ufeff\r\n a: '")
@example("a: \r\n\r\n")
def test_any_text(text: str) -> None:
    """Arbitrary text never raises, and lines count alike for LF, CR LF and CR."""
    check(text.encode("utf-8", errors="surrogatepass"))


@_settings
@given(st.lists(_SIGNS, max_size=40))
def test_any_signs(signs: list[str]) -> None:
    """Text made of YAML's own signs, the densest in syntax, never raises."""
    check("".join(signs).encode())


@_settings
@given(
    st.lists(st.tuples(st.integers(0, len(_SAMPLE)), st.integers(0, 12), _SIGNS | st.just("")), min_size=1, max_size=4)
)
def test_a_damaged_file(edits: list[tuple[int, int, str]]) -> None:
    """A good file with stretches overwritten at random never raises."""
    text = _SAMPLE
    for start, length, sign in edits:
        text = text[:start] + sign + text[start + length :]
    check(text.encode())


_PLAIN = st.text(st.sampled_from("abcé ·:#-'\"\\{}[],&*?|\n\t0"), max_size=12)
_LEAVES = (
    st.none()
    | st.booleans()
    | st.integers(-(10**30), 10**30)
    | st.floats(-1e9, 1e9).map(lambda x: round(x, 3))
    | _PLAIN
)
_DATA = st.dictionaries(
    _PLAIN.filter(lambda key: key not in {"", "<<"}),
    st.recursive(
        _LEAVES, lambda inner: st.lists(inner, max_size=3) | st.dictionaries(_PLAIN.filter(bool), inner, max_size=3)
    ),
    min_size=1,
    max_size=4,
)


_LAYOUT = st.fixed_dictionaries(
    {
        "default_flow_style": st.sampled_from([None, True, False]),
        "default_style": st.sampled_from([None, '"', "'", "|", ">"]),
        "width": st.sampled_from([20, 80]),
    }
)


@_settings
@given(_DATA, _LAYOUT)
def test_what_another_program_writes_is_read_back(data: dict[str, Any], layout: dict[str, Any]) -> None:
    """What PyYAML's emitter writes in any style gives the same data, each scalar's place holding that scalar."""
    if layout["default_style"] is not None:
        # A style for all scalars makes PyYAML add tags to those that are no text.
        data = _as_text(data)
    text = yaml.safe_dump(data, allow_unicode=True, **layout)
    document = check(text.encode())
    assert document is not None, text
    assert document.data == data
    lines = shown_lines(text.encode())
    for path in paths(data):
        value = _at(data, path)
        if isinstance(value, dict | list) or value is None:
            continue
        span = document.places.value(path)
        # A block scalar of nothing but line ends is shown by its header alone.
        if span.line == span.end_line and text_of(span, lines)[:1] not in {"|", ">"}:
            alone, _ = read_document("y.yaml", b"v: " + text_of(span, lines).encode())
            assert alone is not None
            assert alone.data["v"] == value


def _as_text(data: Any) -> Any:
    if isinstance(data, dict):
        return {key: _as_text(value) for key, value in data.items()}
    if isinstance(data, list):
        return [_as_text(value) for value in data]
    return str(data)


def _at(data: Any, path: tuple[str | int, ...]) -> Any:
    for step in path:
        data = data[step]
    return data


def second_reader(text: str) -> Any:
    """Read with ruamel.yaml's safe pure reader, another implementation of YAML 1.2."""
    return ruamel.yaml.YAML(typ="safe", pure=True).load(text)


@_settings
@given(
    st.lists(st.tuples(st.integers(0, len(_SAMPLE)), st.integers(0, 3), st.sampled_from(" \n-'\":,[]x")), max_size=3)
)
def test_a_second_reader_agrees_on_what_is_accepted(edits: list[tuple[int, int, str]]) -> None:
    """Whatever stays well formed after small edits has the same data in ruamel.yaml's reader."""
    text = _SAMPLE
    for start, length, sign in edits:
        text = text[:start] + sign + text[start + length :]
    document = check(text.encode())
    if document is None:
        return
    try:
        other = second_reader(text)
    except ruamel.yaml.error.YAMLError:
        return
    assert _keys_as_text(other) == document.data


def _keys_as_text(data: Any) -> Any:
    """Ours keeps every key as the text it is; the other reader makes numbers, truth and null of some."""
    if isinstance(data, dict):
        return {("null" if key is None else str(key)): _keys_as_text(value) for key, value in data.items()}
    return [_keys_as_text(value) for value in data] if isinstance(data, list) else data
