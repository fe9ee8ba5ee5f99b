"""Drawings of marks on a clock, look-alikes to scale, and windows of a level."""

from __future__ import annotations

import pytest

from authoring.booklet.markup import said
from authoring.booklet.shapes import Dial, ToScale, Windows
from authoring.booklet.step_parts import Drawing
from tests.booklet.drawn_booklet import drawings

FIT = """\
sections:
  - title: Fit
    steps:
      - step: Fit it.
        do:
"""
FEATURES = """\
features:
  brake:
    name: parking brake
    tell: Look behind the rear wheel.
    values: {drum: drum brake, disc: disc brake, belt: belt brake}
"""


def plainly(drawing: Drawing) -> list[str]:
    """Return the title, the alternative text and the notes with ordinary spaces."""
    return [text.replace("\u00a0", " ") for text in (drawing.title, drawing.alt, *map(said, drawing.notes))]


# --- a mark on the face of a clock ----------------------------------------------------------------------


def dials(*orientations: str, equipment: str = "") -> list[Drawing]:
    """Return the drawings of a step that fits the drop box once for each orientation."""
    acts = "".join(f"          - fit: {{what: drop-box, orientation: {{{one}}}}}\n" for one in orientations)
    return drawings(equipment=equipment, procedure=FIT + acts)


@pytest.mark.parametrize(
    ("hour", "degrees", "words"),
    [("12", 0, "at 12 o'clock"), ("3", 90, "at 3 o'clock"), ("7:30", 225, "at 7:30 on the face of a clock")],
)
def test_a_mark_on_a_clock_is_drawn_and_said(hour: str, degrees: float, words: str) -> None:
    """An hour is 30 degrees clockwise from the top."""
    [dial] = dials(f'mark: the cast arrow, clock: "{hour}", seen-from: "behind, standing in the pit"')
    assert dial.shape == Dial(degrees)
    assert plainly(dial) == [
        f"The cast arrow {words}",
        f"Drawing of the face of a clock: the cast arrow {words}. Seen from behind, standing in the pit.",
        "Seen from behind, standing in the pit.",
    ]


def test_without_a_mark_the_part_itself_is_named_and_the_viewpoint_holds() -> None:
    """What is turned stands for its mark, and the viewpoint of the machine for that of the step."""
    [dial] = dials('clock: "6"', equipment="viewpoint: seen from the seat, looking forward\n")
    assert plainly(dial)[0] == "The drop box at 6 o'clock"
    assert plainly(dial)[2] == "Seen from the seat, looking forward."
    assert plainly(dials('clock: "6"')[0])[1] == "Drawing of the face of a clock: the drop box at 6 o'clock."


def test_a_dial_is_drawn_once_and_only_for_a_clock() -> None:
    """Two acts with one orientation share the drawing; a side has none."""
    one = 'mark: the arrow, clock: "6", seen-from: behind'
    assert len(dials(one, one)) == 1
    assert len(dials(one, one.replace("6", "9"))) == 2
    assert dials("mark: the arrow, side: left, seen-from: behind") == []


# --- look-alikes to scale -------------------------------------------------------------------------------

STOCK = """\
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  thin: {name: thin seal, number: FL-P-061}
  thick: {name: thick seal, number: FL-P-062}
  brown: {name: brown seal, number: FL-P-063}
"""
CHOICE = """\
choices:
  seal:
    name: output seal
    question: Which brake does the machine have?
    %s
    parts:
      - {part: thin, when: {brake: drum}, %s, equal: [brown], tell: Look.}
      - {part: thick, when: {brake: disc}, %s, tell: Look.}
"""
NOTHING = "no size"
DECIDES = "dimensions: {width: {name: width of the ring, decides: true}, lip: {name: lip, decides: false}}"


def look_alikes(first: str, second: str, dimensions: str = "", brake: str = "") -> list[Drawing]:
    """Return the drawings of a choice between two parts that say their sizes so."""
    procedure = CHOICE % (dimensions or "if-wrong: It leaks.", first, second)
    procedure = procedure.replace(f", {NOTHING}", "") + FIT + "          - fit: seal\n"
    return drawings({"brake": brake} if brake else {}, stock=STOCK, equipment=FEATURES, procedure=procedure)


def size(value: str) -> str:
    """Return a single size."""
    return f"size: {{value: {value}, source: bench-book, at: line 9}}"


def sizes(width: str, lip: str) -> str:
    """Return a size in each of two dimensions."""
    told = {"width": width, "lip": lip}
    return f"sizes: {{{', '.join(f'{name}: {{value: {value}, source: bench-book}}' for name, value in told.items())}}}"


def to_scale(drawing: Drawing) -> ToScale:
    """Return the bars of a drawing to scale."""
    assert isinstance(drawing.shape, ToScale)
    return drawing.shape


def test_look_alikes_are_drawn_at_their_real_size() -> None:
    """A millimetre is a millimetre of paper, and the scale bar says how to see that; equal parts share a bar."""
    [drawing] = look_alikes(size("9.0 ± 0.3 mm"), size("13.0 ± 0.3 mm"))
    shape = to_scale(drawing)
    assert [(one.words, one.right) for one in shape.bars] == [("FL-P-061 or FL-P-063", True), ("FL-P-062", True)]
    assert [length for one in shape.bars for length in (one.low, one.high)] == pytest.approx([8.7, 9.3, 12.7, 13.3])
    assert (shape.rule, shape.reads) == (20, "20 mm")
    assert plainly(drawing) == [
        "Output seal: size",
        "Drawing to scale of the size: FL-P-061 or FL-P-063: 9.0 mm ± 0.3 mm; FL-P-062: 13.0 mm ± 0.3 mm.",
        "Real size, 1:1, on paper that was printed without scaling: the scale bar is then 20 mm long.",
    ]


def test_of_several_dimensions_the_deciding_one_is_drawn() -> None:
    """The lip differs as well, and decides nothing."""
    [drawing] = look_alikes(sizes("19 mm", "4 mm"), sizes("17 mm", "5 mm"), DECIDES)
    assert drawing.title == "Output seal: width of the ring"
    assert [(one.low, one.high) for one in to_scale(drawing).bars] == [(19, 19), (17, 17)]


def test_the_part_of_another_vehicle_stays_in_sight_and_says_so() -> None:
    """It may lie in the same drawer; the right one stands first."""
    [drawing] = look_alikes(size("9 mm"), size("13 mm"), brake="disc")
    assert [(one.words, one.right) for one in to_scale(drawing).bars] == [
        ("FL-P-062", True),
        ("NOT THIS ONE: FL-P-061 or FL-P-063", False),
    ]


@pytest.mark.parametrize(
    ("first", "second", "scale", "rule"),
    [
        ("80 mm", "40 mm", "Real size, 1:1", "20 mm"),
        ("81 mm", "40 mm", "Scale 1:2", "50 mm"),
        ("900 mm", "850 mm", "Scale 1:20", "500 mm"),
        ("9 m", "850 mm", "Scale 1:200", "5000 mm"),
        ("2.0 mm", "1.5 mm", "Scale 10:1", "2 mm"),
        ("0.5 in", "0.4 in", "Real size, 1:1", "20 mm"),
        ("0.05 mm", "0.04 mm", "Scale 500:1", "0.05 mm"),
    ],
)
def test_the_scale_is_a_usual_one(first: str, second: str, scale: str, rule: str) -> None:
    """Preferred scales of ISO 5455:1979, from memory: 1, 2 and 5 times a power of ten, either way."""
    [drawing] = look_alikes(size(first), size(second))
    assert plainly(drawing)[2].startswith(f"{scale}, on paper")
    shape = to_scale(drawing)
    assert shape.reads == rule
    assert 8 <= max(one.high for one in shape.bars) <= 80
    assert 10 <= shape.rule <= 30


@pytest.mark.parametrize(
    ("first", "second"),
    [("0.000001 mm", "0.000002 mm"), ("1000000000 m", "2000000000 m"), ("1000000000 m", "0.0001 mm")],
)
def test_no_size_leaves_the_paper(first: str, second: str) -> None:
    """Whatever the sizes, the bars and the scale bar fit the line."""
    shape = to_scale(look_alikes(size(first), size(second))[0])
    assert max(shape.rule, *(one.high for one in shape.bars)) <= 80
    assert shape.rule > 1


@pytest.mark.parametrize(
    ("first", "second"),
    [
        (NOTHING, NOTHING),
        (size("9 mm"), NOTHING),
        (size("9 mm"), size("9 mm")),
        (size("at least 9 mm"), size("at most 8 mm")),
        (size("9 N·m"), size("8 N·m")),
    ],
)
def test_what_cannot_be_compared_is_not_drawn(first: str, second: str) -> None:
    """Nothing measured, one alone, two of one size, open ends, and what is no length."""
    assert look_alikes(first, second) == []


# --- windows of a level ---------------------------------------------------------------------------------

LEVELS = """\
fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil of our grade 2
    circuit: {name: cooler, opens: 58 to 62 °C, source: plate, at: line 7, when: {brake: disc}}
values:
  window:
    name: temperature of the oil
    windows:
      - {value: 30 to 40 °C, source: plate, at: line 5, when: {brake: [drum, belt]}, why: It is cool.}
      - {value: 65 to 75 °C, source: plate, at: line 6, why: All is full.}
"""
LOOK = """\
sections:
  - title: Look
    steps:
      - step: Look at the level of the [box-oil] at [window].
        needs: {box-oil: window}
        do:
          - inspect: {what: box-oil, outcomes: [{found: Full., then: go-on}, {found: Low., then: stop}]}
"""


def levels(*changes: tuple[str, str], brake: str = "", look: str = LOOK) -> list[Drawing]:
    """Return the drawings of a level after changes in the equipment."""
    text = FEATURES + LEVELS
    for old, new in changes:
        assert old in text
        text = text.replace(old, new)
    return drawings({"brake": brake} if brake else {}, equipment=text, procedure=look)


def lanes(drawing: Drawing) -> Windows:
    """Return the windows of a drawing of temperatures."""
    assert isinstance(drawing.shape, Windows)
    return drawing.shape


def test_each_kind_of_vehicle_has_a_lane_and_its_thermostat() -> None:
    """On 80 mm from 20 to 80 °C three degrees are 4 mm: 65 °C lies at 60 mm, and 62 °C at 56 mm."""
    [drawing] = levels()
    shape = lanes(drawing)
    assert shape.ticks == tuple((round(80 / 6 * at, 2), str(20 + 10 * at)) for at in range(7))
    assert [one.words for one in shape.lanes] == [
        "parking brake: drum brake or belt brake",
        "parking brake: disc brake",
    ]
    bands = [[(band.low, band.high) for band in one.bands] for one in shape.lanes]
    assert bands == [[(13.33, 26.67), (60, 73.33)], [(60, 73.33)]]
    assert [(one.shut, one.open) for one in shape.lanes] == [(0, 0), (50.67, 56)]
    assert plainly(drawing) == [
        "Temperature of the oil",
        (
            "Drawing of the temperatures at which the level counts. "
            "parking brake: drum brake or belt brake: 30 °C to 40 °C or 65 °C to 75 °C. "
            "parking brake: disc brake: 65 °C to 75 °C; the cooler opens at 58 °C to 62 °C."
        ),
        "Scale in °C. A frame is a window in which the level counts.",
        "Hatched: the cooler is shut or only opening, and what it holds is missing from the level.",
    ]


@pytest.mark.parametrize(
    ("second", "opens"),
    [("65000000 to 750000000 °C", "58 to 62 °C"), ("at least 65 °C", "58 °C"), ("65 to 75 °C", "at least 58 °C")],
)
def test_no_temperature_leaves_the_scale(second: str, opens: str) -> None:
    """Open and far ends lie at the ends of the scale, whose numbers stay few enough to be read."""
    shape = lanes(levels(("65 to 75 °C", second), ("58 to 62 °C", opens))[0])
    assert 3 <= len(shape.ticks) <= 8
    edges = [edge for lane in shape.lanes for band in lane.bands for edge in (band.low, band.high)]
    assert [edge for edge in (*edges, shape.lanes[1].shut, shape.lanes[1].open) if not 0 <= edge <= shape.width] == []


def test_one_vehicle_has_one_lane_without_a_name() -> None:
    """The booklet for one vehicle shows its windows alone; without a thermostat nothing is hatched."""
    [drawing] = levels(brake="drum")
    assert [(one.words, len(one.bands), one.open) for one in lanes(drawing).lanes] == [("", 2, 0)]
    assert len(drawing.notes) == 1


def test_a_temperature_that_no_level_goes_by_says_nothing_of_one() -> None:
    """Its windows are drawn all the same, without a circuit that has nothing to do with it."""
    warm = "        do: [{run: {what: drop-box, until: window}}]\n"
    [drawing] = levels(look=LOOK[: LOOK.index("        needs:")].replace("[box-oil] at ", "") + warm)
    assert plainly(drawing)[1].startswith("Drawing of the temperatures that will do. parking brake: ")
    assert plainly(drawing)[2:] == ["Scale in °C. A frame is a window that will do."]
    assert [one.open for one in lanes(drawing).lanes] == [0, 0]


def test_a_single_window_needs_no_drawing() -> None:
    """The sentence says it; and what is no temperature has no place on the scale."""
    first = "      - {value: 30 to 40 °C, source: plate, at: line 5, when: {brake: [drum, belt]}, why: It is cool.}\n"
    assert levels((first, "")) == []
    assert levels(("30 to 40 °C", "30 to 40 mm"), ("65 to 75 °C", "65 to 75 mm")) == []
