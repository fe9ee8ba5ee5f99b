"""Checksums by which contents are told apart: BLAKE2b (RFC 7693), sixteen bytes of it."""

from __future__ import annotations

from collections.abc import Iterable

try:
    from _blake2 import blake2b  # the same without the ciphers that hashlib brings, which take longer than a check
except ImportError:
    from hashlib import blake2b

_SIZE = 16


def digest(*parts: bytes) -> bytes:
    """Return the checksum of some bytes, in which it is told where one part ends and the next begins."""
    one = blake2b(digest_size=_SIZE)
    for part in parts:
        if len(parts) > 1:
            one.update(len(part).to_bytes(8, "big"))
        one.update(part)
    return one.digest()


def digest_of(words: Iterable[str | bytes]) -> bytes:
    """Return the checksum of a list of texts and checksums, told apart by their ends."""
    return digest(*(word.encode("utf-8", "surrogateescape") if isinstance(word, str) else word for word in words), b"")
