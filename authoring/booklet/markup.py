"""Prose to running words, with every name in brackets resolved."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from authoring.booklet.words import Amount, Blank, Inline, Link, Named, Paragraph, Passage, Pick, Text, Words
from authoring.model.brackets import BRACKET

Resolve = Callable[[str], Text]

# No sign of CommonMark, no list, no second line: such a text reads the same with and without the parser.
_PLAIN = re.compile(r"(?![-+ ]|[0-9]{1,9}[.)])(?:(?!\]\()[^*_\\&\s]| (?! |\Z))+")


def passage(text: str, resolve: Resolve) -> Passage:
    """Return the paragraphs and lists of a text; `resolve` turns a name in brackets into words."""
    if _PLAIN.fullmatch(text):
        return (Paragraph(tuple(_plainly(text, resolve))),)
    from authoring.booklet import commonmark  # noqa: PLC0415  # 40 ms that a booklet of plain sentences need not pay

    return commonmark.passage(text, resolve)


def _plainly(text: str, resolve: Resolve) -> Iterator[Inline]:
    done = 0
    for match in BRACKET.finditer(text):
        if match.start() > done:
            yield Words(text[done : match.start()])
        yield from resolve(match[1])
        done = match.end()
    if done < len(text):
        yield Words(text[done:])


def line(text: str, resolve: Resolve) -> Text:
    """Return a text as one run of words; paragraphs and list entries follow one another."""
    words: list[Inline] = []
    for block in passage(text, resolve):
        for run in (block.text,) if isinstance(block, Paragraph) else block.entries:
            words += [Words(" "), *run] if words else run
    return tuple(words)


def said(text: Text) -> str:
    """Return running text as plain characters, for a heading, a test or a bookmark."""
    return "".join(_plain(one) for one in text)


def _plain(one: Inline) -> str:
    match one:
        case Words(text=text) | Link(text=text) | Named(text=text):
            return text
        case Amount(first=first, second=second):
            return f"{first} ({second})" if second else first
        case Blank(unit=unit):
            return f"____ {unit}".rstrip()
        case Pick(text=text):
            return f"[ ] {text} "
