"""What goes between blocks and templates."""

from __future__ import annotations

import pytest
import tinycss2  # type: ignore[import-untyped]  # it comes without types
from hypothesis import given
from hypothesis import strategies as st
from msgspec import structs

from authoring.render.typeset import COLUMN, TALLEST, beside, crowded, css_string, may_be_opened, percents, plain, share
from tests.render.sample_parts import HUB, PLUG_TORQUE, SEAL, say

WRITABLE = st.text(st.characters(exclude_categories=["Cs", "Cc"]), max_size=60)


@given(WRITABLE)
def test_a_text_comes_back_whole_from_a_style_sheet(text: str) -> None:
    """Whatever an author writes is one string to a CSS reader (tinycss2), with the author's words in it."""
    (token,) = tinycss2.parse_component_value_list(css_string(text))
    assert token.type == "string"
    assert token.value == text


@given(WRITABLE)
def test_a_text_in_a_style_sheet_cannot_end_the_style_element(text: str) -> None:
    """Quoted for CSS, a text holds no sign that HTML would take for its own."""
    assert not set(css_string("</style>" + text)) & set("<>&")


@pytest.mark.parametrize(
    ("address", "opened"),
    [
        ("https://example.org/a?b=c", True),
        ("mailto:bench@example.org", True),
        ("HTTP://example.org", True),
        ("javascript:alert(1)", False),
        (" javascript:alert(1)", False),
        ("data:text/html,x", False),
        ("file:///etc/hosts", False),
        ("//example.org", False),
        ("http://[", False),
        ("", False),
    ],
)
def test_only_pages_and_letters_are_opened(address: str, opened: bool) -> None:  # noqa: FBT001  # a table's column
    """A link opens web pages and mail; anything that could run or reach into the machine stays plain words."""
    assert may_be_opened(address) is opened


def test_a_picture_is_never_enlarged_nor_too_tall() -> None:
    """A small picture keeps its size; a tall one is narrowed until it is as tall as allowed."""
    low = structs.replace(HUB, width=520.0, height=100.0)
    assert float(share(low)) == pytest.approx(100 * 520 / COLUMN, abs=0.1)
    tall = structs.replace(SEAL, width=300.0, height=4000.0)
    assert float(share(tall)) / 100 * COLUMN * 4000 / 300 == pytest.approx(TALLEST, rel=0.02)
    wide = structs.replace(SEAL, width=4000.0, height=300.0)
    assert share(wide) == "100.0"


def test_a_legend_stands_beside_a_narrow_picture_alone() -> None:
    """It begins right of the picture; below a wide one, and where there is no legend, nothing stands beside."""
    narrow = structs.replace(HUB, width=281.5, height=281.5)
    assert beside(narrow) == "54.0"
    assert beside(structs.replace(narrow, callouts=())) == ""
    assert beside(structs.replace(narrow, legend=False)) == ""
    assert beside(structs.replace(HUB, width=563.0, height=100.0)) == ""


def test_columns_fill_the_line() -> None:
    """Shares become percent of their sum."""
    assert percents((5, 2, 2, 1)) == ["50.0", "20.0", "20.0", "10.0"]


def test_a_long_number_is_set_smaller() -> None:
    """A number that would not fit its column in the largest type is told, in whichever unit it stands."""
    assert not crowded(PLUG_TORQUE)
    row = structs.replace(PLUG_TORQUE.rows[1], high="1 250.5")
    assert crowded(structs.replace(PLUG_TORQUE, rows=(PLUG_TORQUE.rows[0], row)))


def test_a_name_for_assistive_technology_is_plain() -> None:
    """The name of a box has the words of its row, without their setting."""
    assert plain(say("Oil tray")) == "Oil tray"
