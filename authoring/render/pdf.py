"""The edition for paper: a tagged PDF, with the page rules measured in the layout that was written."""

from __future__ import annotations

from authoring.booklet.blocks import Booklet
from authoring.render.page_groups import parted_groups
from authoring.render.page_rules import Parted, broken_rules, steps_on, stranded_headings
from authoring.render.paged import as_paged_html
from authoring.render.pango_missing import PangoMissing

__all__ = ["PangoMissing", "Parted", "as_pdf"]


def as_pdf(booklet: Booklet) -> tuple[bytes, list[Parted]]:
    """Return the booklet as PDF/UA-1 and every broken page rule.

    Each step is first kept whole on one page, which is more than the rules ask. Where that breaks a rule,
    the steps on those pages are set looser and the booklet is laid out again, until no step is left to loosen.
    A caller that gets a broken rule must not hand the pages out. Raises PangoMissing.
    """
    try:
        from authoring.render.press import press  # noqa: PLC0415  # a third of a second, and needs Pango
    except OSError as error:
        raise PangoMissing from error
    loose: frozenset[str] = frozenset()
    while True:
        content, places = press(as_paged_html(booklet, loose), booklet.assets)
        parted = broken_rules(booklet, places) + parted_groups(booklet, places)
        faulty = parted + stranded_headings(booklet, places)
        looser = loose | steps_on(booklet, places, {page for one in faulty for page in one.pages})
        if looser == loose:
            return content, parted
        loose = looser
