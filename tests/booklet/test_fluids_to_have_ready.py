"""The list of fluids to have ready: how much of each, and nothing counted twice."""

from __future__ import annotations

import re

from authoring.booklet.blocks import Booklet, Table
from authoring.booklet.markup import said
from authoring.diagnostics.diagnostic import Severity
from authoring.pipeline import check, compose
from tests.booklet.test_fluids_at_steps import DRAIN, LEVEL, OIL, fill
from tests.rules.overlay import overlay

VALUES = """values:
  about: {name: amount to be expected, value: 1.0 to 1.1 L, source: plate, at: line 9}
  first: {name: first amount, value: 0.8 L, source: plate, at: line 9}
  rinse: {name: amount for rinsing, value: 2.0 L, source: plate, at: line 9}
"""


def amount(steps: str) -> str:
    """Return how much oil the list of a job with these steps asks for, in the first unit alone."""
    text = f"needs: {{level-plug: removed}}\n{VALUES}sections:\n  - title: Fill\n    steps:\n{steps}"
    checked = check(overlay([("equipment", OIL), ("procedure", text)]).files, [])
    assert [one.message for one in checked.findings if one.severity is Severity.ERROR] == []
    (row,) = _fluids(compose(checked, "FL-110", {})).rows
    return re.sub(r" \([^)]* US qt\)", "", said(row[2].text).replace("\N{NO-BREAK SPACE}", " "))


def _fluids(booklet: Booklet) -> Table:
    (found,) = (
        block
        for chapter in booklet.chapters
        for block in chapter.blocks
        if isinstance(block, Table) and block.id == "fluids"
    )
    return found


def test_what_a_level_is_expected_to_take_is_brought() -> None:
    """A level that states what it takes does not leave the reader with the level alone."""
    assert amount(LEVEL) == "1.0 L to 1.1 L, as the level needs"


def test_a_first_filling_is_part_of_what_is_expected_in_all() -> None:
    """Of 0.8 L and 1.0 L to 1.1 L in all, no more than 1.1 L is brought."""
    assert amount(DRAIN + fill("first") + LEVEL) == "1.0 L to 1.1 L, as the level needs"


def test_what_was_drained_again_is_no_part_of_it() -> None:
    """The oil that rinses the box runs out; what fills it comes on top."""
    steps = DRAIN + fill("rinse") + DRAIN + fill("first") + LEVEL
    assert amount(steps) == "2.0 L, then 1.0 L to 1.1 L, as the level needs"
    drawn = "      - step: Draw the [box-oil] out.\n        do: [{extract: box-oil}]\n"
    assert amount(DRAIN + fill("rinse") + drawn + LEVEL) == "2.0 L, then 1.0 L to 1.1 L, as the level needs"


def test_a_filling_of_machines_without_the_level_stays_in_the_list() -> None:
    """Where only the disc brake has the level, the others still need their filling."""
    disc = LEVEL.replace("        do:", "        when: {brake: disc}\n        do:")
    assert amount(DRAIN + fill("first") + disc) == "0.8 L, then 1.0 L to 1.1 L in all, as the level needs"
    both = fill("first", "        when: {brake: disc}\n")
    drained = DRAIN.replace("        do:", "        when: {brake: disc}\n        do:")
    assert amount(drained + both + disc) == "1.0 L to 1.1 L, as the level needs"


def test_a_filling_after_the_level_comes_on_top() -> None:
    """What is poured once the level was reached, and some was drawn out again, is no part of it."""
    drawn = "      - step: Draw out [first] of [box-oil].\n        do: [{extract: {what: box-oil, amount: first}}]\n"
    assert amount(DRAIN + LEVEL + drawn + fill("first")) == "1.0 L to 1.1 L, as the level needs, then 0.8 L"
