"""Where everything landed: the boxes of a finished layout, by the id of their element."""

from __future__ import annotations

from typing import Any

from msgspec import Struct


class Spot(Struct, frozen=True):
    """One piece of an element on one page: page from 1, top and bottom edge in CSS px, and the page's own end.

    `begin` is where the page's own room begins.

    An element cut in two has two spots.
    """

    page: int
    top: float
    bottom: float
    limit: float
    begin: float = 0.0


def landing(document: Any) -> dict[str, tuple[Spot, ...]]:
    """Walk the boxes of a laid-out document and return the spots of every element that has an id."""
    found: dict[str, dict[int, Spot]] = {}
    for number, page in enumerate(document.pages, start=1):
        # The public list of anchors knows only where an element begins, not whether it goes on overleaf.
        whole = page._page_box  # noqa: SLF001  # as said above; the engine's major version is pinned for this
        begin = whole.content_box_y()
        limit = begin + whole.height
        waiting = list(whole.children)
        while waiting:
            box = waiting.pop()
            waiting.extend(getattr(box, "children", ()))
            element = getattr(box, "element", None)
            if element is None or element.get("id") is None or box.height == "auto":
                continue
            if box.element_tag != element.tag or not hasattr(box, "border_height"):
                continue
            place = element.get("id")
            top = box.border_box_y()
            found.setdefault(place, {}).setdefault(number, Spot(number, top, top + box.border_height(), limit, begin))
    return {place: tuple(spots.values()) for place, spots in found.items()}
