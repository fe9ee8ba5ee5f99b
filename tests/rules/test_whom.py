"""For which vehicles a finding holds: told by the conditions around its place, or by the rule."""

from __future__ import annotations

import time

import pytest

from authoring.booklet.plan import Plan
from authoring.diagnostics.diagnostic import Diagnostic, Severity, Span
from authoring.model.build import build_library
from authoring.model.concern import concern_of
from authoring.model.things import Feature
from authoring.pipeline import check, pdf
from authoring.render.page_rules import Parted
from authoring.rules.whom import with_fitments
from authoring.source.document import Where
from authoring.source.reader import read_document
from tests.rules.overlay import overlay

EQUIPMENT = """\
features:
  brake: {name: parking brake, tell: Look behind the rear wheel., values: {drum: drum brake, disc: disc brake}}
  axle: {name: axle, tell: Read the plate., values: {narrow: narrow axle, middle: middle axle, wide: wide axle}}
"""
STOCK = """\
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015, one-time: true}
"""
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


def told(rule: str, *blocks: tuple[str, str]) -> list[str]:
    """Return for which vehicles each finding of a rule holds, in the order of the report."""
    equipment = () if any(kind == "equipment" for kind, _ in blocks) else (("equipment", EQUIPMENT),)
    checked = check(overlay([*equipment, *blocks]).files, [])
    return [one.fitments for one in checked.findings if one.rule == rule]


def stepped(covers: str = "", section: str = "", step: str = "") -> str:
    """Return a procedure whose one tip holds a caution, below conditions at three heights."""
    heights = zip(("covers", "    when", "        when"), (covers, section, step), strict=True)
    top, around, own = (f"{key}: {{{when}}}\n" if when else "" for key, when in heights)
    return f"""\
{top}sections:
  - title: Clean
{around}    steps:
      - do: [{{clean: drop-box}}]
{own}        tip: Careful! It is hot.
"""


DISC, DRUM = "brake: disc", "brake: drum"
BOTH = "brake: [drum, disc]"


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


SIZE = ", size: {value: 9 mm, source: bench-book, at: page 3}, tell"


def choice(narrow: str, wide: str, step: str = "") -> str:
    """Return a procedure that fits one of two parts, each under its condition."""
    return f"""\
choices:
  ring:
    name: ring of the plug
    question: Which machine is it?
    parts:
      - {{part: plug-ring, when: {{{narrow}}}, tell: It is narrow.}}
      - {{part: wide-ring, when: {{{wide}}}, tell: It is wide.}}
sections:
  - title: Fit
    steps:
      - do: [{{fit: ring}}]
{f"        when: {{{step}}}" if step else ""}
"""


@pytest.mark.parametrize(
    ("rule", "procedure", "fitments"),
    [
        ("choice-gap", choice("axle: narrow", "axle: wide"), "axle: middle axle"),
        ("choice-gap", choice("axle: narrow", "axle: narrow"), "axle: middle axle or wide axle"),
        ("choice-gap", choice(DISC, "axle: wide"), "parking brake: drum brake; axle: narrow axle or middle axle"),
        ("choice-gap", choice("axle: narrow", "axle: wide", "axle: middle"), "axle: middle axle"),
        (
            "choice-gap",
            "covers: {brake: [disc]}\n" + choice("axle: narrow", "axle: wide"),
            "parking brake: disc brake; axle: middle axle",
        ),
        (
            "choice-gap",
            choice("brake: disc, axle: wide", "brake: drum, axle: narrow"),
            (
                "axle: middle axle, or parking brake: drum brake; axle: wide axle, "
                "or parking brake: disc brake; axle: narrow axle"
            ),
        ),
        ("choice-overlap", choice("axle: [narrow, middle]", "axle: [middle, wide]"), "axle: middle axle"),
        ("choice-overlap", choice(DISC, "axle: wide"), "parking brake: disc brake; axle: wide axle"),
        (
            "choice-overlap",
            choice("axle: [narrow, middle]", "axle: [middle, wide]").replace(", tell", SIZE),
            "axle: middle axle",
        ),
        ("covers-nothing", "covers: {brake: [disc], axle: [narrow]}\n", "parking brake: disc brake; axle: narrow axle"),
        ("never-applies", "covers: {brake: [disc]}\n" + stepped(step=DRUM), "parking brake: drum brake"),
        (
            "never-applies",
            stepped(section=DRUM).replace(
                "clean: drop-box",
                "inspect: {what: drop-box, critical-when: {brake: disc}, outcomes: [{found: Dry., then: go-on}]}",
            ),
            "parking brake: disc brake",
        ),
        (
            "never-applies",
            "covers: {brake: [drum]}\n"
            + stepped().replace(
                "clean: drop-box",
                "inspect: {what: drop-box, critical-when: {brake: disc}, outcomes: [{found: Dry., then: go-on}]}",
            ),
            "parking brake: disc brake",
        ),
    ],
)
def test_a_rule_that_knows_the_vehicles_says_them(rule: str, procedure: str, fitments: str) -> None:
    """All vehicles with the fault are named and no other, where the message shows the fewest features only."""
    never = "never: [{brake: disc, axle: narrow}]\n" if rule == "covers-nothing" else ""
    blocks = (("procedure", procedure), ("stock", STOCK), ("equipment", EQUIPMENT + never))
    assert told(rule, *blocks) == [fitments]


def test_a_thing_that_some_lack_concerns_those_that_lack_it() -> None:
    """A step for wide axles takes off what only disc brakes have: drum brakes with a wide axle are in trouble."""
    items = "items:\n  drop-box: {name: drop box, when: {brake: disc}}\n"
    blocks = (("procedure", stepped(step="axle: wide")), ("equipment", EQUIPMENT + items))
    assert told("touches-what-is-missing", *blocks) == ["axle: wide axle; parking brake: drum brake"]


@pytest.mark.parametrize(
    ("acts", "fitments"),
    [
        (["remove: plug-ring", "discard: plug-ring@disc"], "parking brake: drum brake"),
        (
            ["remove: level-plug", "discard: plug-ring", "fit: plug-ring", "remove: level-plug@disc", "fit: plug-ring"],
            "parking brake: disc brake",
        ),
    ],
)
def test_a_part_kept_concerns_those_that_keep_it(acts: list[str], fitments: str) -> None:
    """A ring that one brake throws away is kept by the other; one that comes off again is fitted twice there only."""
    steps = [f"      - do: [{{{act.replace('@disc', '')}}}]\n" for act in acts]
    limits = ["        when: {brake: disc}\n" if "@" in act else "" for act in acts]
    body = "".join(step + limit for step, limit in zip(steps, limits, strict=True))
    procedure = f"sections:\n  - title: Change the ring\n    steps:\n{body}"
    assert told("one-time-part-kept", ("procedure", procedure)) == [fitments]


def test_of_many_groups_of_vehicles_only_the_first_are_told() -> None:
    """Five pairs that have nothing in common are four pairs and others; four are told whole."""
    values = {f"v{number}": f"value {number}" for number in range(5)}
    document, _ = read_document("hob.yaml", b"equipment: hob\n")
    assert document is not None
    features = {name: Feature(name, name, "Look.", values, Where(document)) for name in ("one", "two")}
    pairs = [{"one": value, "two": value} for value in values]
    words = [f"one: value {number}; two: value {number}" for number in range(4)]
    assert concern_of(pairs[:4], features, {}) == ", or ".join(words)
    assert concern_of(pairs, features, {}) == ", or ".join([*words, "others"])


def test_a_file_that_cannot_be_read_is_about_no_vehicle() -> None:
    """An error of YAML says nothing of vehicles, whatever the file would have said; nor does an unread file."""
    procedure = stepped("brake: [disc]", step=DISC) + "\t- x\n"
    assert told("yaml-syntax", ("procedure", procedure)) == [""]
    unread = Diagnostic("unreadable-file", Severity.ERROR, "It cannot be read.", Span("x.yaml", 1, 1, 1, 1))
    checked = check(overlay([("equipment", EQUIPMENT)]).files, [unread])
    assert [one.fitments for one in checked.findings if one.rule == "unreadable-file"] == [""]


@pytest.mark.parametrize(
    ("selection", "fitments"), [({}, "axle: wide axle"), ({"brake": "disc"}, "parking brake: disc brake")]
)
def test_parted_pages_concern_the_vehicles_of_the_booklet(
    selection: dict[str, str], fitments: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The booklet for all parts the pages of whoever does the step; that for some, of those it is made for."""
    checked = check(overlay([("equipment", EQUIPMENT), ("procedure", stepped(step="axle: wide"))]).files, [])
    (placed,) = Plan(checked.library, checked.library.procedures["FL-110"], selection).main.steps()
    parted = [Parted((1, 2), placed.anchor, "Step 1 is parted.")]
    monkeypatch.setattr("authoring.render.pdf.as_pdf", lambda _: (b"", parted))
    _, found = pdf(checked, "FL-110", selection)
    assert [(one.rule, one.fitments) for one in found] == [("parted-pages", fitments)]


def test_an_allowed_finding_says_it_too() -> None:
    """What an author lets stand keeps its vehicles, and an allowance in vain is about none."""
    allowed = "        allow: [{rule: caution-in-tip, why: So be it.}, {rule: vague-word, why: So be it.}]\n"
    files = overlay([("equipment", EQUIPMENT), ("procedure", stepped(step=DISC) + allowed)]).files
    checked = check(files, [])
    assert [one.fitments for _, one in checked.allowed] == ["parking brake: disc brake"]
    assert [one.fitments for one in checked.findings if one.rule == "unused-allowance"] == [""]


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
