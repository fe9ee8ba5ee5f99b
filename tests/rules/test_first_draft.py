"""What the check says to somebody who writes a job for the first time, from the guide alone.

The library below `first_draft/` is such a draft, of a winch of our invention, left as it was written.
"""

from __future__ import annotations

from pathlib import Path

from authoring.pipeline import check

DRAFT = Path(__file__).parent / "first_draft"
EXPECTED = (DRAFT / "findings.txt").read_text(encoding="utf-8").splitlines()


def test_a_first_draft_gets_these_findings() -> None:
    """Each line of the list is the place, severity and rule of a finding, in order, as a newcomer meets them."""
    files = {path.name: path.read_bytes() for path in sorted(DRAFT.glob("*.yaml"))}
    found = check(files, []).findings
    told = [f"{one.span.file}:{one.span.line} {one.severity.value} {one.rule}" for one in found]
    assert told == EXPECTED
