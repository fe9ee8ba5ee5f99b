"""Rules over libraries that no author meant: examples of different rules laid over one another."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from authoring.rules.rule import all_rules
from tests.rules.overlay import FENCE, findings, overlay
from tests.rules.test_rules import pages

BLOCKS = sorted(
    {(match[1], match[2]) for rule in all_rules().values() for page in pages(rule) for match in FENCE.finditer(page)}
)


@given(st.lists(st.sampled_from(BLOCKS), min_size=2, max_size=4))
@settings(max_examples=200)
def test_no_mixture_of_examples_makes_a_rule_raise(blocks: list[tuple[str, str]]) -> None:
    """Whatever a library holds, every finding is a sentence at a place inside one of its files."""
    example = overlay(blocks)
    for found in findings(example.files):
        assert found.message.strip()
        assert found.span.file in {*example.files, ""}
        assert found.span.line >= 1
