"""What the checks are worth: single faults in the demo library, a few of each kind, and how many are told of.

`./run seeded` judges all of them (requirement N19); here a sample holds that no kind is caught less than it was.
"""

from __future__ import annotations

import pytest
import yaml
from msgspec.structs import replace

from authoring.diagnostics.diagnostic import Severity
from authoring.pipeline import check
from authoring.source.document import Document
from tests.seeded.demo import Demo
from tests.seeded.every import KINDS
from tests.seeded.judge import Judge, Outcome
from tests.seeded.run import judge_sample
from tests.seeded.sample import sample
from tests.seeded.tally import kept, tallies
from tests.seeded.variant import Variant

PARTS = 2


@pytest.fixture(scope="module")
def demo() -> Demo:
    """Give the demo library as it stands."""
    return Demo()


def test_the_unchanged_library_has_no_finding(demo: Demo) -> None:
    """Whatever is told of a variant is told of its fault."""
    assert [one for one in Judge(demo).baseline if one[2] is not Severity.NOTE] == []


def test_every_kind_has_a_variant_and_its_numbers_are_kept(demo: Demo) -> None:
    """A kind that the demo cannot show proves nothing; one whose numbers nobody wrote down is not held."""
    assert [kind for kind, make in KINDS.items() if next(iter(make(demo)), None) is None] == []
    numbers = kept()
    assert list(numbers.judged) == list(numbers.sample) == list(KINDS)


@pytest.mark.parametrize("part", range(PARTS))
def test_no_kind_is_caught_less_than_it_was(part: int) -> None:
    """The share of the sample that is told of is what was written down, or more."""
    found = judge_sample(part, PARTS)
    then = kept().sample
    for kind, now in tallies((one.kind, one.verdict) for one in found).items():
        missed = [one for one in found if one.kind == kind and one.verdict.outcome is Outcome.MISSED]
        assert now.caught * then[kind].total >= then[kind].caught * now.total, missed


WRITTEN_OUT = ["drop a tighten", "turn a when", "change a unit", "drop a message of a step", "fit the old one"]


@pytest.mark.parametrize("kind", WRITTEN_OUT)
def test_a_variant_is_judged_as_its_file_would_be(demo: Demo, kind: str) -> None:
    """Changing data in memory finds what the whole program finds in a file with that data written into it."""
    judge = Judge(demo)
    for variant in sample(kind, KINDS[kind](demo), demo)[:1]:
        verdict = judge.verdict(variant, compare=False)
        told = _told_of_files(demo, variant)
        assert (verdict.outcome is Outcome.ERROR) == (Severity.ERROR in {severity for _, severity in told}), told
        assert set(verdict.by) <= {rule for rule, _ in told}, told


def _told_of_files(demo: Demo, variant: Variant) -> set[tuple[str, Severity]]:
    document = demo.document(variant.file)
    changed = replace(document, data=variant.forms[0](document.data))
    files = {one.file: _written(changed if one.file == changed.file else one) for one in demo.documents}
    files |= demo.pictures
    return {(one.rule, one.severity) for one in check(files, []).findings}


def _written(document: Document) -> bytes:
    return yaml.safe_dump(document.data, allow_unicode=True, sort_keys=False, width=1000).encode()
