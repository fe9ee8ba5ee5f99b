"""The only door of the page engine: it hands out a booklet's own pictures and opens nothing."""

from __future__ import annotations

from collections.abc import Mapping

from weasyprint.urls import URLFetcher, URLFetcherResponse

from authoring.booklet.blocks import Asset
from authoring.render.paged import asset_url


class ClosedFetcher(URLFetcher):  # type: ignore[misc]  # the engine comes without types
    """Answer asset: addresses from a booklet and data: addresses from themselves; note and refuse all else.

    The engine swallows some refusals, so whoever uses this must look at `refused` afterwards.
    """

    def __init__(self, assets: Mapping[str, Asset]) -> None:
        super().__init__(allowed_protocols={"data"}, allow_redirects=False)
        self._assets = {asset_url(name): asset for name, asset in assets.items()}
        self.refused: list[str] = []

    def fetch(self, url: str, headers: dict[str, str] | None = None) -> URLFetcherResponse:
        """Return what `url` stands for, or refuse it as the engine expects: with an error it reports."""
        asset = self._assets.get(url)
        if asset is not None:
            return URLFetcherResponse(url, asset.content, {"Content-Type": asset.mime})
        if not url.startswith("data:"):
            self.refused.append(url)
        return super().fetch(url, headers)
