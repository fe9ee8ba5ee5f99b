"""For which vehicles a finding holds where the rule knows better than its place tells."""

from __future__ import annotations

import pytest

from authoring.booklet.plan import Plan
from authoring.model.concern import concern_of
from authoring.model.things import Feature
from authoring.pipeline import check, pdf
from authoring.render.page_rules import Parted
from authoring.source.document import Where
from authoring.source.reader import read_document
from tests.rules.limited import DISC, DRUM, EQUIPMENT, stepped, told
from tests.rules.overlay import overlay

STOCK = """\
parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  wide-ring: {name: wide sealing ring, number: FL-P-015, one-time: true}
"""
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
                "parking brake: drum brake; axle: middle axle or wide axle, "
                "or parking brake: disc brake; axle: narrow axle or middle axle"
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
    pairs = [{"one": (value,), "two": (value,)} for value in values]
    words = [f"one: value {number}; two: value {number}" for number in range(4)]
    assert concern_of(pairs[:4], features, {}) == ", or ".join(words)
    assert concern_of(pairs, features, {}) == ", or ".join([*words, "others"])


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
