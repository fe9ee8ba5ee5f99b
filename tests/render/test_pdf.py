"""The edition for paper."""

from __future__ import annotations

import io
import os
import re
import subprocess
import sys
from collections.abc import Iterator, Sequence
from importlib.machinery import ModuleSpec
from pathlib import Path
from types import ModuleType
from xml.etree import ElementTree as ET

import pikepdf
import pytest
from msgspec import structs

from authoring.booklet.blocks import Asset, Chapter
from authoring.booklet.step_parts import Step
from authoring.pipeline import compose
from authoring.render.pdf import PangoMissing, as_pdf
from tests.booklet.goldens import checked
from tests.outside_checkers.pdf_text import pdf_text
from tests.outside_checkers.pdf_ua import pdf_ua
from tests.outside_checkers.program import ROOT, output, program
from tests.outside_checkers.qpdf import qpdf
from tests.render.sample import sample
from tests.render.sample_parts import WEAR, photograph

pytestmark = pytest.mark.slow


OURS = {"Inter", "Inter-Bold", "Inter-Italic", "DejaVu-Sans"}


@pytest.fixture(scope="module")
def file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Give the sample booklet as a PDF whose page rules all hold."""
    content, parted = as_pdf(sample())
    assert parted == []
    path = tmp_path_factory.mktemp("pdf") / "booklet.pdf"
    path.write_bytes(content)
    return path


def squeezed(text: str) -> str:
    """Return a text with each run of white space as one space."""
    return " ".join(text.split())


def test_the_file_is_accessible_and_sound(file: Path) -> None:
    """PDF/UA-1 holds, and the file's syntax is in order."""
    assert pdf_ua(file) == []
    assert qpdf(file) == []


def test_the_same_booklet_gives_the_same_bytes(file: Path) -> None:
    """Another process, with other hash seeds, another time zone and another folder, writes the same bytes."""
    code = (
        "import sys; from authoring.render.pdf import as_pdf; from tests.render.sample import sample; "
        "sys.stdout.buffer.write(as_pdf(sample())[0])"
    )
    environment = {**os.environ, "PYTHONHASHSEED": "7", "TZ": "Asia/Tokyo", "PYTHONPATH": str(ROOT)}
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True, env=environment, cwd="/")
    assert told.stdout == file.read_bytes()


def test_every_page_says_what_it_belongs_to(file: Path) -> None:
    """Y2, V4, C4: each page has title, number, revision, fitment, page of pages, shop and NOT VALIDATED."""
    pages = [squeezed(page) for page in pdf_text(file)]
    assert len(pages) > 5
    for number, page in enumerate(pages, start=1):
        for words in (
            "FL-P-21-03",
            "Change the oil and the shaft seal of a wheel drive",
            "Revision C",
            "All fitments",
            f"Page {number} of {len(pages)}",
            "Fennel Lane Plant Workshop",
            "NOT VALIDATED",
        ):
            assert words in page, number


def test_a_tried_booklet_is_not_called_unvalidated(tmp_path: Path) -> None:
    """Without a trial mark no page says NOT VALIDATED."""
    path = tmp_path / "tried.pdf"
    path.write_bytes(as_pdf(sample(trial=""))[0])
    assert "NOT VALIDATED" not in "".join(pdf_text(path))


def test_contents_give_the_right_pages(file: Path) -> None:
    """The page printed beside a chapter's title is the one its heading stands on."""
    pages = [squeezed(page) for page in pdf_text(file, lines=True)]
    for chapter in sample().chapters:
        title = squeezed(f"{chapter.number} {chapter.title}")
        found = re.search(rf"{re.escape(title)} (\d+)", pages[0])
        assert found is not None
        assert title in pages[int(found[1]) - 1]


def test_what_to_do_first_stands_on_one_page(tmp_path: Path) -> None:
    """The page that hangs on a wall is not cut, wherever on a sheet it begins."""
    path = tmp_path / "first.pdf"
    path.write_bytes(as_pdf(compose(checked("procedures"), "FL-120", {}))[0])
    pages = [squeezed(page) for page in pdf_text(path)]
    (whole,) = [page for page in pages if "What has happened" in page]
    assert "Whatever has happened" in whole
    assert "Turning parts" in whole
    assert "nobody starts the machine" in whole


def test_a_reference_to_follow_has_its_page(file: Path) -> None:
    """A name that sends the reader elsewhere is printed with the page."""
    pages = [squeezed(page) for page in pdf_text(file)]
    (there,) = [number for number, page in enumerate(pages, start=1) if "Figure 1 Wheel drive" in page]
    assert any(f"drain plug (page {there})" in page for page in pages)


def structure(file: Path) -> str:
    """Return the words in the order of the tag tree, as poppler reads them out."""
    told = output(program("pdfinfo"), "-struct-text", file)
    return squeezed(" ".join(re.findall(r'^ *"(.*)"$', told.stdout, re.MULTILINE)))


def test_a_reader_hears_the_steps_in_order(file: Path) -> None:
    """S3: in the tag tree each step is: its cautions, its number and instruction, its torque; then the next step."""
    heard = structure(file)
    at = heard.index("2 Drain, seal and fill", heard.index("1 Before you begin") + 200)
    for step in (block for chapter in sample().chapters for block in chapter.blocks if isinstance(block, Step)):
        for message in step.cautions:
            at = heard.index(message.word, at)
            at = heard.index(squeezed("".join(getattr(one, "text", "") for one in message.consequence)), at)
        instruction = f"{step.number} {getattr(step.text[0], 'text', '').strip()}"
        at = heard.index(instruction, at)


def reachable(kids: pikepdf.Object) -> Iterator[pikepdf.Object]:
    """Yield each structure element under some others."""
    for kid in kids if isinstance(kids, pikepdf.Array) else [kids]:
        if isinstance(kid, pikepdf.Dictionary) and kid.get("/Type") == pikepdf.Name.StructElem:
            yield kid
            if "/K" in kid:
                yield from reachable(kid["/K"])


def test_margin_text_is_passed_over(file: Path) -> None:
    """ISO 14289-1, 7.8: running heads and feet are pagination artifacts, and no marked content hangs in the air."""
    with pikepdf.open(file) as pdf:
        root = pdf.Root.StructTreeRoot
        hanging = {element.objgen for element in reachable(root.K)}
        owners = [
            owner
            for entry in list(root.ParentTree.Nums)[1::2]
            if isinstance(entry, pikepdf.Array)
            for owner in entry
            if isinstance(owner, pikepdf.Dictionary)
        ]
        assert len(owners) > 200
        assert [owner for owner in owners if owner.objgen not in hanging] == []
        for page in pdf.pages:
            marks = [one for one in pikepdf.parse_content_stream(page) if str(one.operator) == "BDC"]
            kinds = [str(dict(one.operands[1]).get("/Type")) for one in marks if str(one.operands[0]) == "/Artifact"]
            assert kinds.count("/Pagination") >= 3
    assert "Page 1 of" not in structure(file)


def test_the_file_tells_its_title_language_and_date(file: Path) -> None:
    """Metadata come from the booklet: the date is the revision's, never the clock's."""
    with pikepdf.open(file) as pdf:
        assert str(pdf.Root.Lang) == "en-GB"
        assert str(pdf.docinfo["/Title"]) == "FL-P-21-03 Change the oil and the shaft seal of a wheel drive, revision C"
        assert str(pdf.docinfo["/CreationDate"]).startswith("D:20260314")
        assert pdf.Root.ViewerPreferences.DisplayDocTitle
        with pdf.open_outline() as outline:
            (top,) = outline.root
            assert [one.title for one in top.children] == [
                f"{chapter.number} {chapter.title}" for chapter in sample().chapters if chapter.level == 1
            ]


def test_only_our_own_fonts_are_used(file: Path) -> None:
    """Every font is one of those in the package, embedded."""
    rows = output(program("pdffonts"), file).stdout.splitlines()[2:]
    names = {re.sub(r"^[A-Z]{6}\+", "", row.split()[0]) for row in rows}
    assert names
    assert names <= OURS
    assert all(re.search(r" yes +yes +(yes|no) ", row) for row in rows)


def test_text_is_large_enough(file: Path) -> None:
    """Y4: paragraphs are 11 pt or larger, instructions 12, torques 30, and nothing under 8, as poppler measures."""
    read = ET.fromstring(output(program("pdftohtml"), "-xml", "-stdout", "-i", "-zoom", "1", file).stdout)  # noqa: S314  # poppler wrote it
    size_of = {font.get("id"): int(font.get("size", "0")) for font in read.iter("fontspec")}
    sizes = {"".join(text.itertext()).strip(): size_of[text.get("font")] for text in read.iter("text")}
    assert min(sizes.values()) >= 8
    assert sizes["Stop when something is not as this booklet says. Ask before you go on."] >= 11
    assert sizes["Clean the thread."] >= 12
    assert sizes["189"] >= 30


def test_the_sheet_is_a4(file: Path) -> None:
    """Each page is A4 upright: 595.28 by 841.89 pt (ISO 216)."""
    with pikepdf.open(file) as pdf:
        for page in pdf.pages:
            assert [float(edge) for edge in page.mediabox] == pytest.approx([0, 0, 595.28, 841.89], abs=0.01)


def test_an_asset_is_served_whatever_its_name() -> None:
    """Pictures are found by name, spaces and signs included."""
    odd = "a b/ü#?%.png"
    figure = structs.replace(WEAR, asset=odd)
    chapters = (Chapter("c", "1", "Look", 1, (figure,)),)
    booklet = structs.replace(sample(), chapters=chapters, assets={odd: Asset("image/png", photograph())})
    content, parted = as_pdf(booklet)
    assert parted == []
    with pikepdf.open(io.BytesIO(content)) as pdf:
        assert sum(len(page.get_images()) for page in pdf.pages) > 0


def test_odd_words_reach_the_margins_unharmed(tmp_path: Path) -> None:
    """Quotes, braces and ends of elements in a title are printed as written in the running head."""
    odd = 'Valve "A"; } @page{} </style> \\61 <b>'
    booklet = structs.replace(sample(), title=odd, fitment="Only 'B'\\A x")
    path = tmp_path / "odd.pdf"
    path.write_bytes(as_pdf(booklet)[0])
    pages = [squeezed(page) for page in pdf_text(path)]
    assert all(odd in page and "Only 'B'\\A x" in page for page in pages[1:])


def test_without_pango_a_sentence_says_what_to_install(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where the text libraries are missing, the reader is told which to install."""

    class Missing:
        def find_spec(
            self, name: str, _path: Sequence[str] | None, _target: ModuleType | None = None
        ) -> ModuleSpec | None:
            if name == "authoring.render.press":
                message = "cannot load library 'libpango-1.0-0'"
                raise OSError(message)
            return None

    monkeypatch.delitem(sys.modules, "authoring.render.press")
    monkeypatch.setattr(sys, "meta_path", [Missing(), *sys.meta_path])
    with pytest.raises(PangoMissing, match=r"libpango-1\.0-0 libpangoft2-1\.0-0 libharfbuzz-subset0"):
        as_pdf(sample())
