"""The golden booklets: which there are, and how they are written anew."""

from __future__ import annotations

import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

from PIL import Image

from authoring.cli.disk import read_library
from authoring.pipeline import Checked, check, compose, pdf
from tests.booklet.plain_text import plain_text
from tests.outside_checkers.pdf_text import pdf_text

HERE = Path(__file__).parent
TREE = HERE.parent.parent

BOOKLETS: tuple[tuple[str, str, str, dict[str, str]], ...] = (
    ("base-FL-110", "tests/base", "FL-110", {}),
    ("rare-FL-310", "tests/booklet/rare", "FL-310", {}),
    ("rare-FL-310_breather-hose", "tests/booklet/rare", "FL-310", {"breather": "hose"}),
    ("steps-FL-320", "tests/booklet/steps", "FL-320", {}),
    ("steps-FL-320_chain-shut", "tests/booklet/steps", "FL-320", {"drive": "chain", "cooler": "shut"}),
    ("FL-110", "procedures", "FL-110", {}),
    ("FL-120", "procedures", "FL-120", {}),
    ("FL-120_brake-disc", "procedures", "FL-120", {"brake": "disc"}),
)


def checked(folder: str) -> Checked:
    """Read and check a library of this tree."""
    return check(*read_library(str(TREE / folder)))


def written() -> Iterator[tuple[Path, str]]:
    """Yield each golden file and the text it must hold."""
    libraries = {folder: checked(folder) for _, folder, _, _ in BOOKLETS}
    for name, folder, number, selection in BOOKLETS:
        yield HERE / "golden" / f"{name}.txt", plain_text(compose(libraries[folder], number, selection))


PICTURED = ("Prop the skip", "Measure the overall width", "Tighten the flange nut")
"""Words of the pages of FL-120 that the README shows, one page each."""


def picture() -> None:
    """Draw the pictured pages side by side into `golden/pages.png`; needs pdftoppm and pdftotext."""
    content, parted = pdf(checked("procedures"), "FL-120", {})
    assert not parted, parted
    with tempfile.TemporaryDirectory() as folder:
        paper = Path(folder) / "FL-120.pdf"
        paper.write_bytes(content)
        texts = pdf_text(paper)
        numbers = [next(n for n, text in enumerate(texts, 1) if words in " ".join(text.split())) for words in PICTURED]
        pages = []
        for number in numbers:
            page = Path(folder) / f"{number}"
            command = ["pdftoppm", "-png", "-singlefile", "-r", "60", "-f", str(number), str(paper), str(page)]
            subprocess.run(command, check=True)
            pages.append(Image.open(page.with_suffix(".png")).convert("RGB"))
        gap = 12
        wide = sum(page.width + gap for page in pages) + gap
        sheet = Image.new("RGB", (wide, pages[0].height + 2 * gap), "#8a8a8a")
        for place, one in enumerate(pages):
            sheet.paste(one, (gap + place * (one.width + gap), gap))
        sheet.quantize(32).save(HERE / "golden" / "pages.png", optimize=True)


if __name__ == "__main__":
    picture()
    for path, text in written():
        path.write_text(text, encoding="utf-8")
        print(path.relative_to(TREE), file=sys.stderr)  # noqa: T201  # a script that says what it wrote
