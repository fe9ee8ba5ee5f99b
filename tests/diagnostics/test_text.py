from __future__ import annotations

import re
import time
import unicodedata

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec.structs import replace

from authoring.diagnostics.diagnostic import Diagnostic, Related, Severity, Span
from authoring.diagnostics.excerpt import COLUMNS, excerpt, split_lines, visible, width
from authoring.diagnostics.text import as_text

_FILE = "procedures/gear-oil.yaml"


def _finding(line: int, column: int, end_line: int, end_column: int, *related: Related) -> Diagnostic:
    span = Span(_FILE, line, column, end_line, end_column)
    return Diagnostic("unknown-key", Severity.ERROR, 'The key "torqe" is unknown.', span, "Mend it.", related)


def _shown(text: str, finding: Diagnostic) -> str:
    return as_text([finding], {_FILE: text}, colour=False)


def test_a_finding_with_another_place() -> None:
    """A block has place, sentence, marked line, the other place with its label, the cure and the rule."""
    other = Related(Span(_FILE, 1, 1, 1, 7), "the right spelling stands here")
    text = "torque: 90 N·m\nother:\n  torqe: 90 N·m\n"
    assert _shown(text, _finding(3, 3, 3, 8, other)) == (
        "procedures/gear-oil.yaml:3:3  error\n"
        '  The key "torqe" is unknown.\n'
        "     3    torqe: 90 N·m\n"
        "          ~~~~~\n"
        "  See procedures/gear-oil.yaml:1:1, the right spelling stands here:\n"
        "     1  torque: 90 N·m\n"
        "        ~~~~~~\n"
        "  Cure: Mend it.\n"
        "  Rule: unknown-key\n"
        "\n"
    )


@pytest.mark.parametrize(
    ("line", "columns", "shown"),
    [
        ("a:\tb\tc", (4, 5), ["     1  a:    b    c", "              ~"]),
        ("\ta: b", (1, 2), ["     1      a: b", "        ~~~~"]),
        ("螺栓: 扳手", (5, 7), ["     1  螺栓: 扳手", "              ~~~~"]),
        ("e\u0301te\u0301: x", (8, 9), ["     1  e\u0301te\u0301: x", "             ~"]),
        ("a: \u202eb", (4, 5), ["     1  a: <U+202E>b", "           ~~~~~~~~"]),
        ("a: \x1b[31mb", (4, 5), ["     1  a: <U+001B>[31mb", "           ~~~~~~~~"]),
        ("a: b", (5, 5), ["     1  a: b", "            ~"]),
        ("a: b", (99, 99), ["     1  a: b", "            ~"]),
        ("", (1, 1), ["     1", "        ~"]),
    ],
)
def test_the_mark_stands_under_the_words(line: str, columns: tuple[int, int], shown: list[str]) -> None:
    """Tabs, wide signs, signs that sit on others and invisible ones keep the mark where the words are seen."""
    block = _shown(line, _finding(1, columns[0], 1, columns[1])).split("\n")
    assert block[2:4] == shown


def test_a_stretch_over_lines_shows_the_first() -> None:
    """What goes on below is marked to the end of its first line, and says how far it goes on."""
    text = "a: [x,\n  y,\n  z]\n"
    assert _shown(text, _finding(1, 4, 3, 5)).split("\n")[2:4] == ["     1  a: [x,", "           ~~~ and 2 lines more"]
    assert _shown(text, _finding(2, 3, 3, 5)).split("\n")[3] == "          ~~ and 1 line more"


def test_a_long_line_is_clipped_around_the_mark() -> None:
    """A line of 1,000 signs shows 100 columns of it with the words at fault among them."""
    text = "a: " + "x" * 500 + "FAULT" + "y" * 500
    line, mark = _shown(text, _finding(1, 504, 1, 509)).split("\n")[2:4]
    assert len(line) == COLUMNS
    assert line.startswith("     1  …xxx")
    assert line.endswith("yyy…")
    assert line[mark.index("~") : mark.rindex("~") + 1] == "FAULT"
    line, mark = _shown("z" * 1000, _finding(1, 999, 1, 1001)).split("\n")[2:4]
    assert line.startswith("     1  …zzz")
    assert line.endswith("zzz")
    assert len(line) == len(mark)


def test_no_source_no_excerpt() -> None:
    """A finding about a file without text, or beyond its end, is shown without a line."""
    finding = _finding(9, 1, 9, 2)
    assert as_text([finding], {}, colour=False).split("\n")[2] == "  Cure: Mend it."
    assert _shown("a: 1", finding).split("\n")[2] == "  Cure: Mend it."
    assert as_text([], {}, colour=True) == ""


def test_an_empty_cure_is_left_out() -> None:
    """A finding without a cure has no such line."""
    finding = Diagnostic("r", Severity.NOTE, "See.", Span("x", 1, 1, 1, 1))
    assert as_text([finding], {}, colour=False) == "x:1:1  note\n  See.\n  Rule: r\n\n"


def test_the_vehicles_stand_before_the_cure() -> None:
    """A finding about some vehicles names them in a line of its own, in which nothing unseen reaches the terminal."""
    finding = replace(_finding(1, 1, 1, 2), fitments="parking brake: disc\x1b brake")
    assert _shown("a: 1", finding).split("\n")[4:7] == [
        "  Only for vehicles with parking brake: disc<U+001B> brake.",
        "  Cure: Mend it.",
        "  Rule: unknown-key",
    ]


@pytest.mark.parametrize(
    ("severity", "code"), [(Severity.ERROR, "1;31"), (Severity.WARNING, "1;33"), (Severity.NOTE, "1;36")]
)
def test_colour_only_when_asked(severity: Severity, code: str) -> None:
    """Colours (ECMA-48 section 8.3.117) are put around the same text, and there are none without the asking."""
    finding = Diagnostic("r", severity, "See.", Span("x", 1, 1, 1, 2), "Mend.")
    plain = as_text([finding], {"x": "a"}, colour=False)
    coloured = as_text([finding], {"x": "a"}, colour=True)
    assert "\x1b" not in plain
    assert f"\x1b[{code}m{severity.value}\x1b[0m" in coloured
    assert f"\x1b[{code}m~\x1b[0m" in coloured
    assert re.sub("\x1b\\[[0-9;]*m", "", coloured) == plain


@pytest.mark.parametrize(
    ("text", "columns"),
    [("abc", 3), ("扳手", 4), ("Ａ", 2), ("e\u0301", 1), ("🔧", 2), ("½ ± ·", 5), ("가", 2), ("ｱ", 1), ("a\u20dd", 1)],
)
def test_width_follows_the_standard(text: str, columns: int) -> None:
    """Columns after Unicode Standard Annex #11, table of its section 5: W and F are two, marks none, others one."""
    assert width(text) == columns


def test_lines_are_counted_as_the_reader_counts_them() -> None:
    """LF, CR LF and CR end a line; a byte order mark is no part of the first; U+2028 ends none."""
    assert split_lines("\ufeffa\r\nb\rc\n\u2028d") == ["a", "b", "c", "\u2028d"]


def test_the_unseen_is_shown_by_code() -> None:
    """Controls, format signs and surrogates of a file's name stand as their code; letters stay."""
    assert visible("a\x00\x1b\u200b\udc80é") == "a<U+0000><U+001B><U+200B><U+DC80>é"


_NUMBERS = st.integers(1, 200)


@settings(deadline=None, derandomize=True, max_examples=300)
@given(st.text(max_size=300), _NUMBERS, _NUMBERS, st.integers(0, 3), _NUMBERS, st.integers(20, 100))
def test_any_line_fits_its_room(text: str, line: int, column: int, more: int, end_column: int, room: int) -> None:
    """Whatever the line, excerpt and mark fit the room and hold nothing a terminal would act on."""
    lines = split_lines(text)
    line = 1 + line % len(lines)
    shown = excerpt(lines, Span("x", line, column, line + more, end_column), room)
    assert shown is not None
    assert width(shown.line) <= room
    assert len(shown.mark) <= room + 1
    assert shown.mark.strip().startswith("~")
    assert not any(unicodedata.category(one) in {"Cc", "Cf", "Cs"} for one in shown.line)


def test_a_line_as_long_as_a_file_costs_no_more_than_another() -> None:
    """Of a line of a million characters only what stands near the words at fault is looked at."""
    line = "ab " * 300_000 + "xyz" + " cd" * 30_000
    column = line.index("xyz") + 1
    begun = time.perf_counter()
    text = as_text([_finding(1, column, 1, column + 3)] * 200, {_FILE: line}, colour=False)
    assert time.perf_counter() - begun < 2
    shown, mark = text.splitlines()[2:4]
    assert shown[mark.index("~") : mark.rindex("~") + 1] == "xyz"
    assert shown.lstrip(" 1").startswith("…")
    assert shown.endswith("…")
    assert len(shown) <= 100
