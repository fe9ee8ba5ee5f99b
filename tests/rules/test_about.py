"""What rules say they are about: where a booklet holds nothing of it, the rule has nothing to find."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from authoring.model.build import build_library
from authoring.model.library import Library
from authoring.model.procedure import Procedure
from authoring.model.subjects import SUBJECTS, held
from authoring.rules.rule import Rule, all_rules, run_rules
from authoring.source.reader import read_document
from tests.rules.overlay import FENCE, Example, base_files, examples, overlay, pictures
from tests.rules.test_rules import UNSHOWN, pages

RULES = all_rules()
LIMITED = [pytest.param(rule, id=rule.id) for rule in RULES.values() if rule.about]
BLOCKS = sorted(
    {(match[1], match[2]) for rule in RULES.values() for page in pages(rule) for match in FENCE.finditer(page)}
)


def library_of(files: dict[str, bytes]) -> Library:
    """Return what can be read of some files."""
    documents = [one for one, _ in (read_document(name, content) for name, content in files.items()) if one is not None]
    library, _ = build_library(documents, pictures(), partial=len(documents) < len(files))
    return library


def concerned(library: Library, file: str) -> list[Procedure]:
    """Return the procedures whose booklet tells of a finding in a file; all of those where it is a shared one."""
    machines = {name for name, one in library.equipment.items() if one.where.document.file == file}
    procedures = list(library.procedures.values())
    own = [one for one in procedures if one.where.document.file == file]
    return own or [one for one in procedures if not machines or one.equipment in machines]


def out_of_nothing(example: Example) -> Iterator[str]:
    """Yield the rules that find something in a library in which there is nothing of what they say they are about."""
    library = library_of(example.files)
    for found in run_rules(library):
        about, there = RULES[found.rule].about, concerned(library, found.span.file)
        if about and there and not set(about) & held(library, there, {}):
            yield f"{found.rule}: {found.message}"


def test_the_subjects_are_those_that_rules_name() -> None:
    """No rule is about something unknown, and nothing is looked for that no rule is about."""
    assert {subject for rule in RULES.values() for subject in rule.about} == set(SUBJECTS)


@pytest.mark.parametrize("subject", SUBJECTS)
def test_what_there_is_not_is_said_in_a_sentence(subject: str) -> None:
    """It stands alone on the page of what was checked."""
    assert SUBJECTS[subject].none.endswith(".")
    assert SUBJECTS[subject].none.startswith(("No", "There is no", "Every", "The "))


@pytest.mark.parametrize("rule", LIMITED)
def test_a_rule_finds_nothing_where_there_is_nothing_of_its_kind(rule: Rule) -> None:
    """Whatever its page and its cases show as wrong, they hold what the rule says it is about."""
    wrong = [example for page in pages(rule) for example in examples(page, "Wrong")]
    assert wrong or rule.id in UNSHOWN
    for example in wrong:
        assert list(out_of_nothing(example)) == []


@given(st.lists(st.sampled_from(BLOCKS), min_size=2, max_size=5))
@settings(max_examples=200)
def test_no_mixture_of_examples_makes_a_rule_find_what_is_not_there(blocks: list[tuple[str, str]]) -> None:
    """In libraries that no author meant, every finding is about something that is there all the same."""
    assert list(out_of_nothing(overlay(blocks))) == []


def test_much_is_missing_from_the_base_library() -> None:
    """The small sound library holds some subjects and lacks others, so that the tests above can fail."""
    library = library_of(base_files())
    found = held(library, list(library.procedures.values()), {})
    assert {"torque", "tightened", "checkpoint"} <= found
    assert not {"bench", "trial-fit", "angle", "modification"} & found


def test_a_booklet_for_one_vehicle_holds_no_more_than_its_own() -> None:
    """A step, and a thing of the machine, that is for other vehicles is not there."""
    equipment = """\
features:
  brake: {name: parking brake, tell: Look behind the wheel., values: {drum: drum brake, disc: disc brake}}
items:
  drop-box: {name: drop box, hazards: [hot], when: {brake: disc}}
"""
    procedure = """\
sections:
  - title: Warm
    steps:
      - step: Heat the [drop-box].
        when: {brake: disc}
        do: [{heat: {what: drop-box, to: warm, with: wrench}}]
"""
    library = library_of(overlay([("equipment", equipment), ("procedure", procedure)]).files)
    procedures = list(library.procedures.values())
    assert {"heated", "danger"} <= held(library, procedures, {}) & held(library, procedures, {"brake": "disc"})
    assert not {"heated", "danger"} & held(library, procedures, {"brake": "drum"})
