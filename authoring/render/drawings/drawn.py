"""A drawing as SVG, by what it shows."""

from __future__ import annotations

from markupsafe import Markup

from authoring.booklet.shapes import BoltPattern, Dial, Shape, Strip, ToScale, Windows
from authoring.booklet.step_parts import Drawing
from authoring.render.drawings import dial, strip, to_scale, windows
from authoring.render.drawings.bolt_pattern import bolt_pattern
from authoring.render.drawings.svg import number, picture

BESIDE = 100.0
"""Widest drawing in mm that leaves room for its title beside it."""
WIDE = 130.0
"""Widest drawing in mm of which the digits can be read on a telephone when all of it is shown."""


def drawn(drawing: Drawing) -> Markup:
    """Return a drawing as an SVG element that stands in a page."""
    shape = drawing.shape
    width, height = _size(shape)
    match shape:
        case BoltPattern():
            inside = bolt_pattern(shape)
        case Dial():
            inside = dial.dial(shape)
        case ToScale():
            inside = to_scale.to_scale(shape)
        case Windows():
            inside = windows.windows(shape)
        case Strip():
            inside = strip.strip(shape)
    return picture(width, height, drawing.alt, inside)


def drawn_wide(drawing: Drawing) -> bool:
    """Tell whether a drawing is too wide to be read on a telephone as a whole, so that it is moved sideways there."""
    return _size(drawing.shape)[0] > WIDE


def drawn_beside(drawing: Drawing) -> bool:
    """Tell whether the title stands beside the drawing rather than below it."""
    return _size(drawing.shape)[0] <= BESIDE


def drawn_width(drawing: Drawing) -> str:
    """Return the width of a drawing on paper in mm."""
    return number(_size(drawing.shape)[0])


def _size(shape: Shape) -> tuple[float, float]:
    match shape:
        case BoltPattern():
            return shape.width, shape.height
        case Dial():
            return dial.SIDE, dial.SIDE
        case ToScale():
            return to_scale.size_of(shape)
        case Windows():
            return windows.size_of(shape)
        case Strip():
            return strip.size_of(shape)
