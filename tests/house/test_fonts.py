from __future__ import annotations

import os
import re
import subprocess
import unicodedata
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from authoring.model.printable import PRINTED
from authoring.render.fonts.make import FALLBACK_FACE, FALLBACK_SUFFIX, INTER_FACES, INTER_SUFFIX, WANTED
from tests.outside_checkers.program import ROOT, program

FONTS = ROOT / "authoring/render/fonts"
PRINT = [*(f"{name}{INTER_SUFFIX}" for name in INTER_FACES), f"{FALLBACK_FACE}{FALLBACK_SUFFIX}"]

# What a workshop text cannot do without, typed here apart from the list the fonts were cut by.
NEEDED = "N·m°²³≤≥×±−µΩ→✓⚠⌀☐☑½¼€…–—‘’“”äöüßéñçøåęłżčşğıșțő\N{THIN SPACE}\N{NARROW NO-BREAK SPACE}\N{NO-BREAK SPACE}"


def characters(file: Path) -> set[str]:
    """Return every character a font file can draw."""
    return {chr(code) for code in TTFont(file).getBestCmap()}


@pytest.mark.parametrize("face", INTER_FACES)
def test_each_face_and_its_fallback_draw_all_that_is_needed(face: str) -> None:
    """No face sends a needed character to a font of the machine, in print or on the screen."""
    for folder, suffix in (("print", None), ("screen", ".woff2")):
        first = FONTS / folder / (face + (suffix or INTER_SUFFIX))
        second = FONTS / folder / (FALLBACK_FACE + (suffix or FALLBACK_SUFFIX))
        drawn = characters(first) | characters(second)
        lacking = [unicodedata.name(one) for one in sorted((set(NEEDED) | set(map(chr, WANTED))) - drawn)]
        assert lacking == []


def test_the_characters_a_text_may_hold_are_those_the_fonts_draw() -> None:
    """A text that passes the check is never an empty box on the page, and no character is refused for nothing."""
    faces = [characters(FONTS / "print" / f"{face}{INTER_SUFFIX}") for face in INTER_FACES]
    fallback = characters(FONTS / "print" / f"{FALLBACK_FACE}{FALLBACK_SUFFIX}")
    assert set(PRINTED) == set.intersection(*faces) | fallback | set("\t\n\r")


@pytest.mark.parametrize("name", PRINT)
def test_print_and_screen_have_the_same_glyphs(name: str) -> None:
    """A booklet reads alike on paper and on a screen."""
    screen = (FONTS / "screen" / name).with_suffix(".woff2")
    assert characters(FONTS / "print" / name) == characters(screen)


@pytest.mark.parametrize("face", INTER_FACES)
def test_digits_can_stand_in_columns_and_zero_apart_from_o(face: str) -> None:
    """The features for tabular digits and the slashed zero survive the cutting, and the family's name too."""
    font = TTFont(FONTS / "print" / f"{face}{INTER_SUFFIX}")
    tags = {record.FeatureTag for record in font["GSUB"].table.FeatureList.FeatureRecord}
    assert {"tnum", "zero", "ccmp"} <= tags
    assert {"kern", "mark"} <= {record.FeatureTag for record in font["GPOS"].table.FeatureList.FeatureRecord}
    assert font["name"].getDebugName(1) == "Inter"


def test_the_fallback_holds_only_what_inter_lacks() -> None:
    """The fallback draws no running text."""
    fallback = characters(FONTS / "print" / f"{FALLBACK_FACE}{FALLBACK_SUFFIX}")
    assert fallback & characters(FONTS / "print" / f"{INTER_FACES[0]}{INTER_SUFFIX}") <= {" "}


def test_every_font_file_has_its_licence_beside_it() -> None:
    """Each file belongs to one of two families, and each family's licence is there in full."""
    licences = {"Inter": "SIL OPEN FONT LICENSE", "DejaVu": "Bitstream Vera Fonts Copyright"}
    texts = {"Inter": FONTS / "OFL.txt", "DejaVu": FONTS / "DEJAVU.txt"}
    for file in (*FONTS.glob("print/*"), *FONTS.glob("screen/*")):
        family = next(name for name in licences if file.name.startswith(name))
        assert licences[family] in texts[family].read_text(encoding="utf-8")
    # The OFL's one condition on names: a subset may keep its name when none is reserved.
    owner = texts["Inter"].read_text(encoding="utf-8").splitlines()[0]
    assert owner == "Copyright 2016-2022 The Inter Project Authors"


@pytest.mark.slow
def test_the_private_font_list_holds_the_bundled_fonts_only() -> None:
    """Fontconfig, told to use our list, sees exactly the print faces, whatever the machine has installed."""
    listed = subprocess.run(
        [program("fc-list"), "--format", "%{file}\n"],
        env=os.environ | {"FONTCONFIG_FILE": str(FONTS / "fonts.conf")},
        capture_output=True,
        text=True,
        check=True,
    )
    assert sorted(re.findall(r"[^/\n]+$", listed.stdout, re.MULTILINE)) == sorted(PRINT)
