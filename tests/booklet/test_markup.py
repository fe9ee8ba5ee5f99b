"""CommonMark prose: what the language takes, and that the booklet and the rules see the same names."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from authoring.booklet import commonmark
from authoring.booklet.markup import line, passage, said
from authoring.booklet.words import Bullets, Link, Named, Paragraph, Text, Words
from authoring.model.brackets import brackets


def named(name: str) -> Text:
    """Stand in for a library that knows every name."""
    return (Named(f"<{name}>"),)


def test_a_name_in_brackets_becomes_its_words() -> None:
    """A bracket is resolved wherever it stands, also inside stress."""
    assert said(line("Remove **the [level-plug]** now.", named)) == "Remove the <level-plug> now."


def test_stress_and_lists_are_kept() -> None:
    """Paragraphs, lists and stress of CommonMark come through."""
    assert passage("One *two*.\n\n- a\n- b", named) == (
        Paragraph((Words("One "), Words("two", "emphasis"), Words("."))),
        Bullets(((Words("a"),), (Words("b"),))),
    )


def test_raw_html_and_headings_stay_plain_characters() -> None:
    """What is not part of the language is printed as it was typed."""
    assert said(line("# <b>x</b> `y` ![z](https://example.org/z.png)", named)).startswith("# <b>x</b> `y` !")


def test_only_links_to_the_web_are_links() -> None:
    """Another scheme than http, https and mailto stays text."""
    assert line("[a](https://example.org)", named) == (Link("a", "https://example.org"),)
    assert not any(isinstance(one, Link) for one in line("[a](javascript:alert)", named))


def test_an_escaped_bracket_is_no_name() -> None:
    """A backslash makes a bracket a plain character, for the booklet as for the rules."""
    assert said(line(r"a \[b] c", named)) == "a [b] c"
    assert brackets(r"a \[b] c") == ()


@settings(max_examples=300)
@given(st.text(alphabet="ab[]-* \n#.1\\", max_size=40))
def test_the_booklet_resolves_exactly_the_names_the_rules_see(text: str) -> None:
    """Whatever is typed, both readings of the bracket form find the same names, in the same order."""
    seen: list[str] = []

    def note(name: str) -> Text:
        seen.append(name)
        return (Words(name),)

    passage(text, note)
    assert seen == [one.name for one in brackets(text)]


@settings(max_examples=200)
@given(st.text(max_size=80))
def test_no_text_raises(text: str) -> None:
    """Arbitrary characters give words, never an exception."""
    said(line(text, named))


@settings(max_examples=500)
@given(st.text(alphabet="ab 1.[]()!-+<#`~:\\'&*_é", max_size=24))
def test_a_plain_sentence_reads_as_the_parser_reads_it(text: str) -> None:
    """The short way for plain sentences gives what the parser gives."""
    assert passage(text, named) == commonmark.passage(text, named)
