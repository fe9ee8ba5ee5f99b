"""The page of what was checked: what became of each rule, what is taken as given, how each part choice is told."""

from __future__ import annotations

import re

import pytest

from authoring.booklet.blocks import Chapter
from authoring.booklet.proof import Family, Left, Proof, Ran, verdicts
from authoring.booklet.proved import by_family, counted, left_standing
from authoring.booklet.words import Paragraph
from authoring.model.subjects import SUBJECTS
from authoring.rules.proves import PROVES, proved
from authoring.rules.rule import all_rules, families
from tests.booklet.composed import chapter_of, plainly, table

# --- what became of each rule -----------------------------------------------------------------------------

RULES = (Ran("always", "text", ()), Ran("of-heat", "heat", ("heated",)), Ran("of-two", "heat", ("heated", "hot")))
PROOF = Proof((Family("text", "Texts", "They are."), Family("heat", "Heat", "It is.")), RULES)


@pytest.mark.parametrize(
    ("left", "there", "passed", "idle", "spoke"),
    [
        ((), (), ["always"], ["of-heat", "of-two"], []),
        ((), ("hot",), ["always", "of-two"], ["of-heat"], []),
        ((), ("heated", "hot"), ["always", "of-heat", "of-two"], [], []),
        # Who found something had something to look at, whatever the list of subjects says.
        (("of-heat",), (), ["always"], ["of-two"], ["of-heat"]),
    ],
)
def test_each_rule_is_in_one_place(
    left: tuple[str, ...], there: tuple[str, ...], passed: list[str], idle: list[str], spoke: list[str]
) -> None:
    """It passed, had nothing to look at, or found something; one of its subjects is enough to look at."""
    found = verdicts(PROOF, [Left("a.yaml", rule, "Something.", "") for rule in left], there)
    assert [one.id for one in found.passed] == passed
    assert [one.id for one in found.idle] == idle
    assert [one.id for one in found.spoke] == spoke
    assert counted(found).startswith("Before this booklet was printed, 3 rules looked")
    assert f"{len(passed)} passed, {len(idle)} had nothing to look at, and {len(spoke)} found" in counted(found)


def test_a_family_tells_how_many_rules_stand_behind_it() -> None:
    """What is none is not told."""
    found = verdicts(PROOF, [Left("a.yaml", "of-two", "Something.", "")], ())
    rows = [[plainly(cell.text) for cell in row] for row in by_family(found).rows]
    assert rows == [
        ["Texts", "They are.", "1 passed"],
        ["Heat", "It is.", "1 not applicable, 1 left something"],
    ]


def test_what_is_excepted_is_told_apart_from_what_was_left() -> None:
    """An exception has its reason, a finding that nobody has excepted its vehicles; the same words are told once."""
    first = Left("a.yaml", "one", "First.", "For a reason.")
    left = (first, Left("a.yaml", "two", "Second.", "", "brake: disc brake"), first)
    excepted, stands = left_standing(left)
    assert [[plainly(cell.text) for cell in row] for row in excepted.rows] == [["one", "First.", "For a reason."]]
    assert [[plainly(cell.text) for cell in row] for row in stands.rows] == [["two", "Second.", "brake: disc brake"]]


def test_each_family_says_in_a_sentence_what_it_proves() -> None:
    """No family is without words of its own, and nothing is proved by a family that is none."""
    assert set(PROVES) == set(families())
    assert [name for name, _ in proved()] == list(PROVES)
    assert all(re.fullmatch(r"[A-Z].{30,200}\.", one.holds) for one in PROVES.values())
    # Nothing is called safe but what concerns safety by its name.
    assert not [one.holds for one in PROVES.values() if re.search(r"\bis safe\b", one.holds)]


# --- a booklet --------------------------------------------------------------------------------------------

HEAT = """\
sections:
  - title: Warm
    steps:
      - step: Heat it.
        when: {brake: disc}
        do: [{heat: {what: drop-box, to: warm, with: wrench}}]
      - step: Clean it.
        do: [{clean: drop-box}]
"""
WARM = "values:\n  warm: {name: heat of the box, value: 80 °C, source: bench-book, at: page 9}\n"


def page(selection: dict[str, str] | None = None, **files: str) -> Chapter:
    """Return the chapter."""
    return chapter_of("proof", selection or {}, **files)


def idle(chapter: Chapter) -> dict[str, str]:
    """Return the rules that had nothing to look at, by what there is nothing of."""
    return {row[0]: row[1] for row in table(chapter, "idle")}


def test_all_rules_are_counted() -> None:
    """The sentence, the table of families and that of what does not apply agree, and no rule is left out."""
    chapter = page()
    [lead] = [plainly(one.text) for one in chapter.blocks if isinstance(one, Paragraph)][:1]
    counts = [int(one) for one in re.findall(r"\d+", lead)]
    every, passed, nothing, spoke = counts
    assert every == len(all_rules()) == passed + nothing + spoke
    told = " ".join(row[2] for row in table(chapter, "proved"))
    for words, count in (("passed", passed), ("not applicable", nothing), ("left something", spoke)):
        assert sum(int(one) for one in re.findall(rf"(\d+) {words}", told)) == count
    assert sum(len(row[1].split(", ")) for row in table(chapter, "idle")) == nothing
    assert "proved under the stated model" in lead
    assert "does not say that the job is safe" in lead


def test_what_does_not_apply_follows_the_vehicle() -> None:
    """The box is heated with one brake only: in the booklet for the other the rule on heating has nothing to see."""
    files = {"procedure": WARM + HEAT}
    assert SUBJECTS["heated"].none not in idle(page({"brake": "disc"}, **files))
    assert SUBJECTS["heated"].none not in idle(page({}, **files))
    assert idle(page({"brake": "drum"}, **files))[SUBJECTS["heated"].none] == "heat-too-little"


def given(chapter: Chapter) -> dict[str, str]:
    """Return what is taken as given."""
    return {row[0]: row[1] for row in table(chapter, "assumed")}


def test_what_is_taken_as_given_is_told() -> None:
    """No trial, both vehicles, how the machine comes, and the documents with their editions."""
    told = given(page())
    assert told["Trial"] == "NOT VALIDATED: no trial of this revision on a machine is recorded."
    assert told["Vehicles"] == "2 kinds, which differ in parking brake: each combination that occurs."
    assert told["How the machine comes"].startswith("All that belongs to it is on, closed, tight and full,")
    assert told["How the machine comes"].endswith("That the conditions are met, a person sees.")
    assert "Data plate notes, 2 (one value)" in told["Documents"]
    assert told["Decisions on the way"] == "Nothing is decided on the way: no methods, nothing to skip, no way back."
    assert told["Common practice"] == "No value rests on it."
    assert "Readings" not in told


def test_one_vehicle_is_one_kind() -> None:
    """The booklet for one brake counts no combinations."""
    assert given(page({"brake": "disc"}))["Vehicles"] == "One kind, which the first page names."


def test_a_recorded_trial_takes_the_words_away() -> None:
    """It is named, and the booklet is no longer called unproved on a machine."""
    trial = "trial: {date: 2026-03-20, by: mara, on: number 7, result: It went well.}\n"
    told = given(page(procedure=trial))["Trial"]
    assert told == "Done on number 7, 2026-03-20; what came of it stands on the first page."


def test_what_the_procedure_needs_is_so_instead() -> None:
    """It stands after what is taken of every machine."""
    files = {
        "equipment": "items:\n  drop-box: {name: drop box}\n  hatch: {name: hatch}\n",
        "procedure": "needs: {hatch: open}\n",
    }
    assert "Other than that: hatch: open." in given(page({}, **files))["How the machine comes"]


WAYS = """\
sections:
  - title: Look
    steps:
      - id: first
        step: Clean it.
        optional: Worth doing where it is dirty.
        do: [{clean: drop-box}]
      - step: Mark it.
        if-done: [first]
        do: [{mark: drop-box}]
      - either:
          - {step: Clean it., do: [{clean: drop-box}]}
          - {step: Wipe it., do: [{clean: drop-box}]}
        why: Both do.
      - step: Look at it.
        do:
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is clean., then: go-on}
                - {found: It is not., then: go-to, to: first, at-most: 2, else: Ask somebody.}
"""


def test_what_is_decided_on_the_way_is_told_with_what_is_followed() -> None:
    """Methods, what may be skipped, what hangs on it and the ways back each have their steps."""
    told = given(page(procedure=WAYS))["Decisions on the way"]
    assert "One of several methods: steps 3a, 3b." in told
    assert "May be skipped: step 1." in told
    assert "Depends on whether another step was done: step 2." in told
    assert "Repeated, or leads back: step 4." in told


CHOICE = """\
choices:
  seal:
    name: seal
    question: Which brake does it have?
    parts:
      - {part: plug-ring, when: {brake: drum}, tell: It is thin.}
      - {part: plug-ring, when: {brake: disc}, tell: It is thick.}
sections:
  - title: Fit
    steps:
      - step: Look at it.
        do:
          - inspect:
              what: seal
              outcomes:
                - {found: It is whole., then: go-on}
                - {found: It is not., then: put-right, say: Take another.}
      - step: Fit it.
        do: [{fit: seal}]
"""


def test_each_part_choice_says_how_the_reader_tells() -> None:
    """The feature's own words, and the step that looks at the part; settled where the booklet is for one vehicle."""
    rows = table(page(procedure=CHOICE), "told-apart")
    assert rows == [
        ("Seal: sealing ring or sealing ring", "parking brake", "Look behind the rear wheel. Looked at in step 1.")
    ]
    assert table(page({"brake": "drum"}, procedure=CHOICE), "told-apart")[0][2] == (
        "Settled for this booklet. Looked at in step 1."
    )
    assert table(page(), "told-apart") == []


def test_a_size_is_told_with_its_gauge() -> None:
    """A choice by size names the gauge that measures it, and its step."""
    sized = CHOICE.replace(
        "when: {brake: drum}", "size: {value: 2.0 ± 0.1 mm, source: bench-book, at: page 3}"
    ).replace("when: {brake: disc}", "size: {value: 3.0 ± 0.1 mm, source: bench-book, at: page 3}")
    measured = sized.replace("          - inspect:\n", "          - measure:\n").replace(
        "      - step: Look at it.\n", "      - step: Measure it.\n        with: [gauge]\n"
    )
    stock = "tools:\n  wrench: {name: torque wrench}\n  spanner: {name: spanner}\n  gauntlets: {name: gauntlets}\n"
    reach = "range: {value: 0 to 150 mm, source: bench-book, at: page 4}"
    gauge = f"  gauge: {{name: vernier gauge, resolution: 0.05 mm, {reach}}}\n"
    rows = table(page(procedure=measured, stock=stock + gauge), "told-apart")
    assert [row[1:] for row in rows] == [("the size", "Measured on the vernier gauge in step 1.")]


def test_defaults_that_the_shop_has_not_changed_are_told_with_their_source() -> None:
    """The base shop states no policy: every default stands there, and how it is known."""
    rows = {row[0]: row for row in table(page(), "defaults")}
    assert "from memory" in rows["heavy-lift"][2]
    assert rows["hot-surface"][1].startswith("a hot surface, hotter than where a touch burns")
