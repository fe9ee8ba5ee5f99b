"""CommonMark prose, as far as a step may use it: paragraphs, lists, stress, links to the web, and names in brackets.

Raw HTML, headings, code, quotations and pictures are not part of the language; their signs stay plain characters.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from functools import cache

from markdown_it import MarkdownIt
from markdown_it.rules_inline import StateInline
from markdown_it.token import Token

from authoring.booklet.words import Bullets, Inline, Link, Paragraph, Passage, Text, Words
from authoring.model.brackets import BRACKET

Resolve = Callable[[str], Text]

_RULES = ("normalize", "block", "inline", "text_join", "list", "paragraph", "text", "newline", "escape", "emphasis")
_WEB = ("http://", "https://", "mailto:")


@cache
def _parser() -> MarkdownIt:
    parser = MarkdownIt("zero").enable([*_RULES, "link", "entity", "balance_pairs", "fragments_join"])
    parser.inline.ruler.before("link", "thing", _bracket)
    parser.validateLink = lambda url: url.lower().startswith(_WEB)  # type: ignore[method-assign]  # the documented hook
    return parser


def _bracket(state: StateInline, silent: bool) -> bool:  # noqa: FBT001  # the signature is the parser's
    match = BRACKET.match(state.src, state.pos)
    if match is None:
        return False
    if not silent:
        state.push("thing", "", 0).content = match[1]
    state.pos = match.end()
    return True


def passage(text: str, resolve: Resolve) -> Passage:
    """Return the paragraphs and lists of a text; `resolve` turns a name in brackets into words."""
    found: list[Paragraph | Bullets] = []
    entries: list[Text] = []
    depth = 0
    ordered = False
    for token in _parser().parse(text):
        if token.type in {"bullet_list_open", "ordered_list_open"}:
            ordered = token.type == "ordered_list_open" if depth == 0 else ordered
            depth += 1
        elif token.type in {"bullet_list_close", "ordered_list_close"}:
            depth -= 1
            if depth == 0:
                found.append(Bullets(tuple(entries), ordered))
                entries = []
        elif token.type == "inline":
            words = _inline(token.children or [], resolve)
            if depth:
                entries.append(words)
            else:
                found.append(Paragraph(words))
    return tuple(found)


def _inline(tokens: Sequence[Token], resolve: Resolve) -> Text:
    words: list[Inline] = []
    stress: list[str] = []
    address: str | None = None
    linked = ""
    for token in tokens:
        if token.type == "link_open":
            address, linked = str(token.attrGet("href")), ""
        elif token.type == "link_close":
            words.append(Link(linked, address or ""))
            address = None
        elif token.type in {"em_open", "strong_open"}:
            stress.append("strong" if token.type == "strong_open" else "emphasis")
        elif token.type in {"em_close", "strong_close"}:
            stress.pop()
        elif address is not None:
            linked += token.content or " "
        elif token.type == "thing":
            words += resolve(token.content)
        else:
            words.append(Words(token.content or " ", stress[-1] if stress else ""))
    return tuple(words)
