"""For which vehicles a finding holds: told by the conditions around its place."""

from __future__ import annotations

import time
from collections.abc import Iterator
from typing import Any

import pytest

from authoring.cli.disk import read_library
from authoring.diagnostics.diagnostic import Diagnostic, Severity, Span
from authoring.model.applicability import of_equipment, of_procedure, of_shop
from authoring.model.build import build_library
from authoring.pipeline import check
from authoring.rules.whom import with_fitments
from authoring.source.document import Path
from authoring.source.reader import read_document
from tests.booklet.goldens import TREE
from tests.rules.limited import BOTH, DISC, DRUM, EQUIPMENT, stepped, told
from tests.rules.overlay import overlay

MESSAGE = """\
safety:
  burst:
    harm: equipment
    severity: death
    likelihood: could
    hazard: It bursts.
    consequence: It breaks.
    avoidance: Stand back.
"""


@pytest.mark.parametrize(
    ("procedure", "fitments"),
    [
        pytest.param(stepped(step=DISC), "parking brake: disc brake", id="step"),
        pytest.param(stepped(section=DISC), "parking brake: disc brake", id="section"),
        pytest.param(
            stepped(section=DISC, step="axle: [narrow, wide]"),
            "parking brake: disc brake; axle: narrow axle or wide axle",
            id="section and step",
        ),
        pytest.param(
            stepped(section="axle: [narrow, wide]", step="axle: [middle, wide]"), "axle: wide axle", id="narrowed"
        ),
        pytest.param(
            stepped("brake: [disc]", step="axle: wide"),
            "parking brake: disc brake; axle: wide axle",
            id="covers and step",
        ),
        pytest.param(stepped("axle: [middle, wide]", step="axle: [narrow, wide]"), "axle: wide axle", id="by covers"),
        pytest.param(stepped("brake: [disc]"), "", id="every vehicle covered"),
        pytest.param(stepped("brake: [disc]", step=DISC), "", id="no fewer than covered"),
        pytest.param(stepped("brake: [disc]", step=BOTH), "", id="more than covered"),
        pytest.param(stepped(step=BOTH), "", id="every value"),
        pytest.param(stepped(), "", id="unlimited"),
        pytest.param(stepped(section=DISC, step=DRUM), "parking brake: drum brake", id="contradiction"),
        pytest.param(stepped(step="brakes: disc, axle: wide"), "axle: wide axle", id="unknown feature"),
        pytest.param(stepped(step="brake: disk, axle: wide"), "axle: wide axle", id="unknown value"),
    ],
)
def test_the_conditions_around_a_finding_say_for_whom_it_holds(procedure: str, fitments: str) -> None:
    """Step, section and what is covered hold together; where every covered vehicle is concerned nothing is said."""
    assert told("caution-in-tip", ("procedure", procedure)) == [fitments]


def test_the_step_beside_a_limited_one_is_for_all() -> None:
    """A condition reaches to the end of what it stands in, and no further."""
    procedure = stepped(step=DISC) + "      - do: [{clean: drop-box}]\n        tip: Careful! It is hot.\n"
    assert told("caution-in-tip", ("procedure", procedure)) == ["parking brake: disc brake", ""]


def test_things_on_one_line_are_kept_apart() -> None:
    """Of two windows in one pair of brackets each has its own condition; the name beside them has none."""
    values = """\
values:
  gap:
    name: gap
    windows: [{value: 1 mN, when: {brake: disc}}, {value: 2 mN, when: {brake: drum}}, {value: 3 mN}]
"""
    assert told("bad-quantity", ("procedure", values)) == ["parking brake: disc brake", "parking brake: drum brake", ""]


@pytest.mark.parametrize(
    ("kind", "text", "rule"),
    [
        pytest.param(
            "procedure",
            MESSAGE + "    when: {brake: disc}\n",
            "harm-and-severity",
            id="message",
        ),
        pytest.param(
            "equipment",
            EQUIPMENT + "items:\n  drop-box: {name: drop box}\n"
            "  pipe: {name: pipe, covers: [drop-bx], when: {brake: disc}}\n",
            "unknown-name",
            id="item",
        ),
        pytest.param(
            "equipment",
            EQUIPMENT + "fasteners:\n  level-plug:\n    name: level plug\n    count: 1\n    thread: M18 x 1.5\n"
            "    on: drop-bx\n    when: {brake: disc}\n",
            "unknown-name",
            id="fastener group",
        ),
        pytest.param(
            "procedure",
            "sections:\n  - title: Look\n    steps:\n      - do:\n          - inspect:\n              what: drop-box\n"
            "              outcomes:\n                - {found: It is dry., then: go-on}\n"
            "                - {found: It is wet., then: go-to, to: nowhere, when: {brake: disc}}\n",
            "unknown-name",
            id="outcome",
        ),
    ],
)
def test_whatever_has_a_condition_limits_what_is_found_in_it(kind: str, text: str, rule: str) -> None:
    """A message, an item, a fastener group and an outcome are as good as a step."""
    assert told(rule, (kind, text)) == ["parking brake: disc brake"]


def test_a_result_that_matters_for_some_is_found_for_all() -> None:
    """For which vehicles a result decides does not say for which the action is done."""
    procedure = """\
sections:
  - title: Look
    steps:
      - do:
          - inspect:
              what: drop-box
              critical-when: {brake: disc}
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It is wet., then: go-to, to: nowhere}
"""
    assert told("unknown-name", ("procedure", procedure)) == [""]


def test_a_shop_s_message_is_told_in_the_words_of_the_machines() -> None:
    """The shop has no features of its own; the words are those of the equipment that has the feature."""
    assert told("harm-and-severity", ("shop", MESSAGE + "    when: {axle: wide}\n")) == ["axle: wide axle"]


def test_an_equipment_that_cannot_be_read_leaves_the_words_as_they_are_written() -> None:
    """What the features are called stands in a broken file, and the condition itself is still known."""
    values = "values:\n  gap: {name: gap, windows: [{value: 1 mN, when: {brake: disc}}]}\n"
    assert told("bad-quantity", ("procedure", values), ("equipment", "features: 3\n")) == ["brake: disc"]


def test_a_file_that_cannot_be_read_is_about_no_vehicle() -> None:
    """An error of YAML says nothing of vehicles, whatever the file would have said; nor does an unread file."""
    procedure = stepped("brake: [disc]", step=DISC) + "\t- x\n"
    assert told("yaml-syntax", ("procedure", procedure)) == [""]
    unread = Diagnostic("unreadable-file", Severity.ERROR, "It cannot be read.", Span("x.yaml", 1, 1, 1, 1))
    checked = check(overlay([("equipment", EQUIPMENT)]).files, [unread])
    assert [one.fitments for one in checked.findings if one.rule == "unreadable-file"] == [""]


def test_an_allowed_finding_says_it_too() -> None:
    """What an author lets stand keeps its vehicles, and an allowance in vain is about none."""
    allowed = "        allow: [{rule: caution-in-tip, why: So be it.}, {rule: vague-word, why: So be it.}]\n"
    files = overlay([("equipment", EQUIPMENT), ("procedure", stepped(step=DISC) + allowed)]).files
    checked = check(files, [])
    assert [one.fitments for _, one in checked.allowed] == ["parking brake: disc brake"]
    assert [one.fitments for one in checked.findings if one.rule == "unused-allowance"] == [""]


def conditions(data: Any, path: Path = ()) -> Iterator[Path]:
    """Yield the path of each group that has a condition, as it is written."""
    if isinstance(data, dict):
        if "when" in data:
            yield path
        for key, value in data.items():
            yield from conditions(value, (*path, key))
    elif isinstance(data, list):
        for place, value in enumerate(data):
            yield from conditions(value, (*path, place))


def test_every_condition_that_is_written_limits_what_it_stands_in() -> None:
    """In the demo library no `when` is overlooked, wherever in a file it stands."""
    library = check(*read_library(str(TREE / "procedures"))).library
    assert library.shop is not None
    files = [(one.where.document, of_procedure(one)) for one in library.procedures.values()]
    files += [(one.where.document, of_equipment(one)) for one in library.equipment.values()]
    files += [(library.shop.where.document, of_shop(library.shop))]
    written = 0
    for document, stated in files:
        found = set(conditions(document.data))
        assert found <= {one.limited.path for one in stated if one.limited is not None}
        written += len(found)
    assert written > 20


def test_many_findings_below_many_conditions_are_named_at_once() -> None:
    """Six thousand limited steps with as many findings take no longer than it takes to read them."""
    steps = "".join(
        f"      - do: [{{clean: drop-box}}]\n        when: {{brake: {('disc', 'drum')[place % 2]}}}\n"
        for place in range(6000)
    )
    files = overlay([("procedure", f"sections:\n  - title: Clean\n    steps:\n{steps}")]).files
    begun = time.perf_counter()
    documents = [document for name, content in files.items() if (document := read_document(name, content)[0])]
    library, _ = build_library(documents, {}, partial=False)
    read = time.perf_counter() - begun
    places = [step.where.span for _, step in library.procedures["FL-110"].steps()]
    found = [Diagnostic("r", Severity.ERROR, "It is wrong.", span) for span in places]
    begun = time.perf_counter()
    named = with_fitments(found, library)
    assert time.perf_counter() - begun < read
    assert {one.fitments for one in named[::2]} == {"parking brake: disc brake"}
    assert {one.fitments for one in named[1::2]} == {"parking brake: drum brake"}
