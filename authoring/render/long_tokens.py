"""Which tokens may break in the middle: addresses and numbers longer than any word, and nothing else.

The page engine breaks a word of ordinary length where it stands in an element that begins in the middle of a line,
as soon as every word may break. So the style sheet lets none break but those that are marked here.
"""

from __future__ import annotations

import html
import re

LONGEST_WORD = 24
"""Letters of the longest run that is still taken for a word; what is hyphenated breaks at its hyphens anyway."""

_TAG = re.compile(r"(<svg\b.*?</svg>|<[^>]*>)", re.DOTALL)
_TOKEN = re.compile(r"[^\s<>]+")
_BREAKS = re.compile(r"[-\u2010\u00ad\u200b]")
_BODY = re.compile(r"<body[^>]*>")


def with_long_tokens_marked(page: str) -> str:
    """Return an HTML page of ours with a span of class "long" around each token that no line may be able to hold.

    Every `<` and `>` of a text is escaped in it, so a tag ends at the first `>`. A drawing breaks its lines itself.
    """
    body = _BODY.search(page)
    begin = body.end() if body is not None else len(page)
    pieces = _TAG.split(page[begin:])
    shown = [piece if piece.startswith("<") else _TOKEN.sub(_marked, piece) for piece in pieces]
    return f"{page[:begin]}{''.join(shown)}"


def _marked(found: re.Match[str]) -> str:
    token = found[0]
    longest = max(len(run) for run in _BREAKS.split(html.unescape(token)))
    return f'<span class="long">{token}</span>' if longest > LONGEST_WORD else token
