"""Write the page that the PDF is laid out from as one file, so that the page engine can be timed on it alone.

python -m tests.bench.paged_page LIBRARY NUMBER FILE
"""

from __future__ import annotations

import base64
import sys
from pathlib import Path

from authoring.cli.disk import read_library
from authoring.pipeline import check, compose
from authoring.render.paged import as_paged_html, asset_url


def paged_page(library: str, number: str) -> str:
    """Return the paged document of one booklet, with its pictures inside it instead of behind asset addresses."""
    booklet = compose(check(*read_library(library)), number, {})
    page = as_paged_html(booklet)
    for name, asset in booklet.assets.items():
        content = base64.b64encode(asset.content).decode()
        page = page.replace(f'"{asset_url(name)}"', f'"data:{asset.mime};base64,{content}"')
    return page


if __name__ == "__main__":
    Path(sys.argv[3]).write_text(paged_page(sys.argv[1], sys.argv[2]), encoding="utf-8")
