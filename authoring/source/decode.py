"""Bytes to text: size, encoding, and the characters that must not stand in a file that people review."""

from __future__ import annotations

import re
import unicodedata

from authoring.diagnostics.diagnostic import Diagnostic, Severity, Span
from authoring.source import names
from authoring.source.lines import Lines

MAX_BYTES = 1_000_000
_MOST_TOLD = 20

# What a reader of the file cannot see, or sees in another order than the compiler reads it:
# controls (Unicode category Cc but for tab and line ends), the bidirectional controls of UAX #9,
# zero-width signs, the line ends only some programs honour, tag characters and non-characters.
FORBIDDEN = re.compile(
    "[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u061c\u180e\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff\ufff9-\ufffb"
    "\ufffe\uffff\U000e0000-\U000e007f]"
)
# Kept as text, since it is looked for only where one of them was found.
_STRETCH = f"({FORBIDDEN.pattern})\\1*"
_UTF16 = (b"\xff\xfe", b"\xfe\xff")
_NAMES = {
    0x00: "NUL",
    0x7F: "DELETE",
    0x85: "NEXT LINE",
    0xFFFE: "BYTE ORDER MARK REVERSED",
    0xFFFF: "NOT A CHARACTER",
}


def decode(file: str, content: bytes) -> tuple[str, list[Diagnostic]]:
    """Return the text of a file and the findings that keep it from being read; never raises.

    A byte order mark of UTF-8 is skipped, and columns count from behind it.
    """
    if len(content) > MAX_BYTES:
        size = len(content) / 1e6
        return "", [_finding(names.FILE_TOO_LARGE, Span(file, 1, 1, 1, 1), *_too_large(size))]
    if _is_utf16(content):
        return "", [_finding(names.NOT_UTF8, Span(file, 1, 1, 1, 1), "This file is saved as UTF-16.", _SAVE)]
    try:
        text = content.decode("utf-8").removeprefix("\ufeff")
    except UnicodeDecodeError as error:
        return "", [_bad_byte(file, content, error.start)]
    return text, _forbidden(Lines(file, text)) if FORBIDDEN.search(text) else []


def as_shown(content: bytes) -> str:
    """Return a file that could not be read as far as an excerpt can show it; empty where it is no text."""
    if len(content) > MAX_BYTES or _is_utf16(content):
        return ""
    return content.decode("utf-8", "replace").removeprefix("\ufeff")


_SAVE = "In your editor, choose to save with the encoding UTF-8."


def _too_large(size: float) -> tuple[str, str]:
    return (
        f"This file is {size:.1f} MB large; at most {MAX_BYTES / 1e6:.0f} MB can be read.",
        "Check that it is the right file, and split it if it is.",
    )


def _is_utf16(content: bytes) -> bool:
    """Recognise UTF-16 by its mark, or by an ASCII character with a NUL beside it at the start."""
    first, second = (content[0], content[1]) if len(content) > 1 else (1, 1)
    return content.startswith(_UTF16) or ((first == 0) != (second == 0) and len(content) % 2 == 0)


def _bad_byte(file: str, content: bytes, start: int) -> Diagnostic:
    before = content[:start].decode("utf-8").removeprefix("\ufeff")
    line, column = Lines(file, before).at(len(before))
    byte = content[start]
    # A byte of an older encoding stands among ASCII; broken UTF-8 is followed by its own second byte.
    alone = content[start + 1 : start + 2].isascii()
    guess = bytes([byte]).decode("cp1252", errors="ignore") if alone else ""
    meant = f' It may be meant as "{guess}", saved by an older program.' if guess.isprintable() and guess else ""
    return _finding(
        names.NOT_UTF8,
        Span(file, line, column, line, column + 1),
        f"The byte {byte:02X} here is not UTF-8 text.{meant}",
        _SAVE,
    )


def _forbidden(lines: Lines) -> list[Diagnostic]:
    """Return a finding for each stretch of one forbidden character, up to a number that still can be read."""
    findings = []
    for found in re.finditer(_STRETCH, lines.text):
        span = lines.span(found.start(), found.end())
        many = len(found[0])
        times = f", {many} times" if many > 1 else ""
        message = f"An invisible character stands here: {character_name(found[1])}{times}."
        findings.append(
            _finding(names.FORBIDDEN_CHARACTER, span, message, "Delete it; retype the words around it if need be.")
        )
        if len(findings) == _MOST_TOLD:
            break
    return findings


def character_name(one: str) -> str:
    """Return the code and the standard's name of a character, as `U+202E RIGHT-TO-LEFT OVERRIDE`."""
    code = ord(one)
    name = unicodedata.name(one, "") or _NAMES.get(code, "control character")
    return f"U+{code:04X} {name}"


def _finding(rule: str, span: Span, message: str, cure: str) -> Diagnostic:
    return Diagnostic(rule, Severity.ERROR, message, span, cure)
