"""Finding words of a value in the source text that spells it, whatever the style of the scalar."""

from __future__ import annotations

import re
from functools import lru_cache

# A gap between words stands as written, or as a line break with its indentation.
_FOLD = r"[ \t]*(?:\r\n|\n|\r)\s*"
# Inside double quotes a backslash at the end of a line joins the two lines without a space.
_JOIN = r"(?:\\(?:\r\n|\n|\r)[ \t]*)?"
_ESCAPES = {'"': r"\"", "\\": r"\\", "/": r"\/", "\t": r"\t", "\n": r"\n", " ": r"\ ", "\u00a0": r"\_"}
_PIECES = re.compile(r"\s+|\S+")
_LONGEST = 1000
_BMP = 0xFFFF
_BYTE = 0xFF


def find_in_scalar(source: str, style: str, needle: str, nth: int) -> tuple[int, int] | None:
    """Return start and end, inside `source`, of the nth `needle` from 0, or None when it is not there.

    Of a needle longer than a screen the beginning is found.
    `source` is the scalar as it stands in the file with its quotes or block header, `style` its opening sign.
    """
    needle = needle.strip()[:_LONGEST].strip()
    if not needle or nth < 0:
        return None
    hits = _hits(source, style, needle)
    return hits[nth] if nth < len(hits) else None


@lru_cache(maxsize=64)
def _hits(source: str, style: str, needle: str) -> tuple[tuple[int, int], ...]:
    """Return every place of the needle; kept, since a text full of the same words is asked for one after another."""
    start, end = _inside(source, style)
    return tuple(hit.span() for hit in _pattern(needle, style).finditer(source, start, end))


def _inside(source: str, style: str) -> tuple[int, int]:
    if style in {"'", '"'}:
        return 1, len(source) - 1
    if style in {"|", ">"}:
        header = re.search(r"\r\n|\n|\r", source)
        return (header.end() if header else len(source)), len(source)
    return 0, len(source)


def _pattern(needle: str, style: str) -> re.Pattern[str]:
    pieces = []
    for piece in _PIECES.findall(needle):
        if piece.isspace():
            pieces.append(_gap(piece, style))
        else:
            pieces.append((_JOIN if style == '"' else "").join(_character(one, style) for one in piece))
    return re.compile((_JOIN if style == '"' else "").join(pieces))


def _gap(piece: str, style: str) -> str:
    exact = "".join(_character(one, style) for one in piece)
    return rf"(?:{_FOLD}|{exact}|\s+)" if "\n" in piece else rf"(?:{_FOLD}|{exact})"


def _character(one: str, style: str) -> str:
    if style == "'":
        return "''" if one == "'" else re.escape(one)
    if style != '"':
        return re.escape(one)
    code = ord(one)
    forms = [re.escape(_ESCAPES[one])] if one in _ESCAPES else []
    if one not in {'"', "\\"}:
        forms.append(re.escape(one))
    if code <= _BYTE:
        forms.append(rf"\\x(?i:{code:02x})")
    if code <= _BMP:
        forms.append(rf"\\u(?i:{code:04x})")
    forms.append(rf"\\U(?i:{code:08x})")
    return f"(?:{'|'.join(forms)})"
