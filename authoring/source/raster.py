"""The size of PNG and JPEG pictures from their own structure, with every length checked against the file.

PNG after W3C PNG (Third Edition) sections 5 and 11.2.1, JPEG after ITU-T T.81 annex B, the orientation tag
after Exif 2.32 section 4.6.4.
"""

from __future__ import annotations

import struct
import zlib

MAX_PIXELS = 100_000_000

_PNG_DEPTHS = {0: {1, 2, 4, 8, 16}, 2: {8, 16}, 3: {1, 2, 4, 8}, 4: {8, 16}, 6: {8, 16}}
_IHDR_LENGTH = 13
# Frames that every browser shows: baseline, extended and progressive with Huffman coding.
_SHOWN_FRAMES = {0xC0, 0xC1, 0xC2}
_OTHER_FRAMES = {0xC3, 0xC5, 0xC6, 0xC7, 0xC9, 0xCA, 0xCB, 0xCD, 0xCE, 0xCF}
_ALONE = {0x01, *range(0xD0, 0xD9)}
_SCAN, _END, _EXIF = 0xDA, 0xD9, 0xE1
_MARK = 0xFF
_COMPONENTS = {1, 3}
_TURNED = {5, 6, 7, 8}
_ORIENTATION_TAG = 0x0112
_SHORT = 3
# Lengths in bytes: of a segment's own length, of a frame's fixed fields, of the header in front of the tags.
_LENGTH_FIELD, _FRAME_FIELDS, _TIFF_HEADER = 2, 6, 8
_TORN = "This image is cut off or damaged."


class BadImageError(ValueError):
    """A file that cannot be used as a figure; its text is a sentence that says why."""


def png_size(content: bytes) -> tuple[int, int]:
    """Return width and height of a whole PNG.

    Raises:
        BadImageError: a chunk is torn or its checksum wrong, or the header states an impossible picture.
    """
    size: tuple[int, int] | None = None
    at, has_data = 8, False
    while at + 12 <= len(content):
        length, kind = struct.unpack_from(">I4s", content, at)
        end = at + 8 + length
        if end + 4 > len(content) or zlib.crc32(content[at + 4 : end]) != int.from_bytes(content[end : end + 4]):
            raise BadImageError(_TORN)
        if (kind == b"IHDR") != (size is None):
            raise BadImageError(_TORN)
        if kind == b"IHDR":
            size = _png_header(content[at + 8 : end])
        has_data = has_data or kind == b"IDAT"
        if kind == b"IEND" and size is not None and has_data:
            return size
        at = end + 4
    raise BadImageError(_TORN)


def _png_header(header: bytes) -> tuple[int, int]:
    if len(header) != _IHDR_LENGTH:
        raise BadImageError(_TORN)
    width, height, depth, colour, packing, filtering, interlace = struct.unpack(">IIBBBBB", header)
    if depth not in _PNG_DEPTHS.get(colour, set()) or packing or filtering or interlace > 1:
        raise BadImageError(_TORN)
    return _checked(width, height)


def jpeg_size(content: bytes) -> tuple[int, int]:
    """Return width and height of a whole JPEG, as it is shown after its orientation tag.

    Raises:
        BadImageError: a segment is torn, or the picture is of a kind that browsers do not show.
    """
    size: tuple[int, int] | None = None
    turned = False
    at = 2
    while at + 4 <= len(content):
        if content[at] != _MARK:
            raise BadImageError(_TORN)
        mark = content[at + 1]
        if mark == _MARK or mark in _ALONE:
            at += 1 if mark == _MARK else 2
            continue
        length = int.from_bytes(content[at + 2 : at + 4])
        body = content[at + 4 : at + 2 + length]
        if len(body) != length - _LENGTH_FIELD:
            raise BadImageError(_TORN)
        if mark in _SHOWN_FRAMES | _OTHER_FRAMES:
            size = _jpeg_frame(mark, body)
        elif mark == _EXIF:
            turned = turned or _is_turned(body)
        elif mark == _SCAN:
            return _finished(content, at + 2 + length, size, turned=turned)
        at += 2 + length
    raise BadImageError(_TORN)


def _jpeg_frame(mark: int, body: bytes) -> tuple[int, int]:
    if mark in _OTHER_FRAMES:
        reason = "This JPEG is saved in a way that browsers do not show; save it as a standard JPEG."
        raise BadImageError(reason)
    if len(body) < _FRAME_FIELDS or len(body) != _FRAME_FIELDS + 3 * body[_FRAME_FIELDS - 1]:
        raise BadImageError(_TORN)
    _, height, width, components = struct.unpack_from(">BHHB", body)
    if components not in _COMPONENTS:
        reason = "This JPEG has the colours of a printing press (CMYK); save it in RGB colours."
        raise BadImageError(reason)
    return _checked(width, height)


def _finished(content: bytes, scan: int, size: tuple[int, int] | None, *, turned: bool) -> tuple[int, int]:
    if size is None or content.find(b"\xff\xd9", scan) < 0:
        raise BadImageError(_TORN)
    return (size[1], size[0]) if turned else size


def _is_turned(body: bytes) -> bool:
    """Tell from an Exif segment whether the picture is shown with its sides swapped; False when unreadable."""
    block = body[6:] if body.startswith(b"Exif\0\0") else b""
    order = {b"II*\0": "<", b"MM\0*": ">"}.get(block[:4])
    if order is None or len(block) < _TIFF_HEADER:
        return False
    (at,) = struct.unpack_from(f"{order}I", block, 4)
    if at + 2 > len(block):
        return False
    (count,) = struct.unpack_from(f"{order}H", block, at)
    for entry in range(at + 2, min(at + 2 + 12 * count, len(block) - 11), 12):
        tag, kind, number, value = struct.unpack_from(f"{order}HHIH", block, entry)
        if tag == _ORIENTATION_TAG:
            return kind == _SHORT and number == 1 and value in _TURNED
    return False


def _checked(width: int, height: int) -> tuple[int, int]:
    if width == 0 or height == 0:
        reason = "This image has no width or no height."
        raise BadImageError(reason)
    if width * height > MAX_PIXELS:
        reason = f"This image is {width} by {height} pixels; make it smaller, at most 100 million pixels."
        raise BadImageError(reason)
    return width, height
