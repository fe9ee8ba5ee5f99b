"""The guide of the language: every example in it is sound, and its reference is fresh."""

from __future__ import annotations

import re

import pytest

from authoring.diagnostics.diagnostic import Severity
from authoring.model.reference import renewed
from authoring.pipeline import check, html
from tests.booklet.goldens import TREE
from tests.rules.overlay import OF_WHOLE_JOBS, examples_in, findings

GUIDE = (TREE / "schema" / "README.md").read_text(encoding="utf-8")
FILE = re.compile(r"^```yaml file (\S+)\n(.*?)^```$", re.MULTILINE | re.DOTALL)
HEADINGS = re.compile(r"^#{2,4} (.+)$", re.MULTILINE)
LINK = re.compile(r"\]\(#([^)]+)\)")
ELEMENTS = GUIDE[GUIDE.index("## The elements") : GUIDE.index("## In the editor")]
EXAMPLES = examples_in(ELEMENTS)


def test_the_tour_is_a_library_without_a_finding() -> None:
    """The files of the tour, copied into a folder, pass the check and make a booklet."""
    files = {name: text.encode() for name, text in FILE.findall(GUIDE)}
    assert sorted(files) == ["FL-210.yaml", "loader.yaml", "shop.yaml", "stock.yaml"]
    checked = check(files, [])
    assert checked.findings == []
    assert "Renew the pilot filter" in html(checked, "FL-210", {})


@pytest.mark.parametrize("place", range(len(EXAMPLES)))
def test_each_example_is_sound(place: int) -> None:
    """Laid over the small sound library, an example brings no error."""
    found = [one for one in findings(EXAMPLES[place].files) if one.severity is Severity.ERROR]
    assert [one for one in found if one.rule not in OF_WHOLE_JOBS] == []


def test_there_are_examples_of_each_element() -> None:
    """Each heading below the elements has at least one example."""
    parts = re.split(r"^### ", ELEMENTS, flags=re.MULTILINE)[1:]
    assert [part.splitlines()[0] for part in parts if "```yaml" not in part] == []


def test_the_reference_is_fresh() -> None:
    """The reference part is what the schemas give today (`./run schema`)."""
    assert renewed(GUIDE) == GUIDE


def test_every_link_inside_the_guide_leads_to_a_heading() -> None:
    """The index and the cross-references of the guide point at headings that there are."""
    headings = {re.sub(r"[^a-z0-9 -]", "", line.lower()).replace(" ", "-") for line in HEADINGS.findall(GUIDE)}
    links = LINK.findall(GUIDE)
    assert links
    assert [link for link in links if link not in headings] == []
