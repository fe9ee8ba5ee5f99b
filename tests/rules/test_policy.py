"""The shop's safety policy: what a caution may not lose, where it is placed, and where the defaults come from."""

from __future__ import annotations

import pytest

from authoring.booklet.compose import compose
from authoring.booklet.proof import Proof
from authoring.booklet.step_parts import Caution, Step
from authoring.diagnostics.diagnostic import Severity
from authoring.model.demanding import demands
from authoring.model.numbering import numbers
from authoring.model.policies import looser, top
from authoring.model.policy import FACTS, Policy
from authoring.model.policy_defaults import DEFAULTS
from authoring.pipeline import Checked, check
from tests.booklet.goldens import TREE
from tests.booklet.plain_text import plain_text
from tests.quantities.quantity_texts import read
from tests.rules.overlay import overlay

SHOP = """\
hazards:
  hot: {name: hot surface, emergency: [Hold the burn under cool running water.]}
safety:
  hot-exhaust:
    harm: person
    severity: serious
    likelihood: could
    hazard: The exhaust is hot.
    consequence: It burns skin at a touch.
    avoidance: Wear the [gauntlets].
    sign: hot-surface
    of: hot
policy:
  hot-by-hand:
    hazard: hot
    hotter-than: 60 °C
    severity: serious
    why: Two of us burned a hand on an exhaust.
"""
PLACING = "    message: hot-exhaust\n"
EQUIPMENT = """\
items:
  drop-box: {name: drop box}
  exhaust: {name: exhaust, hazards: [hot], hot: {value: 350 °C, source: plate, at: line 9, surface: stone}}
"""
PROCEDURE = """\
hazards: none
sections:
  - title: Wipe
    steps:
      - step: Clean the [drop-box].
        do: [{clean: drop-box}]
      - step: Clean the [exhaust].
        safety: [hot-exhaust]
        with: [gauntlets]
        do: [{clean: exhaust}]
      - step: Clean the [drop-box] again.
        with: [gauntlets]
        do: [{clean: drop-box}]
"""
CALLED = "        safety: [hot-exhaust]\n"
BARE = PROCEDURE.replace(CALLED, "")
OF_POLICY = {"policy-unmet", "policy-too-weak", "policy-without-protection", "policy-without-hold", "policy-too-few"}


def checked(procedure: str, shop: str = SHOP) -> Checked:
    """Return the base library with the shop's policy, a hot exhaust and this procedure, checked."""
    return check(overlay([("shop", shop), ("equipment", EQUIPMENT), ("procedure", procedure)]).files, [])


def rules(library: Checked) -> list[str]:
    """Return the rules of the findings, without what so short a job leaves unused."""
    return [one.rule for one in library.findings if one.rule != "unused-thing"]


def found(procedure: str, shop: str = SHOP) -> list[tuple[str, str, str, str]]:
    """Return rule, message, cure and vehicles of what the policy has to say."""
    told = checked(procedure, shop).findings
    assert all(one.severity is Severity.ERROR for one in told if one.rule in OF_POLICY)
    return [(one.rule, one.message, one.cure, one.fitments) for one in told if one.rule in OF_POLICY]


UNMET = (
    'Step 2 touches "exhaust", but no safety message of the hazard "hot" is in force{}. '
    'The policy "hot-by-hand" says why: Two of us burned a hand on an exhaust.'
)
CALL = 'List a message with "of: hot" under "safety" of the step or its section, or under "hazards".'


def test_the_message_at_the_step_will_do() -> None:
    """A step that calls the message meets the policy."""
    assert found(PROCEDURE) == []


@pytest.mark.parametrize(
    "procedure",
    [
        pytest.param(BARE, id="no message"),
        pytest.param(BARE.replace("again.\n", f"again.\n{CALLED}"), id="moved to a later step"),
        pytest.param(BARE.replace("].\n        do", f"].\n{CALLED}        do", 1), id="moved to an earlier step"),
    ],
)
def test_a_message_that_is_not_in_force_is_missed(procedure: str) -> None:
    """The finding names the step, the situation, the reason in the policy's words, and the cure."""
    assert found(procedure) == [("policy-unmet", UNMET.format(""), CALL, "")]


def test_a_weakened_message_is_told() -> None:
    """A message that states less than the policy asks does not meet it."""
    weak = SHOP.replace("    severity: serious", "    severity: minor", 1)
    assert found(PROCEDURE, weak) == [
        (
            "policy-too-weak",
            (
                'Step 2 touches "exhaust", and "hot-exhaust" says less of it than "severity: serious". '
                'The policy "hot-by-hand" says why: Two of us burned a hand on an exhaust.'
            ),
            'Call a message of the hazard "hot" that states "severity: serious" or what is worse.',
            "",
        )
    ]


def test_a_message_for_one_fitment_names_the_other() -> None:
    """A message that is limited to the drum leaves the disc without, and the finding says so."""
    limited = SHOP.replace("    of: hot\n", "    of: hot\n    when: {brake: drum}\n")
    assert found(PROCEDURE, limited) == [
        (
            "policy-unmet",
            UNMET.format(" for a machine with parking brake: disc brake"),
            CALL,
            "parking brake: disc brake",
        )
    ]


@pytest.mark.parametrize(
    "procedure",
    [
        pytest.param(BARE.replace("    steps:", "    safety: [hot-exhaust]\n    steps:"), id="the section"),
        pytest.param(BARE.replace("hazards: none", "hazards: [hot-exhaust]"), id="the job"),
    ],
)
def test_the_message_of_what_holds_the_step_will_do(procedure: str) -> None:
    """A message of the section or of the job is in force at each of its steps."""
    assert found(procedure) == []


def cautions(library: Checked, selection: dict[str, str]) -> dict[str, tuple[Caution, ...]]:
    """Return the cautions above each step of the booklet, by the step's number."""
    booklet = compose(library.library, library.library.procedures["FL-110"], selection, Proof((), ()))
    blocks = [block for chapter in booklet.chapters for block in chapter.blocks]
    return {block.number: block.cautions for block in blocks if isinstance(block, Step) and block.cautions}


def test_a_policy_places_its_message_at_the_step() -> None:
    """It stands above the step and on the pages drawn from it, and nothing is left to find."""
    library = checked(BARE, SHOP + PLACING)
    assert rules(library) == []
    placed = cautions(library, {})
    assert {number: [one.word for one in told] for number, told in placed.items()} == {"2": ["WARNING"]}
    text = plain_text(compose(library.library, library.library.procedures["FL-110"], {}, Proof((), ())))
    assert "Hold the burn under cool running water." in text
    assert "Somebody could be killed or badly injured." in text
    assert "Two of us burned a hand on an exhaust." in text
    assert rules(checked(BARE.replace("[gauntlets]", "[rag]"), SHOP + PLACING)) == ["protection-not-listed"]


def test_a_placed_message_goes_to_those_who_lack_one() -> None:
    """Where the drum has its own message, the one that is placed is for the disc alone."""
    own = SHOP.replace("policy:", SHOP[SHOP.index("  hot-exhaust:") : SHOP.index("policy:")] + "policy:")
    own = own.replace("  hot-exhaust:", "  hot-drum:", 1)
    own = own.replace("    of: hot\n", "    of: hot\n    when: {brake: drum}\n", 1)
    library = checked(PROCEDURE.replace("[hot-exhaust]", "[hot-drum]"), own + PLACING)
    assert rules(library) == []
    assert [one.applies for one in cautions(library, {})["2"]] == [
        "Only parking brake: drum brake",
        "Only parking brake: disc brake",
    ]
    assert len(cautions(library, {"brake": "disc"})["2"]) == 1


def test_a_default_without_policy_leaves_a_plain_shop_plain() -> None:
    """Where nothing is stated that may hurt, no demand is met, and the booklet has no word of a policy."""
    library = check(overlay([]).files, [])
    assert not demands(library.library.procedures["FL-110"], library.library)
    assert "policy" not in plain_text(compose(library.library, library.library.procedures["FL-110"], {}, Proof((), ())))


LIFT = """\
persons: 1
sections:
  - title: Take it off
    steps:
      - step: Remove the [drop-box].
{}        do: [{{remove: drop-box}}]
"""
SPANNER = "        with: [spanner]\n"
TIGHTER = "policy:\n  heavy-lift: {persons: 2, why: We lift in pairs.}\n"


@pytest.mark.parametrize(
    ("shop", "tools", "severity"),
    [
        pytest.param("", "", Severity.ERROR, id="nothing at hand carries it"),
        pytest.param("", SPANNER, Severity.WARNING, id="what is at hand may carry it"),
        pytest.param(TIGHTER, SPANNER, Severity.ERROR, id="the shop asks for it"),
    ],
)
def test_a_default_is_an_error_only_where_facts_leave_no_doubt(shop: str, tools: str, severity: Severity) -> None:
    """Whether a tool carries the load is not stated, so the default warns; what a shop demands is demanded."""
    box = "items:\n  drop-box: {name: drop box, mass: {value: 42 kg, source: plate, at: line 7}}\n"
    library = check(overlay([("shop", shop), ("equipment", box), ("procedure", LIFT.format(tools))]).files, [])
    assert [one.severity for one in library.findings if one.rule == "policy-too-few"] == [severity]


# What each source prints, in another unit, then a shade less and a shade more; how it is known the defaults say.
SOURCED = {
    "heavy-lift": ("heavier-than", "25000 g", "24900 g", "25100 g"),  # ISO 11228-1, reference mass
    "under-pressure": ("above-pressure", "50 kPa", "49 kPa", "51 kPa"),  # Directive 2014/68/EU, article 1
    "live-voltage": ("above-voltage", "0.060 kV", "0.059 kV", "0.061 kV"),  # FMVSS 305 and UN Regulation 100, direct
    "live-voltage-ac": ("above-voltage-ac", "0.030 kV", "0.029 kV", "0.031 kV"),  # the same, alternating, effective
}


@pytest.mark.parametrize("name", SOURCED)
def test_defaults_begin_where_their_sources_do(name: str) -> None:
    """A shop that begins where the source does, or before it, asks no less than the default; one beyond it does."""
    key, there, before, beyond = SOURCED[name]
    bounds = [read(text, FACTS[key][1]) for text in (there, before, beyond)]
    less = [list(looser(Policy(id=name, why="We say so.", bounds={key: bound}), None)) for bound in bounds]
    assert less == [[], [], [key]]
    assert top(DEFAULTS[name].bounds[key]) == top(bounds[0])


def test_the_guide_tells_every_default() -> None:
    """The guide's table names each default, and the bounds that it begins at."""
    guide = (TREE / "schema" / "README.md").read_text(encoding="utf-8")
    rows = guide.partition("### What is demanded of every shop")[2].partition("```")[0]
    bounds = [bound for one in DEFAULTS.values() for bound in one.bounds.values() if bound is not None]
    named = "".join(line.split("|")[1] for line in rows.splitlines() if line.startswith("| `"))
    assert [name for name in DEFAULTS if f"`{name}`" not in named] == []
    assert [bound.text for bound in bounds if f" {bound.text} " not in rows] == []


def test_steps_are_numbered_in_findings_as_they_are_printed() -> None:
    """A finding and the booklet call a step by the same number, methods of one step included."""
    either = "          - step: Clean the [exhaust] {}.\n            do: [{{clean: exhaust}}]\n"
    methods = "      - either:\n" + either.format("wet") + either.format("dry")
    library = checked(BARE + methods, SHOP + PLACING)
    procedure = library.library.procedures["FL-110"]
    assert list(numbers(procedure).values()) == ["1", "2", "3", "4a", "4b"]
    assert list(cautions(library, {})) == ["2", "4a", "4b"]


def test_a_default_names_what_a_technician_can_look_up() -> None:
    """Neither the source nor how it is known is a file of the program."""
    assert [one.id for one in DEFAULTS.values() if ".py" in f"{one.source} {one.status}"] == []
    assert "DIN EN 563" in DEFAULTS["hot-surface"].source
