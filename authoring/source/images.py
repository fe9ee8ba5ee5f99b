"""Figures as the author gives them: recognised by their first bytes, measured, and safe to put into a booklet."""

from __future__ import annotations

from msgspec import Struct

from authoring.source.raster import BadImageError, jpeg_size, png_size
from authoring.source.svg import svg_size

MAX_BYTES = 10_000_000

_PNG = b"\x89PNG\r\n\x1a\n"
_JPEG = b"\xff\xd8\xff"


class Image(Struct, frozen=True):
    """One figure file.

    `width` and `height` are in pixels as it is shown: a photograph taken on its side is counted upright,
    a drawing has CSS pixels or the units of its view box.
    """

    file: str
    mime: str
    width: float
    height: float
    content: bytes


def read_image(file: str, content: bytes) -> tuple[Image | None, str]:
    """Read a PNG, JPEG or SVG file: the image and an empty text, or None and the reason; never raises."""
    if len(content) > MAX_BYTES:
        size = len(content) / 1e6
        return None, f"This image is {size:.1f} MB large; at most {MAX_BYTES / 1e6:.0f} MB can be used."
    try:
        mime, (width, height) = _measure(content)
    except BadImageError as error:
        return None, str(error)
    return Image(file, mime, width, height, content), ""


def _measure(content: bytes) -> tuple[str, tuple[float, float]]:
    if content.startswith(_PNG):
        return "image/png", png_size(content)
    if content.startswith(_JPEG):
        return "image/jpeg", jpeg_size(content)
    if content.lstrip(b"\xef\xbb\xbf \t\r\n").startswith(b"<"):
        return "image/svg+xml", svg_size(content)
    reason = "This file is no image that can be used: PNG, JPEG and SVG can."
    raise BadImageError(reason)
