"""Cut the bundled fonts down from their full faces, once, at development time.

    python authoring/render/fonts/make.py INTER_FOLDER DEJAVU_FOLDER

The folders hold the static faces as Debian's fonts-inter and fonts-dejavu-core install them.
Each face becomes `print/NAME.otf` or `.ttf` for the PDF and `screen/NAME.woff2` for the HTML, with the same glyphs.
The same faces and the same fontTools give the same bytes: no time of day gets in.
"""

from __future__ import annotations

import sys
from pathlib import Path

from fontTools.subset import Options, Subsetter
from fontTools.ttLib import TTFont

HERE = Path(__file__).parent

LATIN = (*range(0x20, 0x7F), *range(0xA0, 0x180), *range(0x218, 0x21C), *range(0x1E80, 0x1E86), 0x1E9E)
"""Basic Latin, Latin-1, Latin Extended-A, and what Romanian, Welsh and German add to them."""

MARKS = (*range(0x300, 0x305), *range(0x306, 0x30D), 0x323, 0x326, 0x327, 0x328)
"""Combining accents, so that text typed in decomposed form is set right."""

GREEK = tuple(map(ord, "ΔΩαβγθλμπρσφω"))

SPACES_AND_DASHES = (*range(0x2007, 0x200B), *range(0x2010, 0x2016), 0x202F, 0x2060)
"""Figure, thin and no-break spaces, the no-break hyphen, dashes, and the word joiner."""

SIGNS = tuple(map(ord, "‘’‚“”„†‡•…‰′″‹›⁄⁰⁴⁵⁶⁷⁸⁹⁻₀₁₂₃₄₅₆₇₈₉€№™Ω℃←↑→↓↔↕⇒−∅∆√∞≈≠≤≥⋅⌀■□▲△▶▼◀●○☐☑☒⚠✓✔✗"))

WANTED = frozenset((*LATIN, *MARKS, *GREEK, *SPACES_AND_DASHES, *SIGNS))

INTER_FACES = ("Inter-Regular", "Inter-Bold", "Inter-Italic")
INTER_SUFFIX = ".otf"
FALLBACK_FACE = "DejaVuSans"
"""Holds only what every Inter face lacks, so it is never chosen for running text."""
FALLBACK_SUFFIX = ".ttf"

FEATURES = ["kern", "liga", "ccmp", "mark", "mkmk", "tnum", "zero"]
LICENCE_NAMES = [13, 14]


def cut(source: Path, name: str, wanted: frozenset[int]) -> None:
    """Write the face at `source` with only the `wanted` code points, for print and for the screen."""
    options = Options(layout_features=FEATURES, hinting=False, notdef_outline=True)
    # FFTM holds the font editor's own time stamps.
    options.drop_tables = [*options.drop_tables, "FFTM"]
    options.name_IDs = [*options.name_IDs, *LICENCE_NAMES]
    font = TTFont(source, recalcTimestamp=False)
    subsetter = Subsetter(options)
    subsetter.populate(unicodes=wanted)
    subsetter.subset(font)
    font.save(HERE / "print" / (name + source.suffix))
    font.flavor = "woff2"
    font.save(HERE / "screen" / f"{name}.woff2")


def main(inter: Path, dejavu: Path) -> None:
    """Cut every face; the fallback gets what the first Inter face lacks."""
    for folder in ("print", "screen"):
        (HERE / folder).mkdir(exist_ok=True)
    for name in INTER_FACES:
        cut(inter / f"{name}{INTER_SUFFIX}", name, WANTED)
    lacking = WANTED - TTFont(inter / f"{INTER_FACES[0]}{INTER_SUFFIX}").getBestCmap().keys()
    cut(dejavu / f"{FALLBACK_FACE}{FALLBACK_SUFFIX}", FALLBACK_FACE, frozenset(lacking))


if __name__ == "__main__":
    main(Path(sys.argv[1]), Path(sys.argv[2]))
