"""The press: shut off from the world, from the machine's fonts, and heard when it complains."""

from __future__ import annotations

import gc
from pathlib import Path

import pytest

from authoring.booklet.blocks import Asset
from authoring.render.closed_fetcher import ClosedFetcher
from authoring.render.lean import weasyprint
from authoring.render.paged import asset_url
from authoring.render.press import PressFault, press
from tests.outside_checkers.program import output, program

pytestmark = pytest.mark.slow

OURS = {"Inter", "Inter-Bold", "Inter-Italic", "DejaVu-Sans"}


def test_fonts_of_the_machine_are_not_seen(tmp_path: Path) -> None:
    """A page that asks for other fonts, by name or by kind, is set in ours all the same."""
    asks = "".join(
        f"<p style='font-family: {family}'>Oil</p>"
        for family in ("serif", "monospace", "DejaVu Serif", "Liberation Mono", "Noto Serif", "Roboto")
    )
    path = tmp_path / "fonts.pdf"
    path.write_bytes(press(f'<html lang="en-GB"><head><title>t</title></head><body>{asks}</body></html>', {})[0])
    rows = output(program("pdffonts"), path).stdout.splitlines()[2:]
    assert rows
    assert {row.split()[0].partition("+")[2] for row in rows} <= OURS


@pytest.mark.parametrize(
    "wanted",
    [
        '<img src="http://127.0.0.1:9/x.png" alt="x">',
        '<img src="file:///etc/hostname" alt="x">',
        '<img src="x.png" alt="x">',
        '<img src="asset:6e6f" alt="x">',
        '<style>@import url("http://127.0.0.1:9/x.css");</style>',
        '<style>@font-face{font-family:Q;src:url("file:///etc/hostname")} p{font-family:Q}</style><p>x</p>',
        '<p style="background:url(http://127.0.0.1:9/x.png)">x</p>',
        '<svg xmlns="http://www.w3.org/2000/svg" width="9"><title>x</title><image href="file:///etc/hostname"/></svg>',
        '<a href="#nowhere">x</a>',
        "<style>p { no-such-thing: 1 }</style>",
    ],
)
def test_a_page_that_wants_the_world_is_refused(wanted: str) -> None:
    """An address outside the booklet, or anything the engine complains of, stops the press as a bug of ours."""
    with pytest.raises(PressFault):
        press(f'<html lang="en-GB"><head><title>t</title></head><body>{wanted}</body></html>', {})


def test_the_fetcher_notes_what_it_refuses() -> None:
    """A refusal is known even where the engine would pass over it in silence."""
    fetcher = ClosedFetcher({"a": Asset("image/png", b"bytes")})
    assert fetcher.fetch(asset_url("a")).read() == b"bytes"
    assert fetcher.fetch("data:text/plain,oil").read() == b"oil"
    assert fetcher.refused == []
    for url in ("file:///etc/hostname", "http://127.0.0.1:9/x", asset_url("b")):
        with pytest.raises(ValueError, match="disallowed protocol"):
            fetcher.fetch(url)
    assert fetcher.refused == ["file:///etc/hostname", "http://127.0.0.1:9/x", asset_url("b")]
    with pytest.raises(PressFault, match="refused address: file:///etc/hostname"):
        press('<html lang="en"><head><title>t</title></head><body><img src="file:///etc/hostname" alt="x"></body>', {})


def test_the_collector_is_left_as_it_was() -> None:
    """Rendering holds garbage collection off and restores it, after a fault too."""
    assert gc.isenabled()
    with pytest.raises(PressFault):
        press('<html lang="en"><head><title>t</title></head><body><img src="x.png" alt="x"></body></html>', {})
    assert gc.isenabled()


def test_the_engine_is_the_one_the_page_walk_knows() -> None:
    """The walk over boxes uses what the engine does not publish, so its major version is fixed."""
    assert weasyprint.__version__.split(".")[0] == "70"
