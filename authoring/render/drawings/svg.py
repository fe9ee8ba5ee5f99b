"""The lines and letters of a drawing as SVG: in mm, black on white, in the booklet's own type.

Digits are at least 2.5 mm high, to be read at arm's length; the type's capitals and digits are 0.73 of its size.
"""

from __future__ import annotations

import math
from collections.abc import Iterable

from markupsafe import Markup, escape

INK = "#161616"
GREY = "#d9d9d9"
PAPER = "#fff"
THIN = 0.25
LINE = 0.5
SIZE = 3.5
"""Size of the type in mm: digits 2.55 mm high."""

_HEIGHT = 0.727  # of a digit, for a size of 1
_WIDTH = 0.6  # of a letter on average, bold ones and digits among them
_PLAIN = 0.55  # of a letter in a line of plain words
_ARROW = 2.2


def number(value: float) -> str:
    """Return a length with two decimals at most: a hundredth of a millimetre cannot be seen."""
    return f"{round(value, 2) + 0:g}"


def picture(width: float, height: float, alt: str, inside: Iterable[str]) -> Markup:
    """Return a whole drawing; `alt` is its name to whoever cannot see it."""
    box = f"0 0 {number(width)} {number(height)}"
    head = f'<svg role="img" width="{number(width)}mm" height="{number(height)}mm" viewBox="{box}"'
    page = f'{head} font-family="Inter"><title>{escape(alt)}</title>{"".join(inside)}</svg>'
    return Markup(page)  # noqa: S704  # built here of numbers, and every word in it went through escape


def wide(words: str, size: float = SIZE) -> float:
    """Return how wide words are at most, roughly: a little over what they take."""
    return len(words) * _WIDTH * size


def text(x: float, y: float, words: str, *, anchor: str = "start", size: float = SIZE, tone: str = "") -> str:
    """Return words in one line whose middle lies at the height `y`; `tone` is bold, or reversed: bold white."""
    weight = ' font-weight="700"' if tone else ""
    place = f'x="{number(x)}" y="{number(y + _HEIGHT * size / 2)}" text-anchor="{anchor}"'
    type_ = f'font-size="{number(size)}" fill="{PAPER if tone == "reversed" else INK}"{weight}'
    return f"<text {place} {type_}>{escape(words)}</text>"


def lines_of(words: str, width: float, size: float = SIZE) -> list[str]:
    """Return words in as many lines as a width asks for; a short text stays as it is."""
    room = max(int(width / (_PLAIN * size)), 1)
    if len(words) <= room:
        return [words]
    import textwrap  # noqa: PLC0415  # most texts of a drawing fit their line

    return textwrap.wrap(words, room)


def line(x1: float, y1: float, x2: float, y2: float, *, width: float = LINE, dashes: str = "") -> str:
    """Return a straight line; `dashes` as SVG writes them."""
    ends = f'x1="{number(x1)}" y1="{number(y1)}" x2="{number(x2)}" y2="{number(y2)}"'
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    return f'<line {ends} stroke="{INK}" stroke-width="{number(width)}"{dashed}/>'


def circle(x: float, y: float, radius: float, *, fill: str = "none", width: float = LINE, dashes: str = "") -> str:
    """Return a circle."""
    dashed = f' stroke-dasharray="{dashes}"' if dashes else ""
    round_ = f'cx="{number(x)}" cy="{number(y)}" r="{number(radius)}"'
    return f'<circle {round_} fill="{fill}" stroke="{INK}" stroke-width="{number(width)}"{dashed}/>'


def box(x: float, y: float, width: float, height: float, *, fill: str = "none", stroke: float = LINE) -> str:
    """Return a rectangle by its upper left corner."""
    drawn = f' stroke="{INK}" stroke-width="{number(stroke)}"' if stroke else ""
    size = f'x="{number(x)}" y="{number(y)}" width="{number(width)}" height="{number(height)}"'
    return f'<rect {size} fill="{fill}"{drawn}/>'


def shape(*points: tuple[float, float], fill: str = INK) -> str:
    """Return a filled outline through some points."""
    told = " ".join(f"{number(x)},{number(y)}" for x, y in points)
    return f'<polygon points="{told}" fill="{fill}"/>'


def arrow_head(x: float, y: float, degrees: float, length: float = _ARROW) -> str:
    """Return a slim arrow head with its tip at a point, pointing `degrees` clockwise from straight up."""
    turn = math.radians(degrees)
    along, across = (math.sin(turn), -math.cos(turn)), (math.cos(turn), math.sin(turn))
    base = (x - along[0] * length, y - along[1] * length)
    half = length * 0.2
    left = (base[0] - across[0] * half, base[1] - across[1] * half)
    right = (base[0] + across[0] * half, base[1] + across[1] * half)
    return shape((x, y), left, right)


def hatching(x: float, y: float, width: float, height: float, pitch: float = 2.0) -> Iterable[str]:
    """Yield the lines, rising to the right, that hatch a rectangle."""
    shift = pitch
    while shift < width + height:
        begin, end = max(shift - height, 0.0), min(shift, width)
        yield line(x + begin, y + min(shift, height), x + end, y + max(shift - width, 0.0), width=THIN)
        shift += pitch
