from __future__ import annotations

import io
import struct
import zlib
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from PIL import Image as Pillow
from PIL import ImageOps

from authoring.source.images import read_image

_settings = settings(deadline=None, derandomize=True, max_examples=200)


def _saved(kind: str, mode: str = "RGB", size: tuple[int, int] = (30, 20), **options: Any) -> bytes:
    buffer = io.BytesIO()
    Pillow.new(mode, size).save(buffer, kind, **options)
    return buffer.getvalue()


def _oriented(value: int) -> bytes:
    exif = Pillow.Exif()
    exif[0x0112] = value
    return _saved("JPEG", exif=exif)


def _svg(inside: str = "", attributes: str = 'viewBox="0 0 10 20"') -> bytes:
    spaces = 'xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink"'
    return f"<svg {spaces} {attributes}>{inside}</svg>".encode()


@pytest.mark.parametrize(
    "content",
    [
        _saved("PNG"),
        _saved("PNG", "L", (1, 7)),
        _saved("PNG", "P"),
        _saved("PNG", "1"),
        _saved("PNG", "RGBA", (400, 3)),
        _saved("PNG", "I;16"),
        _saved("JPEG"),
        _saved("JPEG", "L", (1, 1)),
        _saved("JPEG", progressive=True),
        _saved("JPEG", comment=b"\xff\xd9 no end"),
        *[_oriented(value) for value in range(1, 9)],
    ],
)
def test_sizes_agree_with_pillow(content: bytes) -> None:
    """Width and height are those that Pillow shows after turning the picture upright."""
    image, reason = read_image("figures/x", content)
    other = Pillow.open(io.BytesIO(content))
    assert reason == ""
    assert image is not None
    assert (image.width, image.height) == ImageOps.exif_transpose(other).size
    assert image.mime == Pillow.MIME[str(other.format)]
    assert image.content == content


@pytest.mark.parametrize(
    ("content", "size"),
    [
        (_svg(), (10, 20)),
        (_svg(attributes='viewBox="-5,-5 , 10.5 20"'), (10.5, 20)),
        (_svg(attributes='viewBox="0 0 1 1" width="1in" height="72pt"'), (96, 96)),
        (_svg(attributes='viewBox="0 0 1 1" width="100%" height="50%"'), (1, 1)),
        (_svg(attributes='width="25.4mm" height="6pc"'), (96, 96)),
        (_svg(attributes='width="30" height="2e1px"'), (30, 20)),
        (b"\xef\xbb\xbf<?xml version='1.0' encoding='UTF-8'?>\n<!-- drawn by hand -->" + _svg(), (10, 20)),
        (
            _svg(
                '<g style="fill: rgb(1, 2, 3); stroke:#000" transform="rotate(3) translate(1,2)"><path d="M0 0z"/></g>'
            ),
            (10, 20),
        ),
        (
            _svg(
                '<linearGradient id="g"><stop offset="0"/></linearGradient><g fill="url(#g)" style="fill:url(\'#g\')"/>'
            ),
            (10, 20),
        ),
        (_svg('<linearGradient id="a"/><radialGradient id="b" xlink:href="#a"/>'), (10, 20)),
        (
            _svg("<title>url(http://example.org) javascript: @import</title><text>&lt;script&gt; &#233;</text>"),
            (10, 20),
        ),
    ],
)
def test_drawings_are_measured(content: bytes, size: tuple[float, float]) -> None:
    """A plain drawing is let in with its size in CSS pixels (CSS Values 3 section 6.2), else its view box's."""
    image, reason = read_image("x.svg", content)
    assert reason == ""
    assert image is not None
    assert (image.width, image.height) == pytest.approx(size)
    assert image.mime == "image/svg+xml"


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (_svg("<script>alert(1)</script>"), "<script>"),
        (_svg("<foreignObject/>"), "<foreignObject>"),
        (_svg("<style>@import 'x';</style>"), "<style>"),
        (_svg("<image href='x.png'/>"), "<image>"),
        (_svg("<use href='#a'/>"), "<use>"),
        (_svg("<animate/>"), "<animate>"),
        (_svg("<a href='https://example.org'/>"), "<a>"),
        (_svg("<svg/>"), "<svg>"),
        (_svg("<x:script xmlns:x='http://www.w3.org/2000/svg'/>"), "<script>"),
        (_svg("<p xmlns='http://www.w3.org/1999/xhtml'/>"), "<p>"),
        (_svg("<g onclick='x()'/>"), '"onclick"'),
        (_svg(attributes="viewBox='0 0 1 1' onload='x()'"), '"onload"'),
        (_svg("<g x:href='#a' xmlns:x='http://example.org/'/>"), '"href"'),
        (_svg("<g class='warning'/>"), '"class"'),
        (_svg("<g href='#a'/>"), "outside"),
        (_svg("<linearGradient href='other.svg#a'/>"), "outside"),
        (_svg("<linearGradient xlink:href='data:image/png;base64,AA'/>"), "outside"),
        (_svg("<linearGradient id='a' href='#a'/>"), "borrows"),
        (_svg("<linearGradient id='a' href='#b'/><linearGradient id='b' href='#a'/>"), "borrows"),
        (_svg("<g fill='url(https://example.org/x#a)'/>"), "outside"),
        (_svg("<g fill='url(&quot;x.svg#a&quot;)'/>"), "outside"),
        (_svg("<g fill='URL(x.svg)'/>"), "outside"),
        (_svg("<g fill='url(data:x)'/>"), "outside"),
        (_svg("<g fill='url(#a'/>"), "outside"),
        (_svg("<g style='fill:url(//example.org)'/>"), "outside"),
        (_svg("<g style='background:url(#a)'/>"), '"background:url(#a)"'),
        (_svg("<g style='fill:u\\72l(x)'/>"), "could bring in"),
        (_svg("<g style='fill:/**/red'/>"), "could bring in"),
        (_svg("<g style='fill:image-set(&quot;x&quot;)'/>"), "could bring in"),
        (_svg("<g fill='var(--x)'/>"), "could bring in"),
        (_svg("<marker id='m'><path d='M0 0' marker-end='url(#m)'/></marker>"), "marker"),
        (_svg("<clipPath id='c'><g clip-path='url(#c)'/></clipPath>"), "clip path"),
        (_svg("<clipPath id='c' clip-path='url(#c)'/>"), "clip path"),
        (_svg("<g>" * 100 + "</g>" * 100), "nested"),
        (_svg("<g/>" * 60_000), "too large"),
        (_svg(attributes=""), "no size"),
        (_svg(attributes='width="10"'), "no size"),
        (_svg(attributes='width="1e999" height="1e999"'), "no size"),
        (_svg(attributes='viewBox="0 0 0 1"'), "viewBox"),
        (_svg(attributes='viewBox="0 0 nan 1"'), "viewBox"),
        (_svg(attributes='viewBox="0 0 1"'), "viewBox"),
        (b"<!DOCTYPE svg [<!ENTITY a 'x'>]>" + _svg("&a;"), "DOCTYPE"),
        (b"<!DOCTYPE svg SYSTEM 'file:///etc/passwd'>" + _svg(), "DOCTYPE"),
        (b"<?xml-stylesheet href='x.css'?>" + _svg(), "processing instruction"),
        (b"<?xml version='1.0' encoding='UTF-16'?>" + _svg(), "UTF-16"),
        (_svg("&nothing;"), "well-formed"),
        (_svg("<g>"), "well-formed"),
        (_svg("\xff").decode().encode("latin-1"), "well-formed"),
        (b"<svg/>", "no SVG"),
        (b"<html><svg/></html>", "no SVG"),
        (b"<", "well-formed"),
        (b"", "no image"),
        (b"GIF89a", "no image"),
        (b"a: 1", "no image"),
        (_saved("WEBP"), "no image"),
        (_saved("BMP"), "no image"),
        (_saved("TIFF"), "no image"),
        (_saved("JPEG", "CMYK"), "CMYK"),
        (_saved("PNG")[:-12], "damaged"),
        (_saved("PNG")[:40], "damaged"),
        (_saved("PNG")[:8], "damaged"),
        (_saved("JPEG")[:-2], "damaged"),
        (_saved("JPEG")[:100], "damaged"),
        (b"\xff\xd8\xff", "damaged"),
        (b"\xff\xd8\xff\xe0\xff\xff", "damaged"),
        (b"\xff\xd8\xff\xe0\x00\x00", "damaged"),
        (b"\xff\xd8" + b"\xff" * 1000, "damaged"),
        (_saved("JPEG").replace(b"\xff\xc0", b"\xff\xc9"), "browsers"),
        (_saved("JPEG").replace(b"\xff\xc0\x00\x11\x08\x00\x14", b"\xff\xc0\x00\x11\x08\x00\x00"), "no width"),
        (b"\x89PNG\r\n\x1a\n" + b"\0" * 10_000_000, "10.0 MB"),
    ],
)
def test_anything_else_is_refused_with_its_reason(content: bytes, words: str) -> None:
    """What could run, load or loop, is torn, or is no picture at all, is refused in words that name the cause."""
    image, reason = read_image("x", content)
    assert image is None
    assert words in reason
    assert reason.endswith(".")


def _png_of(width: int, height: int, depth: int = 8, colour: int = 2) -> bytes:
    def chunk(kind: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    header = struct.pack(">IIBBBBB", width, height, depth, colour, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", b"") + chunk(b"IEND", b"")


@pytest.mark.parametrize(
    ("content", "words"),
    [
        (_png_of(0, 1), "no width"),
        (_png_of(65_535, 65_535), "65535 by 65535"),
        (_png_of(1, 1, depth=3), "damaged"),
        (_png_of(1, 1, colour=5), "damaged"),
        (_png_of(1, 1)[:-1] + b"\0", "damaged"),
    ],
)
def test_impossible_headers_are_refused(content: bytes, words: str) -> None:
    """A header that states no size, too large a size or an unknown form is refused before anything is drawn."""
    assert words in read_image("x.png", content)[1]


@_settings
@given(
    st.sampled_from([_saved("PNG"), _oriented(6), _svg('<g fill="url(#a)"/>')]),
    st.lists(st.tuples(st.integers(0, 700), st.integers(0, 4), st.binary(max_size=4)), max_size=4),
)
def test_damaged_images_never_raise(content: bytes, edits: list[tuple[int, int, bytes]]) -> None:
    """Random damage gives an image or a reason, and never both or neither."""
    for start, length, new in edits:
        content = content[:start] + new + content[start + length :]
    image, reason = read_image("x", content)
    assert (image is None) == bool(reason)


@_settings
@given(st.sampled_from([b"", b"\x89PNG\r\n\x1a\n", b"\xff\xd8\xff", b"<"]), st.binary(max_size=200))
def test_arbitrary_bytes_never_raise(start: bytes, rest: bytes) -> None:
    """Arbitrary bytes behind any of the three beginnings give an image or a reason."""
    image, reason = read_image("x", start + rest)
    assert (image is None) == bool(reason)


@pytest.mark.parametrize(
    "part",
    [
        '<path d="M zz 1 ?"/>',
        '<path d="L 1 1"/>',
        '<path d="M1 1e999"/>',
        '<circle r="nan"/>',
        '<circle r="-3"/>',
        '<rect x="left"/>',
        '<g transform="rotate(x)"/>',
        '<g transform="scale(1e999)"/>',
        '<polyline points="1,2 3,?"/>',
        '<path stroke-width="-1"/>',
        '<line x1="1e400"/>',
    ],
)
def test_values_that_no_renderer_can_draw_are_refused(part: str) -> None:
    """A number that is none is told where the figure is named, not when the pages are set."""
    image, reason = read_image(
        "a.svg", f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">{part}</svg>'.encode()
    )
    assert image is None
    assert "cannot be drawn" in reason


@pytest.mark.parametrize(
    "part",
    [
        '<path d="M1,2L3 4h-1.5v.5c1 2,3 4 5 6s1-2-3-4q1 1 2 2t3 3a1 1 0 01 2 2z m1 1"/>',
        '<path d=""/>',
        '<path d="M10-5.2e1 3.4.5"/>',
        '<circle cx="50%" cy="1.5mm" r="3"/>',
        '<rect width="auto" height="9" rx=".5"/>',
        '<g transform="translate(1 2) rotate(-30, 4,5) scale(2)"/>',
        '<polygon points="1,2 3,4 5 6"/>',
        '<text x="1 2 3" dy="1em">a</text>',
        '<path stroke-width="1.5px" d="M0 0H9"/>',
    ],
)
def test_values_as_drawing_programs_write_them_pass(part: str) -> None:
    """Short forms of paths, units, lists and transforms are let in."""
    image, reason = read_image(
        "a.svg", f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9">{part}</svg>'.encode()
    )
    assert image is not None, reason
