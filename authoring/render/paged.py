"""The edition for paper, as HTML: the same body under the paged style sheet, pictures fetched by name."""

from __future__ import annotations

from collections.abc import Set as AbstractSet

from authoring.booklet.blocks import Booklet
from authoring.render.long_tokens import with_long_tokens_marked
from authoring.render.signs import alert_address
from authoring.render.typeset import css_string, set_page, sheet


def asset_url(asset: str) -> str:
    """Return the address under which the closed fetcher serves an asset: its name in hex, safe in any URL."""
    return f"asset:{asset.encode().hex()}"


def as_paged_html(booklet: Booklet, loose: AbstractSet[str] = frozenset()) -> str:
    """Return the booklet as HTML for the page engine: fonts by family name, pictures as asset: addresses.

    A step is kept whole on one page unless its id is in `loose`; then what follows its torques and
    checkpoints may stand on the next.
    """
    values = {
        "head-left": css_string(f"{booklet.number}  {booklet.title}"),
        "head-right": css_string(f"Revision {booklet.revision}"),
        "fitment": css_string(booklet.fitment),
        "shop": css_string(booklet.shop),
        "trial": css_string(booklet.trial),
        "alert-light": alert_address("#fff", "#b01c1c"),
        "alert-dark": alert_address("#141414", "#f0f0f0"),
    }
    return with_long_tokens_marked(
        set_page("paged.html", booklet, sheet("paged.css", booklet, values), asset_url, loose)
    )
