from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path
from typing import TYPE_CHECKING

import pytest

from tests.outside_checkers.axe import axe
from tests.outside_checkers.browser import PHONE, visit
from tests.outside_checkers.nu_html import nu_html
from tests.outside_checkers.pdf_text import pdf_text
from tests.outside_checkers.pdf_ua import pdf_ua
from tests.outside_checkers.program import ROOT, node_module, program
from tests.outside_checkers.qpdf import qpdf

if TYPE_CHECKING:
    # Only the name of a type: loading Playwright would slow every test.
    from playwright.sync_api import Browser

GOOD = """<!DOCTYPE html>
<html lang="en"><head><meta charset="utf-8"><title>Drain the sump</title></head>
<body><main><h1>Drain the sump</h1><p>Place the tray.</p>
<p style="break-before: page">Tighten to 45 N·m.</p></main></body></html>
"""
BAD = GOOD.replace("<p>Place the tray.</p>", '<p>Place the <div>tray</div>.</p><img src="data:,">')

WRITE_PDF = (
    "import sys, weasyprint; weasyprint.HTML(sys.argv[1]).write_pdf(sys.argv[2], pdf_variant=sys.argv[3] or None)"
)


def html_file(folder: Path, text: str, name: str = "page.html") -> Path:
    """Write a page and return where it is."""
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def pdf_file(folder: Path, variant: str) -> Path:
    """Print the good page in a process of its own, since fontconfig is set up once for a whole process."""
    path = folder / "page.pdf"
    fonts = {"FONTCONFIG_FILE": str(ROOT / "authoring/render/fonts/fonts.conf")}
    command: list[str | Path] = [sys.executable, "-W", "error", "-c", WRITE_PDF, html_file(folder, GOOD), path, variant]
    subprocess.run(command, env=os.environ | fonts, check=True)
    return path


@pytest.mark.slow
def test_nu_html_tells_the_bad_file_from_the_good(tmp_path: Path) -> None:
    """In one call over both files, every error is about the bad one, and the missing alt is among them."""
    good, bad = html_file(tmp_path, GOOD, "good.html"), html_file(tmp_path, BAD, "bad.html")
    messages = nu_html([good, bad])
    assert any("alt" in message for message in messages)
    assert {message.split(":")[0] for message in messages} == {"bad.html"}


def test_nu_html_refuses_to_check_nothing() -> None:
    """An empty list of files fails the test that gave it."""
    with pytest.raises(pytest.fail.Exception, match="No file"):
        nu_html([])


@pytest.mark.slow
def test_pdf_ua_wants_tags(tmp_path: Path) -> None:
    """A page printed with tags conforms to PDF/UA-1."""
    assert pdf_ua(pdf_file(tmp_path, "pdf/ua-1")) == []


@pytest.mark.slow
def test_pdf_ua_catches_a_file_without_tags(tmp_path: Path) -> None:
    """The same page printed plainly does not conform, and is told so."""
    assert pdf_ua(pdf_file(tmp_path, ""))


@pytest.mark.slow
def test_qpdf_catches_a_file_cut_short(tmp_path: Path) -> None:
    """A whole file is sound; its first half is damaged."""
    whole = pdf_file(tmp_path, "")
    half = tmp_path / "half.pdf"
    half.write_bytes(whole.read_bytes()[: whole.stat().st_size // 2])
    assert qpdf(whole) == []
    assert any("damaged" in message for message in qpdf(half))


@pytest.mark.slow
def test_pdf_text_reads_page_by_page(tmp_path: Path) -> None:
    """The words before a page break are on page one, those after it on page two, signs and all."""
    first, second = pdf_text(pdf_file(tmp_path, ""))
    assert "Place the tray." in first
    assert second.startswith("Tighten to 45 N·m")


@pytest.mark.slow
def test_pdf_text_fails_on_what_is_no_pdf(tmp_path: Path) -> None:
    """A file that is no PDF fails the test, instead of reading as no pages."""
    with pytest.raises(pytest.fail.Exception, match="could not read"):
        pdf_text(html_file(tmp_path, GOOD))


def test_axe_catches_a_picture_without_alternative_text(browser: Browser, tmp_path: Path) -> None:
    """The good page breaks nothing; the same page with a bare picture breaks image-alt."""
    with visit(browser, html_file(tmp_path, GOOD)) as good:
        assert axe(good.page) == []
    with visit(browser, html_file(tmp_path, BAD)) as bad:
        assert any(violation.startswith("image-alt") for violation in axe(bad.page))


def test_a_visit_records_requests_and_errors(browser: Browser, tmp_path: Path) -> None:
    """A page that reaches out and throws is told on; a plain one asks for itself only."""
    reaching = '<img alt="" src="http://198.51.100.1/x.png"><script>throw new Error("torn")</script>'
    with visit(browser, html_file(tmp_path, GOOD + reaching)) as told:
        assert any(address.startswith("http:") for address in told.requests)
        assert any("torn" in error for error in told.errors)
    plain = html_file(tmp_path, GOOD)
    with visit(browser, plain, size=PHONE) as quiet:
        assert quiet.requests == [plain.as_uri()]
        assert quiet.errors == []
        assert quiet.page.evaluate("innerWidth") == PHONE[0]


def test_a_missing_program_fails_the_test() -> None:
    """A checker that is not installed fails and says how to get it; it never skips."""
    for missing in (lambda: program("no-such-checker"), lambda: node_module("no-such-checker/x.js")):
        with pytest.raises((pytest.fail.Exception, pytest.skip.Exception), match=r"\./run test") as told:
            missing()
        assert told.type is pytest.fail.Exception
