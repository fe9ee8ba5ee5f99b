"""Drawings as lines and letters: inside their frame, large enough, black on white, and true to scale on paper."""

from __future__ import annotations

import io
import re
from functools import cache
from itertools import groupby
from pathlib import Path
from xml.etree import ElementTree as ET
from xml.etree.ElementTree import Element

import pikepdf
import pytest
from fontTools.ttLib import TTFont
from msgspec import structs
from PIL import Image

import authoring
from authoring.booklet.blocks import Chapter
from authoring.booklet.shapes import Band, BoltPattern, Dial, Disc, Lane, Windows
from authoring.booklet.step_parts import Drawing, Step
from authoring.render.drawings.drawn import drawn
from authoring.render.drawings.svg import hatching, lines_of
from authoring.render.paged import as_paged_html
from authoring.render.pdf import as_pdf
from tests.outside_checkers.pdf_text import pdf_text
from tests.outside_checkers.program import output, program
from tests.render.altered import altered
from tests.render.sample import sample
from tests.render.sample_drawings import FACE, LEVEL_AT, PATTERN, ROW, SEALS, STRIP
from tests.render.sample_parts import say

EACH = pytest.mark.parametrize(
    "drawing", [pytest.param(one, id=one.title) for one in (PATTERN, ROW, FACE, SEALS, LEVEL_AT, STRIP)]
)
FONTS = Path(authoring.__file__).parent / "render" / "fonts" / "screen"
SVG = "{http://www.w3.org/2000/svg}"
Place = tuple[float, float]


def parsed(drawing: Drawing) -> Element:
    """Return a drawing as a reader of XML sees it."""
    text = str(drawn(drawing)).replace("<svg ", '<svg xmlns="http://www.w3.org/2000/svg" ', 1)
    return ET.fromstring(text)  # noqa: S314  # our own drawing


@cache
def font(*, bold: bool) -> TTFont:
    """Return the booklet's own type."""
    return TTFont(FONTS / f"Inter-{'Bold' if bold else 'Regular'}.woff2")


def numbers(one: Element, *names: str) -> list[float]:
    """Return attributes as numbers."""
    return [float(one.get(name, "0")) for name in names]


def span(text: Element) -> tuple[Place, Place]:
    """Return the upper left and lower right of a text's digits and capitals, by the widths in the font itself."""
    x, y, size = numbers(text, "x", "y", "font-size")
    type_ = font(bold=text.get("font-weight") == "700")
    names, unit = type_.getBestCmap(), type_["head"].unitsPerEm
    width = sum(type_["hmtx"][names[ord(one)]][0] for one in text.text or "") * size / unit
    left = x - width * {"start": 0.0, "middle": 0.5, "end": 1.0}[text.get("text-anchor", "start")]
    return (left, y - type_["OS/2"].sCapHeight * size / unit), (left + width, y)


def corners(one: Element) -> list[Place]:
    """Return the extreme points of an element."""
    kind = one.tag.removeprefix(SVG)
    if kind == "text":
        return list(span(one))
    if kind == "circle":
        x, y, radius = numbers(one, "cx", "cy", "r")
        return [(x - radius, y - radius), (x + radius, y + radius)]
    if kind == "rect":
        x, y, width, height = numbers(one, "x", "y", "width", "height")
        return [(x, y), (x + width, y + height)]
    if kind == "line":
        x1, y1, x2, y2 = numbers(one, "x1", "y1", "x2", "y2")
        return [(x1, y1), (x2, y2)]
    points = (pair.split(",") for pair in one.get("points", "").split())
    return [(float(x), float(y)) for x, y in points]


@EACH
def test_nothing_leaves_the_frame(drawing: Drawing) -> None:
    """Lines and letters, measured with the widths of the font, lie inside the drawing."""
    svg = parsed(drawing)
    _, _, width, height = (float(one) for one in (svg.get("viewBox") or "").split())
    assert (svg.get("width"), svg.get("height")) == (f"{width:g}mm", f"{height:g}mm")
    assert width <= 160
    places = [place for one in svg if not one.tag.endswith("title") for place in corners(one)]
    assert len(places) > 10
    assert [place for place in places if not (0 <= place[0] <= width and 0 <= place[1] <= height)] == []


@EACH
def test_digits_are_at_least_two_and_a_half_millimetres_high(drawing: Drawing) -> None:
    """The height of a capital, and so of a digit in this font, is read in the font."""
    heights = [below - top for (_, top), (_, below) in map(span, parsed(drawing).iter(f"{SVG}text"))]
    assert heights
    assert min(heights) >= 2.5


@EACH
def test_a_drawing_is_black_on_white(drawing: Drawing) -> None:
    """Every colour is a grey, so that a copy loses nothing."""
    colours = {
        colour for one in parsed(drawing).iter() for name in ("fill", "stroke") if (colour := one.get(name)) is not None
    }
    assert colours >= {"#161616"}
    greys = re.compile(r"none|#([0-9a-f]{1,2})\1\1")
    assert [one for one in colours if not greys.fullmatch(one)] == []


@EACH
def test_a_drawing_has_its_words(drawing: Drawing) -> None:
    """It is one picture with one name to whoever cannot see it."""
    svg = parsed(drawing)
    assert svg.get("role") == "img"
    assert svg[0].tag == f"{SVG}title"
    assert svg[0].text == drawing.alt


def texts(drawing: Drawing) -> list[Element]:
    """Return the texts of a drawing."""
    return list(parsed(drawing).iter(f"{SVG}text"))


@pytest.mark.parametrize("turn", [1, 9, 10, 28])
@pytest.mark.parametrize("radius", [2.7, 3.6])
def test_a_turn_fits_its_circle(turn: int, radius: float) -> None:
    """The corners of the number lie inside of the circle, by the widths in the font."""
    pattern = BoltPattern(20, 20, 10, 12, 0, radius, (Disc(10, 12, turn),))
    number = next(one for one in texts(structs.replace(PATTERN, shape=pattern)) if one.text == str(turn))
    for x, y in span(number):
        assert ((x - 10) ** 2 + (y - 12) ** 2) ** 0.5 < radius


def test_the_first_is_black_and_has_a_white_number() -> None:
    """The eye finds where to begin."""
    discs = [one for one in parsed(PATTERN).iter(f"{SVG}circle") if one.get("fill") != "none"]
    assert [one.get("fill") for one in discs] == ["#161616", "#fff", "#fff", "#fff"]
    told = {one.text: one.get("fill") for one in texts(PATTERN)}
    assert (told["1"], told["2"], told["12"]) == ("#fff", "#161616", "#161616")


@pytest.mark.parametrize(("degrees", "side"), [(0, (0, -1)), (90, (1, 0)), (180, (0, 1)), (270, (-1, 0))])
def test_a_dial_points_where_it_is_told(degrees: float, side: Place) -> None:
    """The tip of the arrow lies right, below, left of and above the middle, and runs over no number."""
    dial = structs.replace(FACE, shape=Dial(degrees))
    [arrow] = parsed(dial).iter(f"{SVG}polygon")
    middle = 16.0
    away = [(x - middle, y - middle) for x, y in corners(arrow)]
    tip = max(away, key=lambda one: one[0] ** 2 + one[1] ** 2)
    assert tip[0] * side[0] + tip[1] * side[1] == pytest.approx(10.7, abs=0.01)
    boxes = [span(one) for one in texts(dial)]
    points = [(x + middle, y + middle) for x, y in away]
    assert not any(left <= x <= right and top <= y <= below for x, y in points for (left, top), (right, below) in boxes)


def test_words_of_windows_that_lie_close_do_not_meet() -> None:
    """The second stands in a row of its own; where there is room, they share the row."""
    spans = [span(one) for one in texts(LEVEL_AT) if one.get("font-weight") == "700"]
    assert len(spans) == 3
    for at, ((left, top), (right, below)) in enumerate(spans):
        for (other_left, other_top), (other_right, other_below) in spans[:at]:
            assert right < other_left or other_right < left or below < other_top or other_below < top
    apart = Windows(110, (Lane("", (Band(0, 20, "1 °C"), Band(80, 90, "9 °C"))),), ((0, "0 °C"),))
    heights = {span(one)[1][1] for one in texts(structs.replace(LEVEL_AT, shape=apart)) if one.get("font-weight")}
    assert len(heights) == 1


@pytest.mark.parametrize(("width", "height"), [(40, 9), (3, 9), (9, 9), (0.5, 0.5)])
def test_hatching_fills_its_box_and_no_more(width: float, height: float) -> None:
    """Every line rises at 45 degrees from one edge of the box to another."""
    lines = [ET.fromstring(one) for one in hatching(5, 7, width, height)]  # noqa: S314  # our own lines
    assert len(lines) == len([shift for shift in range(2, 100, 2) if shift < width + height])
    for one in lines:
        x1, y1, x2, y2 = numbers(one, "x1", "y1", "x2", "y2")
        assert x2 - x1 == pytest.approx(y1 - y2, abs=0.02)
        assert x1 == pytest.approx(5) or y1 == pytest.approx(7 + height)
        assert x2 == pytest.approx(5 + width) or y2 == pytest.approx(7)


def test_a_long_text_takes_several_lines() -> None:
    """Short words stay as they are, blanks and all; of long ones none is lost."""
    assert lines_of("a  b", 40) == ["a  b"]
    long = "only parking brake: drum brake or belt brake; axle: wide or narrow axle"
    lines = lines_of(long, 60)
    assert len(lines) > 1
    assert " ".join(lines) == long


def test_bars_begin_at_one_edge_and_are_as_long_as_they_say() -> None:
    """Frames, dimension lines and scale bar are as long as the shape says; the guide stands where the shortest ends."""
    svg = parsed(SEALS)
    widths = [numbers(one, "x", "width") for one in svg.iter(f"{SVG}rect")]
    assert widths == [[0.5, 8], [0.5, 10], [0.5, 10], [10.5, 10]]
    lines = [numbers(one, "x1", "x2", "y1", "y2") for one in svg.iter(f"{SVG}line")]
    assert [x2 - x1 for x1, x2, y1, y2 in lines if y1 == y2] == [8, 10]
    [guide] = [one for one in svg.iter(f"{SVG}line") if one.get("stroke-dasharray")]
    assert numbers(guide, "x1", "x2") == [8.5, 8.5]


def test_a_stint_lies_where_its_steps_are() -> None:
    """Right of the words, from edge to edge as the shape says; what is made safe is grey, all else hatched."""
    svg = parsed(STRIP)
    boxes = [(*numbers(one, "x", "width"), one.get("fill")) for one in svg.iter(f"{SVG}rect")]
    assert boxes == [
        (61.8, 82.4, "#d9d9d9"),
        (52, 8.5, "#fff"),
        (145.5, 8.5, "#fff"),
        (87.3, 5.5, "#d9d9d9"),
    ]
    rising = [one for one in svg.iter(f"{SVG}line") if numbers(one, "y1")[0] > numbers(one, "y2")[0]]
    assert rising
    assert all(52 <= x <= 60.51 or 145.49 <= x <= 154.01 for one in rising for x in numbers(one, "x1", "x2"))


def test_a_long_track_takes_room_for_all_its_words() -> None:
    """The tracks follow one another, and no words of one run into another or into the stints."""
    spans = [span(one) for one in texts(STRIP)]
    assert len(spans) == 5 + 3
    for at, ((left, top), (right, below)) in enumerate(spans):
        assert right <= 52 or top > max(numbers(one, "y")[0] for one in parsed(STRIP).iter(f"{SVG}rect"))
        for (other_left, other_top), (other_right, other_below) in spans[:at]:
            assert right < other_left or other_right < left or below < other_top or other_below < top


def page(*drawings: Drawing) -> bytes:
    """Return a PDF whose only step shows drawings."""
    step = Step("s1", "1", "", (), say("Look."), drawings)
    content, broken = as_pdf(structs.replace(sample(), chapters=(Chapter("c", "1", "Look", 1, (step,)),)))
    assert broken == []
    return content


def test_a_length_is_true_on_paper(tmp_path: Path) -> None:
    """Measured in the picture that another program (pdftoppm of Poppler) makes: a bar of 8 mm is 8 mm wide.

    At 254 dots an inch a millimetre has 10. Half of the frame's half millimetre lies inside on either side.
    """
    file = tmp_path / "scale.pdf"
    file.write_bytes(page(SEALS))
    assert output(program("pdftoppm"), "-r", "254", "-png", file, tmp_path / "page").returncode == 0
    runs = set()
    for shot in tmp_path.glob("page*.png"):
        picture = Image.open(io.BytesIO(shot.read_bytes())).convert("L")
        grey = (0xD9).__eq__
        for y in range(0, picture.height, 5):
            row = picture.crop((0, y, picture.width, y + 1)).tobytes()
            runs |= {len(list(run)) for same, run in groupby(row, grey) if same}
    assert max(runs) == pytest.approx(80 - 5, abs=2)


def test_a_drawing_is_a_figure_with_its_words_in_the_file(tmp_path: Path) -> None:
    """The tags of the PDF (read by pikepdf) hold a figure for each drawing, whose words are those of the drawing."""
    file = tmp_path / "tags.pdf"
    file.write_bytes(page(PATTERN, FACE))
    with pikepdf.open(file) as pdf:
        tags = [one for one in pdf.objects if isinstance(one, pikepdf.Dictionary)]
        found = [one.get("/Alt") for one in tags if one.get("/S") == "/Figure"]
    assert {str(one) for one in found} >= {PATTERN.alt, FACE.alt}
    assert any("Order of tightening: wheel nuts" in text for text in pdf_text(file))


def test_no_element_of_a_page_gets_into_a_drawing() -> None:
    """A long word in a drawing is no place to break a line: a span would end the drawing there, and lose the rest."""
    long = altered(SEALS, lambda _: "x" * 60)
    step = Step("s1", "1", "", (), say("Look."), (long,))
    page = as_paged_html(structs.replace(sample(), chapters=(Chapter("c", "1", "Look", 1, (step,)),)))
    assert str(drawn(long)) in page
    assert 'class="long"' in page
