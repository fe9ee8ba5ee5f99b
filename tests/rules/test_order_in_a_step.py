"""Which of two orders is told for certain."""

from __future__ import annotations

import pytest

from authoring.diagnostics.diagnostic import Severity
from tests.rules.overlay import findings, overlay


@pytest.mark.parametrize(
    ("text", "severities"),
    [
        ("Clean the [drop-box] and mark it.", [Severity.WARNING]),
        ("Clean the [drop-box], then mark it.", [Severity.ERROR]),
        ("Mark the [drop-box], then clean it.", []),
    ],
)
def test_then_leaves_no_doubt(text: str, severities: list[Severity]) -> None:
    """A step whose text says "then" is wrong for certain where its actions stand the other way round."""
    step = f"- step: {text}\n        do: [{{mark: drop-box}}, {{clean: drop-box}}]\n"
    procedure = f"sections:\n  - title: Work\n    steps:\n      {step}"
    found = findings(overlay([("procedure", procedure)]).files)
    assert [one.severity for one in found if one.rule == "actions-out-of-order"] == severities
