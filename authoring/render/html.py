"""The edition for the screen: one file that asks nothing of anybody."""

from __future__ import annotations

from base64 import b64encode
from functools import cache

from authoring.booklet.blocks import Booklet
from authoring.render.signs import alert_address, tick_address
from authoring.render.typeset import HERE, set_page, sheet

_FACES = {
    "font-regular": "Inter-Regular",
    "font-bold": "Inter-Bold",
    "font-italic": "Inter-Italic",
    "font-signs": "DejaVuSans",
}


@cache
def _face(name: str) -> str:
    content = (HERE / "fonts" / "screen" / f"{name}.woff2").read_bytes()
    return f"data:font/woff2;base64,{b64encode(content).decode()}"


def as_html(booklet: Booklet) -> str:
    """Return the booklet as one self-contained HTML file: pictures and fonts inside, no script, no request.

    The same booklet gives the same text. A figure whose asset is missing is a KeyError, our own bug.
    """

    def picture(asset: str) -> str:
        found = booklet.assets[asset]
        return f"data:{found.mime};base64,{b64encode(found.content).decode()}"

    values = {mark: _face(name) for mark, name in _FACES.items()}
    values |= {
        "alert-light": alert_address("#fff", "#b01c1c"),
        "alert-dark": alert_address("#141414", "#f0f0f0"),
        "tick": tick_address(),
    }
    return set_page("screen.html", booklet, sheet("screen.css", booklet, values), picture)
