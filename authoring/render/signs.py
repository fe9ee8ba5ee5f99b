"""Safety signs of our own drawing: the standard's shapes (triangle warns, disc demands), legible in grey.

A sign repeats what the words beside it say, so outputs set it as decoration; the words carry the meaning.
"""

from __future__ import annotations

from base64 import b64encode

_YELLOW = "#f9b000"
_BLUE = "#005387"
_BLACK = "#141414"

_TRIANGLE = (
    f'<path d="M50 9 95 86H5Z" fill="{_YELLOW}" stroke="{_BLACK}" stroke-width="9" stroke-linejoin="round"/>'
    f'<path d="M50 9 95 86H5Z" fill="{_YELLOW}"/>'
)
_DISC = f'<circle cx="50" cy="48" r="46" fill="{_BLUE}"/>'


def _lines(path: str, width: float = 5, colour: str = _BLACK) -> str:
    return (
        f'<path d="{path}" fill="none" stroke="{colour}" stroke-width="{width}" '
        'stroke-linecap="round" stroke-linejoin="round"/>'
    )


def _solid(path: str, colour: str = _BLACK) -> str:
    return f'<path d="{path}" fill="{colour}"/>'


def _dot(across: float, down: float, radius: float, colour: str = _BLACK) -> str:
    return f'<circle cx="{across}" cy="{down}" r="{radius}" fill="{colour}"/>'


def _gear(across: float, down: float, radius: float, teeth: int) -> str:
    """Return a toothed ring: the dashes of a thick circle are the teeth."""
    tooth = 3.14159265 * 2 * (radius + 2.5) / teeth / 2
    return (
        f'<circle cx="{across}" cy="{down}" r="{radius + 2.5}" fill="none" stroke="{_BLACK}" stroke-width="5" '
        f'stroke-dasharray="{tooth:.3f}"/>'
        f'<circle cx="{across}" cy="{down}" r="{radius - 1.5}" fill="none" stroke="{_BLACK}" stroke-width="5"/>'
    )


_DRAWN = {
    "general": _TRIANGLE + _solid("M45 33h10l-2.2 27h-5.6Z") + _dot(50, 71, 5.5),
    "hot-surface": _TRIANGLE
    + _lines("M28 77H72", 6)
    + _lines("M38 67c-5-6 5-9 0-15M50 67c-6-8 6-13 0-24M62 67c-5-6 5-9 0-15"),
    "crushing": _TRIANGLE
    + _solid("M36 34h28v8H36Z")
    + _solid("M46 42h8v6h6L50 58 40 48h6Z")
    + _solid("M24 72h52v8H24Z")
    + _lines("M30 66h26M30 61h14", 5)
    + _dot(64, 65, 4.5),
    "slipping": _TRIANGLE
    + _dot(43, 36, 5.5)
    + _lines("M45 46 53 60 43 72M53 60 64 65 70 59M46 48 36 55M47 50 58 47", 5)
    + _lines("M24 79H60", 5)
    + _dot(70, 77, 3.5),
    "electricity": _TRIANGLE + _solid("M50 27 36 56h10l-5 14-4-2 3 13 9-8-4-1 11-25H47l12-20Z"),
    "raised-load": _TRIANGLE
    + _solid("M38 40h16l8 8h6v10H32V48h6Z")
    + _dot(40, 60, 5.5)
    + _dot(60, 60, 5.5)
    + _solid("M50 62 56 77H44Z")
    + _lines("M26 79H74", 5),
    "moving-parts": _TRIANGLE + _gear(43, 54, 9, 8) + _gear(60, 69, 7, 7),
    "pressure": _TRIANGLE
    + f'<circle cx="50" cy="57" r="15" fill="none" stroke="{_BLACK}" stroke-width="5"/>'
    + _lines("M50 57 58 49", 5)
    + _dot(50, 57, 3.5)
    + _solid("M45 72h10v9H45Z"),
    "eye-protection": _DISC
    + _solid("M50 16c19 0 27 13 27 28 0 22-12 36-27 36S23 66 23 44c0-15 8-28 27-28Z", "#fff")
    + _solid("M22 40h56v6h-3c0 9-4 13-12 13-7 0-10-4-13-9-3 5-6 9-13 9-8 0-12-4-12-13h-3Z", _BLACK)
    + _solid("M31 45h13c0 6-2 9-7 9-4 0-6-3-6-9ZM56 45h13c0 6-2 9-6 9-5 0-7-3-7-9Z", "#fff"),
    "gloves": _DISC
    + _lines("M36 50V27M45 48V19M54 48V19M63 50V26", 7.5, "#fff")
    + _lines("M71 55 63 66", 8, "#fff")
    + _solid("M32 46h35v10c0 9-5 14-9 16H41c-5-3-9-8-9-15Z", "#fff")
    + _solid("M39 75h21v9H39Z", "#fff"),
}

NAMES = tuple(sorted(_DRAWN))

_TICK = '<path d="M18 52 42 76 84 22" fill="none" stroke="#141414" stroke-width="13"/>'
"""The mark in a ticked box."""


def _picture(inside: str) -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg" width="100" height="96" viewBox="0 0 100 96">{inside}</svg>'


def _address(svg: str) -> str:
    return "data:image/svg+xml;base64," + b64encode(svg.encode()).decode()


def sign_svg(name: str) -> str:
    """Return the drawing called `name` as a whole SVG document; a name not in `NAMES` is a KeyError, our bug."""
    return _picture(_DRAWN[name])


def sign_address(name: str) -> str:
    """Return the drawing as a data: URL."""
    return _address(sign_svg(name))


def alert_address(fill: str, mark: str) -> str:
    """Return the safety alert symbol for a signal-word bar, in two colours, as a data: URL."""
    triangle = f'<path d="M50 8 94 84H6Z" fill="{fill}" stroke="{fill}" stroke-width="12" stroke-linejoin="round"/>'
    return _address(_picture(triangle + _solid("M44 30h12l-3 30h-6Z", mark) + _dot(50, 72, 6.5, mark)))


def tick_address() -> str:
    """Return the mark of a ticked box as a data: URL."""
    return _address(_picture(_TICK))
