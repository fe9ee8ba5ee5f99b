"""Lay out and write a PDF: the engine, shut off from the world, with everything it says taken as our fault."""

from __future__ import annotations

import gc
import logging
from collections.abc import Iterator, Mapping
from contextlib import contextmanager

from authoring.booklet.blocks import Asset
from authoring.render.closed_fetcher import ClosedFetcher
from authoring.render.landing import Spot, landing
from authoring.render.lean import weasyprint
from authoring.render.margin_artifacts import margin_artifacts

_VARIANT = "pdf/ua-1"


class PressFault(Exception):  # noqa: N818  # it says whose fault it is
    """The engine asked for something we did not give, or complained about our page: a bug of ours."""


class _Heard(logging.Handler):
    """Keep what the engine says."""

    def __init__(self) -> None:
        super().__init__(logging.WARNING)
        self.said: list[str] = []

    def emit(self, record: logging.LogRecord) -> None:
        self.said.append(record.getMessage())


@contextmanager
def _listening() -> Iterator[list[str]]:
    logger, heard = logging.getLogger("weasyprint"), _Heard()
    logger.addHandler(heard)
    try:
        yield heard.said
    finally:
        logger.removeHandler(heard)


@contextmanager
def _without_collector() -> Iterator[None]:
    """Hold the garbage collector off: a layout takes a sixth less time, and its rings are swept up once at the end."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()
        gc.collect()


def press(html: str, assets: Mapping[str, Asset]) -> tuple[bytes, dict[str, tuple[Spot, ...]]]:
    """Return a PDF/UA-1 of a paged document and where its elements landed in that very layout.

    Raises PressFault when the engine wanted an address outside the assets or had anything to complain about.
    """
    fetcher = ClosedFetcher(assets)
    with _listening() as said, _without_collector():
        document = weasyprint.HTML(string=html, url_fetcher=fetcher).render(pdf_variant=_VARIANT, pdf_tags=True)
        content = document.write_pdf(finisher=margin_artifacts, pdf_variant=_VARIANT, pdf_tags=True)
        places = landing(document)
    faults = [f"refused address: {url}" for url in fetcher.refused] + said
    if faults:
        raise PressFault("\n".join(faults))
    return bytes(content), places
