"""The values inside a drawing: numbers, lists of numbers, paths and transforms that any renderer can draw.

A browser skips what it cannot read; a page engine may refuse the whole picture, so such a value is refused first.
Grammar after SVG 2 (W3C Candidate Recommendation), chapters 8.5 (transform) and 9.3 (path data).
"""

from __future__ import annotations

import re

_NUMBER = r"[-+]?(?:[0-9]{1,12}(?:\.[0-9]{0,18})?|\.[0-9]{1,18})(?:[eE][-+]?[0-9]{1,2})?(?![0-9])"
_NUMBERS = re.compile(rf"\s*(?:{_NUMBER}(?:px|pt|pc|mm|cm|in|em|ex|%)?(?:\s*,\s*|\s+|\Z))*")
_PATH = re.compile(rf"\s*(?:[Mm](?:[MmZzLlHhVvCcSsQqTtAa\s,]|{_NUMBER})*)?")
_FUNCTION = re.compile(r"(?:matrix|translate|rotate|scale|skewX|skewY)\s*\(([^()]*)\)[\s,]*")

_LISTS = frozenset({"x", "y", "dx", "dy", "points"})
_SINGLE = frozenset({"x1", "y1", "x2", "y2", "cx", "cy", "fx", "fy", "offset", "refX", "refY"})
_POSITIVE = frozenset({"r", "rx", "ry", "fr", "stroke-width", "stroke-miterlimit"})
_TRANSFORMS = frozenset({"transform", "gradientTransform"})


def drawable(name: str, value: str) -> bool:
    """Tell whether an attribute's value is one that every renderer can draw; `auto` and `none` stand for no value."""
    if name == "d":
        return _PATH.fullmatch(value) is not None
    if name in _TRANSFORMS:
        left = _FUNCTION.sub("", value)
        return not left.strip() and all(_numbers(one) for one in _FUNCTION.findall(value))
    if name in _LISTS:
        return value.strip() == "auto" or not value.strip() or _numbers(value)
    if name in _SINGLE or name in _POSITIVE:
        single = _numbers(value) and len(value.split()) == 1 and "," not in value
        return value.strip() in {"auto", "none"} or (single and not (name in _POSITIVE and "-" in value.lstrip()[:1]))
    return True


def _numbers(value: str) -> bool:
    return bool(value.strip()) and _NUMBERS.fullmatch(value) is not None
