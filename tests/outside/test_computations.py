"""The page of computations is what its generator writes, and each docstring has what the page needs."""

from __future__ import annotations

import itertools
import re

import pytest
from markdown_it import MarkdownIt

from authoring.workshop.confirmed import KINDS
from tests.outside.computations import ELSEWHERE, FILE, GROUPS, page
from tests.outside.explained import LABELS, Explained, computations, explained
from tests.outside.kept import every_row

ALL = list(computations())
PAGE = page()
_ADVICE = "write it anew with ./run computations"


def test_the_committed_page_is_what_the_generator_writes() -> None:
    """Nobody edits the page by hand, and no change of a docstring or a kept value leaves it behind."""
    assert FILE.read_text(encoding="utf-8") == PAGE, _ADVICE


@pytest.mark.parametrize("one", ALL, ids=lambda one: one.name)
def test_each_computation_says_what_it_is(one: Explained) -> None:
    """A question, a formula or a table, its symbols, where it is from, what it assumes and where it ends."""
    assert "?" in one.question
    assert ("Formula" in one.parts) or ("Table" in one.parts)
    assert {"Symbols", "Source", "Assumptions", "Limits"} <= set(one.parts)
    assert all(any(lines) for lines in one.parts.values())


@pytest.mark.parametrize("one", ALL, ids=lambda one: one.name)
def test_the_parts_of_a_docstring_stand_in_one_order(one: Explained) -> None:
    """The reader of one finds their way in all."""
    assert list(one.parts) == [label for label in LABELS if label in one.parts]


@pytest.mark.parametrize("one", ALL, ids=lambda one: one.name)
def test_each_symbol_says_what_it_stands_for(one: Explained) -> None:
    """A line of symbols has a name and a meaning, and a number among them has its unit or says that it is a share."""
    for line in one.parts["Symbols"]:
        name, colon, meaning = line.partition(": ")
        assert name
        assert colon, line
        assert meaning


def test_every_computation_stands_on_the_page_once() -> None:
    """Each module is in one group, and each computation that is known has its rows shown."""
    grouped = [name for names in GROUPS.values() for name in names]
    assert sorted(grouped) == [one.name for one in ALL]
    assert {name for name in KINDS if name.partition(".")[0] not in grouped} == set(ELSEWHERE)


def test_every_source_stands_on_the_page() -> None:
    """Whoever doubts a value finds where it is from."""
    assert [row["id"] for row in every_row() if f"| {row['status']} | {row['source']} |" not in PAGE] == []


def test_every_row_of_a_table_has_its_columns() -> None:
    """No source and no docstring has a sign in it that would end a cell; another reader finds as many tables."""
    runs = itertools.groupby(PAGE.splitlines(), key=lambda line: line.startswith("|"))
    tables = [list(lines) for in_a_table, lines in runs if in_a_table]
    assert [lines for lines in tables if len({line.count("|") for line in lines}) > 1] == []
    tokens = MarkdownIt("commonmark").enable("table").parse(PAGE)
    assert sum(token.type == "table_open" for token in tokens) == len(tables)


def test_every_link_of_the_page_leads_somewhere() -> None:
    """The overview's links are headings of the page."""
    headings = {line[4:].lower().replace(" ", "-") for line in PAGE.splitlines() if line.startswith("### ")}
    links = re.findall(r"\]\(#([^)]+)\)", PAGE)
    assert len(links) == len(ALL)
    assert set(links) == headings


def test_a_docstring_is_read_by_its_labels() -> None:
    """What stands before the first label is the question, and a part goes on to the next label."""
    told = explained(
        "one", "How long?\n\nFormula:\n    a = b\n    c = d\n\nSource: a book.\nAnd more of it.\n\nLimits: none.\n"
    )
    assert told.question == "How long?"
    assert told.parts == {"Formula": ["a = b", "c = d"], "Source": ["a book.", "And more of it."], "Limits": ["none."]}
    assert told.text("Source") == "a book. And more of it."
    assert told.text("Table") == ""
