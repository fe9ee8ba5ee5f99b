"""Drawings in SVG: let in by a list of what a drawing needs, so that nothing else can come along.

Read with the standard library's expat without a tree; a DOCTYPE is refused before any entity is declared.
Element and attribute names after SVG 2 (W3C Candidate Recommendation), lengths after CSS Values 3 section 6.2.
"""

from __future__ import annotations

import math
import re
from xml.parsers import expat

from authoring.source.raster import BadImageError
from authoring.source.svg_values import drawable

MAX_DEPTH = 64
MAX_ELEMENTS = 50_000

_SVG = "http://www.w3.org/2000/svg"
_XLINK = "http://www.w3.org/1999/xlink"
_XML = "http://www.w3.org/XML/1998/namespace"


def _words(names: str) -> frozenset[str]:
    return frozenset(names.split())


_ELEMENTS = _words(
    "svg g defs title desc path rect circle ellipse line polyline polygon text tspan"
    " linearGradient radialGradient stop clipPath marker"
)
# Looks, allowed as attributes and inside a style attribute.
_LOOKS = _words(
    "color display fill fill-opacity fill-rule clip-path clip-rule font font-family font-size font-style"
    " font-variant font-weight font-stretch letter-spacing word-spacing line-height marker marker-start marker-mid"
    " marker-end opacity paint-order shape-rendering stop-color stop-opacity stroke stroke-dasharray"
    " stroke-dashoffset stroke-linecap stroke-linejoin stroke-miterlimit stroke-opacity stroke-width text-anchor"
    " text-align text-decoration text-rendering dominant-baseline alignment-baseline baseline-shift"
    " vector-effect visibility white-space writing-mode direction unicode-bidi overflow"
)
_ATTRIBUTES = _LOOKS | _words(
    "id style transform x y x1 y1 x2 y2 cx cy r rx ry fx fy fr dx dy rotate width height d points pathLength"
    " viewBox preserveAspectRatio version baseProfile textLength lengthAdjust offset gradientUnits"
    " gradientTransform spreadMethod clipPathUnits markerWidth markerHeight markerUnits refX refY orient"
    " role aria-label aria-hidden href"
)
_GRADIENTS = frozenset({"linearGradient", "radialGradient"})
# Referring from inside these could nest them in one another without end.
_REFERRED = frozenset({"clipPath", "marker"})
_LOCAL = re.compile(r"#[A-Za-z_][\w.:-]*")
_URL = re.compile(r"url\(([^()]*)\)", re.IGNORECASE)
_NO_NAME = re.compile(r"[^\w-]+")
_FUNCTIONS = frozenset(
    {"url", "rgb", "rgba", "hsl", "hsla", "matrix", "translate", "rotate", "scale", "skewx", "skewy"}
)
_LENGTH = re.compile(r"\s*\+?([0-9]*\.?[0-9]+(?:[eE][-+]?[0-9]+)?)(px|pt|pc|mm|cm|in)?\s*")
# CSS pixels a unit: an inch is 96 of them.
_PIXELS = {None: 1.0, "px": 1.0, "pt": 96 / 72, "pc": 16.0, "mm": 96 / 25.4, "cm": 96 / 2.54, "in": 96.0}
_LONGEST_NUMBER = 40
_MOST_PIXELS = 1_000_000


def svg_size(content: bytes) -> tuple[float, float]:
    """Return width and height of a safe drawing in CSS pixels, else of its view box.

    Raises:
        BadImageError: it is not well formed, holds anything but a drawing, or has no size.
    """
    drawing = _Drawing()
    parser = expat.ParserCreate("utf-8", namespace_separator=" ")
    parser.XmlDeclHandler = drawing.declaration
    parser.StartDoctypeDeclHandler = drawing.doctype
    parser.ProcessingInstructionHandler = drawing.instruction
    parser.StartElementHandler = drawing.start
    parser.EndElementHandler = drawing.end
    try:
        parser.Parse(content, True)  # noqa: FBT003 - expat takes no keyword here
    except expat.ExpatError as error:
        words = expat.ErrorString(error.code) or "not well formed"
        reason = f"This SVG is not well-formed XML: {words} in line {error.lineno}."
        raise BadImageError(reason) from None
    drawing.finish()
    return drawing.size


class _Drawing:
    """Takes expat's events of one file and raises BadImageError at the first thing a drawing does not need."""

    def __init__(self) -> None:
        self.size = (0.0, 0.0)
        self._open: list[str] = []
        self._count = 0
        self._borrowing: set[str] = set()
        self._borrowed: set[str] = set()

    def declaration(self, _version: str, encoding: str | None, _standalone: int) -> None:
        if encoding is not None and encoding.lower() not in {"utf-8", "us-ascii", "ascii"}:
            reason = f"This SVG is saved with the encoding {encoding}; save it as UTF-8."
            raise BadImageError(reason)

    def doctype(self, *_parts: object) -> None:
        reason = "This SVG has a DOCTYPE, which could bring in other files; delete that line."
        raise BadImageError(reason)

    def instruction(self, target: str, _data: str) -> None:
        reason = f"This SVG has a processing instruction (<?{target[:40]}), which could bring in other files."
        raise BadImageError(reason)

    def start(self, tag: str, attributes: dict[str, str]) -> None:
        space, _, name = tag.rpartition(" ")
        self._count += 1
        if not self._open and (space, name) != (_SVG, "svg"):
            reason = "This file is no SVG: its first element must be svg in the SVG namespace."
            raise BadImageError(reason)
        if space != _SVG or name not in _ELEMENTS or (name == "svg" and self._open):
            reason = f"This SVG holds <{name[:40]}>, which a drawing does not need; save it as plain SVG."
            raise BadImageError(reason)
        if len(self._open) >= MAX_DEPTH or self._count > MAX_ELEMENTS:
            reason = "This SVG is too large or too deeply nested; simplify it."
            raise BadImageError(reason)
        for key, value in attributes.items():
            self._attribute(name, key, value)
        if name in _GRADIENTS:
            self._gradient(attributes)
        if not self._open:
            self.size = _size(attributes)
        self._open.append(name)

    def end(self, _tag: str) -> None:
        self._open.pop()

    def finish(self) -> None:
        if self._borrowing & self._borrowed:
            reason = "A gradient of this SVG borrows from one that borrows itself; state its colours once."
            raise BadImageError(reason)

    def _attribute(self, element: str, key: str, value: str) -> None:
        space, _, name = key.rpartition(" ")
        if space == _XML and name in {"space", "lang"}:
            return
        is_link = name == "href" and space in {"", _XLINK}
        if not is_link and (space or name not in _ATTRIBUTES):
            reason = f'This SVG has the attribute "{name[:40]}", which a drawing does not need; save it as plain SVG.'
            raise BadImageError(reason)
        if is_link and (element not in _GRADIENTS or not _LOCAL.fullmatch(value)):
            reason = "This SVG refers to something outside of itself; only its own gradients can be referred to."
            raise BadImageError(reason)
        if not drawable(name, value):
            reason = f'The {name} of a part of this SVG cannot be drawn: "{value[:40]}"; save it as plain SVG.'
            raise BadImageError(reason)
        if name == "style":
            _style(value)
        if name not in {"aria-label", "id"}:
            self._references(element, value)

    def _references(self, element: str, value: str) -> None:
        called = _called(value)
        if any(sign in value for sign in ("\\", "@", "/*")) or not called <= _FUNCTIONS:
            reason = "This SVG has a style that could bring in other files; give looks as plain attributes."
            raise BadImageError(reason)
        if "url" not in called:
            return
        if "url" in _URL.sub("", value).lower() or not all(
            _LOCAL.fullmatch(hit.strip(" '\"")) for hit in _URL.findall(value)
        ):
            reason = "This SVG refers to something outside of itself; only its own parts can be referred to."
            raise BadImageError(reason)
        if _REFERRED & {element, *self._open}:
            reason = "A marker or clip path of this SVG refers to another part; draw it out."
            raise BadImageError(reason)

    def _gradient(self, attributes: dict[str, str]) -> None:
        target = attributes.get("href", attributes.get(f"{_XLINK} href"))
        if target is not None:
            self._borrowing.add(attributes.get("id", ""))
            self._borrowed.add(target.removeprefix("#"))


def _called(value: str) -> set[str]:
    """Return the names of the functions a value calls, in small letters."""
    return {_NO_NAME.split(before.rstrip())[-1].lower() for before in value.split("(")[:-1]}


def _style(value: str) -> None:
    for part in filter(None, (piece.strip() for piece in value.split(";"))):
        name, colon, _ = part.partition(":")
        if not colon or name.strip() not in _LOOKS:
            reason = f'This SVG has the style "{part[:40]}", which a drawing does not need; save it as plain SVG.'
            raise BadImageError(reason)


def _size(attributes: dict[str, str]) -> tuple[float, float]:
    width, height = (_length(attributes.get(name, "")) for name in ("width", "height"))
    box = _view_box(attributes["viewBox"]) if "viewBox" in attributes else None
    if width and height:
        return width, height
    if box is None:
        reason = "This SVG states no size; give it a viewBox, or a width and a height."
        raise BadImageError(reason)
    return box


def _view_box(value: str) -> tuple[float, float]:
    try:
        _, _, width, height = (float(part) for part in re.split(r"[\s,]+", value.strip()))
    except ValueError:
        width = height = 0.0
    if not (0 < width < _MOST_PIXELS and 0 < height < _MOST_PIXELS):
        reason = f"The viewBox of this SVG must be four numbers, the last two above zero and below {_MOST_PIXELS:.0f}."
        raise BadImageError(reason)
    return width, height


def _length(value: str) -> float:
    """Return a length in CSS pixels, or 0 for none, a share of the page, or what is no length."""
    found = _LENGTH.fullmatch(value[:_LONGEST_NUMBER])
    if found is None:
        return 0.0
    pixels = float(found[1]) * _PIXELS[found[2]]
    return pixels if math.isfinite(pixels) and pixels < _MOST_PIXELS else 0.0
