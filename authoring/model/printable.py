"""Which characters a booklet can print: those of the fonts that are shipped with it, and no other.

A machine's own fonts are never used, since the same library must give the same pages everywhere.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from authoring.diagnostics.diagnostic import Diagnostic, Severity
from authoring.source.document import Document

# Hexadecimal ranges of code points; a test holds them equal to what the fonts can draw.
RANGES = (
    "9-a d 20-7e a0-17f 218-21b 300-304 306-30c 323 326-328 394 3a9 3b1-3b3 3b8 3bb-3bc 3c0-3c1 3c3 3c6 3c9 "
    "1e80-1e85 1e9e 2007-200a 2010-2015 2018-201a 201c-201e 2020-2022 2026 202f-2030 2032-2033 2039-203a 2044 "
    "2060 2070 2074-2079 207b 2080-2089 20ac 2103 2116 2122 2190-2195 21d2 2205-2206 2212 221a 221e 2248 2260 "
    "2264-2265 22c5 2300 25a0-25a1 25b2-25b3 25b6 25bc 25c0 25cb 25cf 2610-2612 26a0 2713-2714 2717"
)


def _printed() -> Iterator[str]:
    for span in RANGES.split():
        first, _, last = span.partition("-")
        yield from map(chr, range(int(first, 16), int(last or first, 16) + 1))


PRINTED = frozenset(_printed())
"""Every character that can be printed."""


def unprinted(document: Document) -> Iterator[Diagnostic]:
    """Yield a finding for the first character of each text that no font of ours can draw; comments may hold any."""
    if PRINTED.issuperset(document.text):
        return
    for path, text in _texts(document.data, ()):
        sign = next((one for one in text if one not in PRINTED), None)
        if sign is not None:
            span = document.places.find(path, sign, 0) or document.places.value(path)
            message = (
                f'The fonts of the booklets have no "{sign}" (U+{ord(sign):04X}), so it would print as an empty box.'
            )
            cure = "Say it in letters and signs of European languages."
            yield Diagnostic("character-not-printed", Severity.ERROR, message, span, cure)


def _texts(data: Any, path: tuple[str | int, ...]) -> Iterator[tuple[tuple[str | int, ...], str]]:
    if isinstance(data, str):
        yield path, data
    elif isinstance(data, dict):
        for key, value in data.items():
            yield from _texts(value, (*path, key))
    elif isinstance(data, list):
        for place, value in enumerate(data):
            yield from _texts(value, (*path, place))
