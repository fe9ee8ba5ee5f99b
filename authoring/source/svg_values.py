"""The values inside a drawing: numbers, lists of numbers, paths and transforms that any renderer can draw.

A browser skips what it cannot read; a page engine may refuse the whole picture, so such a value is refused first.
Grammar after SVG 2 (W3C Candidate Recommendation), chapters 8.5 (transform) and 9.3 (path data).
"""

from __future__ import annotations

import re

_NUMBER = r"[-+]?(?:[0-9]{1,12}(?:\.[0-9]{0,18})?|\.[0-9]{1,18})(?:[eE][-+]?[0-9]{1,2})?(?![0-9])"
_UNIT = r"(?:px|pt|pc|mm|cm|in|em|ex|%)?"
_SPLIT = r"(?:\s*,\s*|\s+)"
_ONE = re.compile(rf"\s*{_NUMBER}{_UNIT}\s*")
_PLUS = re.compile(r"\s*\+?(?![-+])" + _NUMBER + _UNIT + r"\s*")
_LIST = re.compile(rf"\s*(?:{_NUMBER}{_UNIT}(?:{_SPLIT}{_NUMBER}{_UNIT})*)?\s*")
_PATH = re.compile(rf"\s*(?:[Mm](?:[MmZzLlHhVvCcSsQqTtAa\s,]|{_NUMBER})*)?")
_TRANSFORM = re.compile(
    rf"\s*(?:(?:matrix|translate|rotate|scale|skewX|skewY)\s*\(\s*{_NUMBER}(?:{_SPLIT}{_NUMBER})*\s*\)[\s,]*)*"
)

_SHAPES: dict[str, re.Pattern[str]] = {
    "d": _PATH,
    "points": _LIST,
    "transform": _TRANSFORM,
    "gradientTransform": _TRANSFORM,
    **dict.fromkeys(("x", "y", "dx", "dy"), _LIST),
    **dict.fromkeys(("x1", "y1", "x2", "y2", "cx", "cy", "fx", "fy", "offset", "refX", "refY"), _ONE),
    **dict.fromkeys(("r", "rx", "ry", "fr", "stroke-width", "stroke-miterlimit"), _PLUS),
}


def drawable(name: str, value: str) -> bool:
    """Tell whether an attribute's value is one that every renderer can draw; `auto` and `none` stand for no value."""
    shape = _SHAPES.get(name)
    return shape is None or value.strip() in {"auto", "none"} or shape.fullmatch(value) is not None
