from __future__ import annotations

import pytest

from authoring.checking.known import State
from authoring.checking.loader import TangledError
from authoring.pipeline import check
from authoring.rules.rule import Rule
from tests.checking.libraries import again
from tests.rules.overlay import Example, base_files
from tests.rules.test_rules import each_example

_DRAWING = b'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30"><circle cx="20" cy="15" r="9"/></svg>'

_ALIKE = base_files()["procedure.yaml"]
"""A procedure that uses what the sound library states, so that an example is not alone in it."""

TANGLED = frozenset({"duplicate-name"})
"""The rules on whose pages two files have one name, which only a check of the whole library does justice to."""


@pytest.mark.parametrize(("rule", "example"), [*each_example("Wrong"), *each_example("Right")])
def test_each_procedure_apart_says_what_the_whole_says(rule: Rule, example: Example) -> None:
    """The examples of all rules, between a procedure before them and one behind them, are judged alike either way."""
    around = {"a.yaml": _ALIKE.replace(b"FL-110", b"FL-190"), "z.yaml": _ALIKE.replace(b"FL-110", b"FL-195")}
    pictures = {"drop-box.svg": _DRAWING, "broken.png": b"no picture at all"}
    files = dict(sorted({**example.files, **around, **pictures}.items()))
    try:
        outcome, _ = again(files, State())
    except TangledError:
        assert rule.id in TANGLED
        return
    whole = check(files, [])
    assert outcome.findings == whole.findings
    assert [one for _, one in outcome.allowed] == [one for _, one in whole.allowed]
    assert outcome.procedures == len(whole.library.procedures)
