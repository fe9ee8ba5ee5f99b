"""The safety signs and the colours of the signal words."""

from __future__ import annotations

import re
from base64 import b64decode
from itertools import pairwise
from pathlib import Path
from xml.etree import ElementTree as ET

import pytest

from authoring.model.language.safety import SIGNS
from authoring.render import signs
from authoring.render.typeset import HERE

MANDATORY = {"eye-protection", "gloves"}


def luminance(colour: str) -> float:
    """Return the relative luminance of #rgb or #rrggbb: WCAG 2.2, definition of relative luminance."""
    digits = colour[1:] if len(colour) == 7 else "".join(2 * one for one in colour[1:])
    shares = [int(digits[at : at + 2], 16) / 255 for at in (0, 2, 4)]
    red, green, blue = (one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in shares)
    return 0.2126 * red + 0.7152 * green + 0.0722 * blue


def contrast(one: str, other: str) -> float:
    """Return the contrast ratio of two colours: WCAG 2.2, definition of contrast ratio."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_luminance_knows_its_ends() -> None:
    """Black on white has the greatest ratio there is, 21 to 1 (WCAG 2.2)."""
    assert contrast("#000", "#ffffff") == pytest.approx(21)


def test_each_sign_an_author_may_name_is_drawn() -> None:
    """The language offers exactly the signs that there are drawings of."""
    assert sorted(SIGNS) == sorted(signs.NAMES)


@pytest.mark.parametrize("name", signs.NAMES)
def test_a_sign_is_a_picture_in_the_shape_of_its_kind(name: str) -> None:
    """A sign is sound SVG that asks for nothing: a warning begins with the triangle, a demand with the disc."""
    drawing = ET.fromstring(signs.sign_svg(name))  # noqa: S314  # our own drawing
    first = drawing[0]
    assert first.tag.endswith("circle" if name in MANDATORY else "path")
    assert len(drawing) > 1
    assert "href" not in signs.sign_svg(name)
    assert b64decode(signs.sign_address(name).partition(",")[2]).decode() == signs.sign_svg(name)


def test_no_two_signs_are_alike() -> None:
    """Each name has a drawing of its own."""
    assert len({signs.sign_svg(name) for name in signs.NAMES}) == len(signs.NAMES)


def fills(sheet: str) -> list[str]:
    """Return the colours of the bars of DANGER, WARNING and CAUTION, and of paper for NOTICE, from a style sheet."""
    text = (HERE / "styles" / sheet).read_text(encoding="utf-8")
    found = []
    for word in ("danger", "warning", "caution"):
        rule = re.search(rf"^\.{word} \.signal[^{{]*\{{[^}}]*background-color: (#[0-9a-f]+)", text, re.MULTILINE)
        assert rule is not None, word
        found.append(rule[1])
    return [*found, "#fff"]


@pytest.mark.parametrize("sheet", ["screen.css", "paged.css"])
def test_the_bars_differ_without_colour(sheet: str) -> None:
    """In grey each bar is at least 1.4 to 1 lighter than the bar of the next graver word (our own threshold)."""
    for graver, milder in pairwise(fills(sheet)):
        assert luminance(milder) > luminance(graver)
        assert contrast(graver, milder) > 1.4


@pytest.mark.parametrize("sheet", ["screen.css", "paged.css"])
def test_the_words_stand_out_from_their_bars(sheet: str) -> None:
    """Each signal word has at least 4.5 to 1 against its bar (WCAG 2.2, 1.4.3)."""
    for fill, ink in zip(fills(sheet), ["#fff", "#161616", "#161616", "#005387"], strict=True):
        assert contrast(fill, ink) >= 4.5


@pytest.mark.parametrize("sheet", ["screen.css", "paged.css"])
def test_the_frames_differ_in_weight(sheet: str) -> None:
    """The graver the word, the heavier its frame."""
    text = Path(HERE / "styles" / sheet).read_text(encoding="utf-8")
    weights = [
        float(re.findall(rf"^\.{word} \{{ border-width: ([\d.]+)(?:pt|px)", text, re.MULTILINE)[0])
        for word in ("danger", "warning", "caution", "notice")
    ]
    assert weights[:3] == sorted(weights[:3], reverse=True)
    assert len(set(weights[:3])) == 3
    assert weights[3] <= weights[2]
