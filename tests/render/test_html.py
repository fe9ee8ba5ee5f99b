"""The edition for the screen."""

from __future__ import annotations

import io
import re
from base64 import b64decode
from collections.abc import Callable
from itertools import count, pairwise
from pathlib import Path
from typing import TYPE_CHECKING
from xml.etree.ElementTree import Element

import pytest
import tinyhtml5  # type: ignore[import-untyped]  # it comes without types
from fontTools.ttLib import TTFont
from hypothesis import given, settings
from hypothesis import strategies as st
from msgspec import structs

from authoring.booklet.blocks import Booklet
from authoring.booklet.markup import said
from authoring.booklet.step_parts import Step
from authoring.booklet.words import Link
from authoring.render.html import as_html
from authoring.render.paged import as_paged_html
from tests.outside_checkers.axe import axe
from tests.outside_checkers.browser import DESK, PHONE, visit
from tests.outside_checkers.nu_html import nu_html
from tests.outside_checkers.pdf_text import pdf_text
from tests.render.altered import altered, texts
from tests.render.sample import sample
from tests.render.sample_parts import tell

if TYPE_CHECKING:
    from playwright.sync_api import Browser

SMALLEST = (320, 640)
"""The window of WCAG 2.2, 1.4.10 Reflow: 320 CSS pixels wide."""

# Control characters never come out of the reader; a space alone is no word.
WORDS = st.text(st.characters(exclude_categories=["Cs", "Cc"]), min_size=1, max_size=12).filter(str.strip)


def body(html: str) -> Element:
    """Return the body as a browser's parser (tinyhtml5) would build it."""
    tree: Element = tinyhtml5.parse(html, namespace_html_elements=False)
    found = tree.find("body")
    assert found is not None
    return found


def flat(text: str) -> str:
    """Return a text with each run of HTML's white space as one space."""
    return re.sub(r"[ \t\n\f\r]+", " ", text)


def read_out(element: Element) -> str:
    """Return all words of an element: those that are seen and those that name a box or a picture."""
    names = [one.get(name, "") for one in element.iter() for name in ("alt", "aria-label", "data-head")]
    return flat("".join(element.itertext()) + " " + " ".join(names))


@pytest.fixture
def page(tmp_path: Path) -> Path:
    """Give the sample booklet as a file."""
    file = tmp_path / "booklet.html"
    file.write_text(as_html(sample()), encoding="utf-8")
    return file


def test_every_word_of_the_booklet_is_on_the_page() -> None:
    """Nothing of a booklet is dropped."""
    said = read_out(body(as_html(sample())))
    missing = [text for text in texts(sample()) if flat(text).strip() not in said]
    # The file name of an asset and the harm of a signal word are not for the reader; the word's class shows it.
    assert [text for text in missing if text not in ("person", "equipment")] == []


@settings(max_examples=25)
@given(st.data())
def test_no_word_of_an_author_breaks_the_page(data: st.DataObject) -> None:
    """Whatever the words, the page keeps its elements and says exactly those words."""
    pool = data.draw(st.lists(WORDS, min_size=8, max_size=8))
    turn = count()
    changed = altered(sample(), lambda _: pool[next(turn) % len(pool)])
    built = body(as_html(changed))
    assert [one.tag for one in built.iter()] == [one.tag for one in body(as_html(sample())).iter()]
    said = read_out(built)
    assert [word for word in pool if flat(word).strip(" ") not in said] == []


@pytest.mark.parametrize("word", ["</style><script>x()</script>", '"><img src=x onerror=x()>', "{{ 7 * 7 }}", "&amp;"])
@pytest.mark.parametrize("edition", [as_html, as_paged_html])
def test_markup_in_words_stays_words(word: str, edition: Callable[[Booklet], str]) -> None:
    """Words that look like markup are printed as they were written, in both editions."""
    page = edition(altered(sample(), lambda _: word))
    assert "<script" not in page
    assert "<img src=x" not in page
    assert word in read_out(body(page))


def test_both_editions_have_one_body() -> None:
    """Screen and paper have the same elements with the same words; only where a picture comes from differs."""

    def skeleton(html: str) -> list[tuple[str, dict[str, str], str, str]]:
        return [
            (
                one.tag,
                {key: value for key, value in one.items() if key != "src"},
                (one.text or "").strip(),
                (one.tail or "").strip(),
            )
            for one in body(html).iter()
        ]

    screen, paged = skeleton(as_html(sample())), skeleton(as_paged_html(sample()))
    foot = [one[0] for one in screen].index("footer")
    assert screen[1:foot] == paged[1:foot]
    assert [one[0] for one in screen[foot:]] == ["footer", "p", "strong"]


def test_the_same_booklet_gives_the_same_text() -> None:
    """Two runs differ in nothing."""
    assert as_html(sample()) == as_html(sample())


def test_headings_are_in_order_and_ids_are_single() -> None:
    """One first heading, no level skipped, no id twice, and each link within the page has its target."""
    built = body(as_html(sample()))
    levels = [int(one.tag[1]) for one in built.iter() if re.fullmatch("h[1-6]", one.tag)]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(deeper - upper <= 1 for upper, deeper in pairwise(levels))
    ids = [one.get("id") for one in built.iter() if one.get("id")]
    assert len(ids) == len(set(ids))
    targets = [(one.get("href") or "")[1:] for one in built.iter("a") if (one.get("href") or "").startswith("#")]
    assert len(targets) > 5
    assert set(targets) <= set(ids)


def test_a_dangerous_address_is_printed_but_not_linked() -> None:
    """A link that would run something is words only; one to a page is a link."""
    for address, linked in (("javascript:alert(1)", False), ("https://example.org/a", True)):
        cover = structs.replace(sample().cover, job=tell(Link("here", address)))
        page = as_html(structs.replace(sample(), cover=cover))
        assert f"here ({address})" in read_out(body(page))
        assert (f'href="{address}"' in page) is linked


def test_a_booklet_that_was_tried_says_nothing_of_validation() -> None:
    """NOT VALIDATED stands on the page exactly when the booklet says so."""
    assert "NOT VALIDATED" in as_html(sample())
    assert "NOT VALIDATED" not in as_html(sample(trial=""))


def test_the_right_faces_are_inside() -> None:
    """Each face of the style sheet is the font it claims to be, by the font's own name table."""
    faces = re.findall(r"@font-face \{ (.*?); src: url\(.data:font/woff2;base64,(.*?).\)", as_html(sample()))
    names = {rule: TTFont(io.BytesIO(b64decode(content)))["name"].getBestFullName() for rule, content in faces}
    assert names == {
        "font-family: Inter; font-weight: 400": "Inter",
        "font-family: Inter; font-weight: 700": "Inter Bold",
        "font-family: Inter; font-style: italic; font-weight: 400": "Inter Italic",
        "font-family: Signs; font-weight: 400": "DejaVu Sans Book",
    }


@pytest.mark.slow
def test_the_page_is_valid(page: Path) -> None:
    """The Nu checker finds no error, neither in the elements nor in the style sheet."""
    assert nu_html([page]) == []


@pytest.mark.parametrize("size", [DESK, PHONE])
def test_the_page_is_accessible(browser: Browser, page: Path, size: tuple[int, int]) -> None:
    """axe-core finds nothing against WCAG 2.2 AA, on a desk and on a phone."""
    with visit(browser, page, size=size) as seen:
        assert axe(seen.page) == []


def test_the_page_asks_for_nothing(browser: Browser, page: Path) -> None:
    """The file loads itself and makes no other request; fonts and pictures arrive all the same."""
    with visit(browser, page) as seen:
        seen.page.evaluate("document.fonts.ready")
        faces = seen.page.evaluate("[...document.fonts].filter(one => one.status == 'loaded').map(one => one.family)")
        widths = seen.page.evaluate("[...document.images].map(one => one.naturalWidth)")
        assert [url for url in seen.requests if not url.startswith("data:")] == [page.resolve().as_uri()]
        assert seen.errors == []
    assert "Inter" in faces
    assert widths == [520, 300, 520, 900]


def test_printed_from_a_browser_a_step_stands_below_its_cautions(browser: Browser, page: Path, tmp_path: Path) -> None:
    """On A4 each step's caution blocks, instruction and torques are on one sheet, and nothing is set as on a phone."""
    paper = tmp_path / "printed.pdf"
    with visit(browser, page, size=DESK) as visited:
        visited.page.pdf(path=paper, format="A4")
        visited.page.emulate_media(media="print")
        visited.page.set_viewport_size({"width": 680, "height": 1000})
        number = visited.page.locator(".instruction .number").first
        assert number.evaluate("one => getComputedStyle(one).position") == "absolute"
    sheets = [flat(text) for text in pdf_text(paper)]
    steps = [block for chapter in sample().chapters for block in chapter.blocks if isinstance(block, Step)]
    guarded = [step for step in steps if step.cautions]
    assert guarded
    for step in guarded:
        words = [said(step.text)[:40], *(said(caution.hazard)[:40] for caution in step.cautions)]
        assert any(all(flat(one) in sheet for one in words) for sheet in sheets), words


def test_the_page_reflows(browser: Browser, page: Path) -> None:
    """At 320 px nothing needs scrolling sideways (WCAG 2.2, 1.4.10) and no word is cut off.

    A drawing that is too wide is moved in a box of its own, which 1.4.10 leaves to what needs both directions.
    """
    with visit(browser, page, size=SMALLEST) as seen:
        assert seen.page.evaluate("document.documentElement.scrollWidth") == SMALLEST[0]
        beyond = seen.page.evaluate(
            "[...document.querySelectorAll('body *')].filter(one => one.getBoundingClientRect().right > 320.5)"
            ".filter(one => !one.closest('.sideways svg'))"
            ".map(one => one.outerHTML.slice(0, 80))"
        )
    assert beyond == []


def test_a_wide_table_tells_its_heads_on_a_phone(browser: Browser, page: Path) -> None:
    """On a desk the heads stand once above the columns; on a phone each value has its head beside it."""
    ask = "getComputedStyle(document.querySelector('#tools td.numeric'), '::before').content"
    with visit(browser, page, size=DESK) as seen:
        assert seen.page.evaluate(ask) == "none"
    with visit(browser, page, size=PHONE) as seen:
        assert seen.page.evaluate(ask) == '"Amount"'


@pytest.mark.parametrize("size", [DESK, PHONE])
def test_boxes_are_large_enough_for_gloves(browser: Browser, page: Path, size: tuple[int, int]) -> None:
    """Each tick box is at least 44 px each way, can be ticked, and no two overlap."""
    with visit(browser, page, size=size, javascript=True) as seen:
        boxes = seen.page.locator("input[type=checkbox]")
        rects = [boxes.nth(at).bounding_box() for at in range(boxes.count())]
        seen.page.get_by_role("checkbox", name="Step 3 is done").check()
        ticked = seen.page.evaluate("getComputedStyle(document.querySelector('input:checked')).backgroundImage")
    steps, rows, outcomes, rounds, equal_parts = 19, 5, 12, 5, 2
    assert len(rects) == steps + rows + outcomes + rounds + equal_parts
    places = [rect for rect in rects if rect is not None]
    assert min(min(rect["width"], rect["height"]) for rect in places) >= 44
    assert all(
        one is other
        or one["y"] + one["height"] <= other["y"]
        or other["y"] + other["height"] <= one["y"]
        or one["x"] + one["width"] <= other["x"]
        or other["x"] + other["width"] <= one["x"]
        for one in places
        for other in places
    )
    assert ticked.startswith("url")


def test_focus_can_be_seen(browser: Browser, page: Path) -> None:
    """Whatever the keyboard reaches shows a thick outline."""
    with visit(browser, page) as seen:
        for _ in range(12):
            seen.page.keyboard.press("Tab")
            outline = seen.page.evaluate("getComputedStyle(document.activeElement).outline")
            assert "solid 3px" in outline


def test_callouts_stand_where_they_point(browser: Browser, page: Path) -> None:
    """A callout's disc is centred on its percentages of the picture, on a desk and on a phone."""
    for size in (DESK, PHONE):
        with visit(browser, page, size=size) as seen:
            picture = seen.page.locator("#hub img").bounding_box()
            disc = seen.page.locator("#hub .disc").first.bounding_box()
        assert picture is not None
        assert disc is not None
        assert disc["x"] + disc["width"] / 2 == pytest.approx(picture["x"] + 0.404 * picture["width"], abs=1)
        assert disc["y"] + disc["height"] / 2 == pytest.approx(picture["y"] + 0.737 * picture["height"], abs=1)
