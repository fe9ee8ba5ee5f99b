from __future__ import annotations

import re

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.rules.overlay import base_files, findings
from tests.rules.test_rules import CASES

FILES = base_files()
WORDS = sorted(
    {
        *re.findall(r"\[?[\w.·°-]+\]?", "\n".join(content.decode() for content in FILES.values())),
        *re.findall(r"\[?[\w.·°-]+\]?", (CASES / "unknown-name.md").read_text(encoding="utf-8")),
    }
)

# Where, counted in words of the library, and what is put there.
changes = st.lists(st.tuples(st.integers(0, 400), st.sampled_from(WORDS)), min_size=1, max_size=4)
# Which lines are left out.
gaps = st.lists(st.integers(0, 90), max_size=3)


def changed(text: str, swaps: dict[int, str], without: set[int]) -> str:
    """Return a text with some of its words swapped and some of its lines left out."""
    lines = [line for place, line in enumerate(text.split("\n")) if place not in without]
    places = iter(range(len(text)))
    return re.sub(r"\[?[\w.·°-]+\]?", lambda found: swaps.get(next(places), found[0]), "\n".join(lines))


@given(st.sampled_from(sorted(FILES)), changes, gaps)
@settings(max_examples=300)
def test_no_library_makes_a_rule_fail(file: str, swaps: list[tuple[int, str]], without: list[int]) -> None:
    """Whatever words stand in a library, or are missing from it, each rule tells its findings and none breaks."""
    files = {**FILES, file: changed(FILES[file].decode(), dict(swaps), set(without)).encode()}
    for found in findings(files):
        lines = files.get(found.span.file, b"").decode().split("\n")
        assert 1 <= found.span.line <= len(lines)
        assert found.message


def test_the_changes_reach_the_rules() -> None:
    """One word put elsewhere is enough to make a finding of a rule, so that the test above looks at something."""
    text = FILES["procedure.yaml"].decode()
    place = re.findall(r"\[?[\w.·°-]+\]?", text).index("[level-plug]")
    files = {**FILES, "procedure.yaml": changed(text, {place: "[level]"}, set()).encode()}
    assert {found.rule for found in findings(files)} == {"unknown-name"}
