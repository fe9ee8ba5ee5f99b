"""The demo library's own booklets, judged by outside programs."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from authoring.cli.main import main
from tests.outside_checkers.axe import axe
from tests.outside_checkers.browser import visit
from tests.outside_checkers.nu_html import nu_html
from tests.outside_checkers.pdf_text import pdf_text
from tests.outside_checkers.pdf_ua import pdf_ua
from tests.outside_checkers.qpdf import qpdf

if TYPE_CHECKING:
    # Playwright takes a quarter of a second to load; only tests that ask for the browser pay for it.
    from playwright.sync_api import Browser

DEMO = Path(__file__).parent.parent.parent / "procedures"

pytestmark = pytest.mark.slow


@pytest.fixture(scope="module")
def booklets(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give the folder of the demo's booklets: all fitments, and the disc brake alone."""
    out = tmp_path_factory.mktemp("booklets")
    assert main(["build", str(DEMO), "--out", str(out)]) == 0
    assert main(["build", str(DEMO), "--out", str(out), "--for", "brake=disc"]) == 0
    return out


def test_each_booklet_is_there(booklets: Path) -> None:
    """Each procedure in two editions; those that cover the disc brake also for that alone."""
    texts = {path.stem: path.read_text("utf-8") for path in DEMO.glob("FL-*.yaml")}
    disc = {stem for stem, text in texts.items() if "equipment: hob" in text and "covers: {brake: [drum]}" not in text}
    assert {"FL-120", "FL-130"} <= disc
    assert {"FL-125", "FL-210"} <= texts.keys() - disc
    stems = {*texts, *(f"{stem}_brake-disc" for stem in disc)}
    names = {f"{stem}.{kind}" for stem in stems for kind in ("html", "pdf")}
    assert {path.name for path in booklets.iterdir()} == names


def test_the_html_is_valid(booklets: Path) -> None:
    """The Nu checker finds nothing in any of the pages."""
    assert nu_html(sorted(booklets.glob("*.html"))) == []


def test_no_page_is_wider_than_a_phone(booklets: Path, browser: Browser) -> None:
    """At 320 px nothing needs scrolling sideways (WCAG 2.2, 1.4.10), whatever the amounts and tables hold."""
    wide = "[...document.querySelectorAll('body *')].filter(one => one.getBoundingClientRect().right > 320.5)"
    wide += ".filter(one => !one.closest('.sideways svg'))"  # what needs both directions is moved in a box of its own
    for path in sorted(booklets.glob("*.html")):
        with visit(browser, path, size=(320, 640)) as seen:
            assert seen.page.evaluate(f"{wide}.map(one => one.outerHTML.slice(0, 80))") == [], path.name
            assert seen.page.evaluate("document.documentElement.scrollWidth") == 320


def test_the_html_is_accessible_and_asks_for_nothing(booklets: Path, browser: Browser) -> None:
    """WCAG 2.2 AA by axe-core, no request but the page itself, no error in the console."""
    for path in sorted(booklets.glob("*.html")):
        with visit(browser, path) as seen:
            assert axe(seen.page) == []
            assert len(seen.requests) == 1
            assert seen.errors == []


def test_the_pdf_is_accessible_and_sound(booklets: Path) -> None:
    """PDF/UA-1 by an outside checker, and qpdf has nothing to say."""
    for path in sorted(booklets.glob("*.pdf")):
        assert pdf_ua(path) == []
        assert qpdf(path) == []


def test_the_fitment_stands_on_every_page_and_only_its_steps(booklets: Path) -> None:
    """V4: the disc brake's booklet names it on every page and has no step of the drum brake."""
    pages = [" ".join(text.split()) for text in pdf_text(booklets / "FL-120_brake-disc.pdf")]
    assert all("Only parking brake: disc brake" in page for page in pages[1:])
    assert "Only parking brake: disc brake" in pages[0]
    assert not any("Pull off the brake drum" in page for page in pages)
    everything = [" ".join(text.split()) for text in pdf_text(booklets / "FL-120.pdf")]
    assert any("Pull off the brake drum" in page for page in everything)
    assert len(pages) < len(everything)


def test_the_contents_stand_whole_on_one_page(booklets: Path) -> None:
    """No line of the contents runs over the foot of a page into what follows, and the time is told once."""
    for path in sorted(booklets.glob("*.pdf")):
        pages = [" ".join(text.split()) for text in pdf_text(path)]
        (contents,) = [page for page in pages[:4] if "Contents" in page]
        assert "Safety" in contents
        assert "Report a fault" in contents
    long = " ".join(" ".join(pdf_text(booklets / "FL-210.pdf")[:1]).split())
    assert "540 min" in long
    assert "together 540" not in long


def test_the_last_page_ends_the_procedure(booklets: Path) -> None:
    """END OF PROCEDURE stands on the last page of each booklet, and on no other."""
    for path in sorted(booklets.glob("*.pdf")):
        pages = pdf_text(path)
        assert ["END OF PROCEDURE" in page for page in pages] == [False] * (len(pages) - 1) + [True]
