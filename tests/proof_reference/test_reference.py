"""The reference itself, held against verdicts that were found by thinking."""

from __future__ import annotations

import re

import pytest

from tests.proof_reference.cases import CASES, EQUIPMENT
from tests.proof_reference.cases_of_ways import CASES_OF_WAYS
from tests.proof_reference.reference import RULES, verdicts

_HEAD = """\
procedure: {number}
title: Do it
equipment: hob
options:
  paint: {{name: paint, question: Is it painted?, decided-by: customer, values: {{wanted: paint, plain: none}}}}
choices:
  ring:
    {{name: ring, question: How wide?, if-wrong: It leaks., parts: [{{part: a, tell: A.}}, {{part: b, tell: B.}}]}}
"""

_ALL = {**CASES, **CASES_OF_WAYS}

_BRAKES = ("drum", "disc")


def _files(texts: tuple[str, ...]) -> dict[str, bytes]:
    files = {"equipment.yaml": EQUIPMENT.encode()}
    for number, text in zip(("RW-100", "RW-200", "RW-300"), texts, strict=False):
        body = text if "sections:" in text else "\nsections:" + text
        files[f"{number}.yaml"] = (_HEAD.format(number=number) + body).encode()
    return files


def _marked(files: dict[str, bytes]) -> set[tuple[str, str, int, tuple[str, ...]]]:
    """Return each marked fault: rule, file, line, brakes."""
    found = set()
    for file, content in files.items():
        for line, text in enumerate(content.decode().splitlines(), 1):
            words = re.findall(r"[\w-]+", text.partition("#!")[2])
            brakes = tuple(one for one in _BRAKES if one in words) or _BRAKES
            found |= {(rule, file, line, brakes) for rule in words if rule not in _BRAKES}
    return found


@pytest.mark.parametrize("name", _ALL)
def test_the_reference_finds_what_a_technician_finds(name: str) -> None:
    """Each marked fault is found at its step and for its machines, and nothing else."""
    files = _files(_ALL[name])
    found: dict[tuple[str, str, int], set[str]] = {}
    for one in verdicts(files):
        brakes = found.setdefault((one.fault.rule, one.file, one.fault.at.top), set())
        brakes |= {value for fitment in one.fitments for _, value in fitment}
    told = {(*where, tuple(one for one in _BRAKES if one in brakes)) for where, brakes in found.items()}
    assert told == _marked(files)


def test_every_rule_is_in_some_case() -> None:
    """No rule of the reference is left without an example of its own."""
    marked = {rule for texts in _ALL.values() for rule, *_ in _marked(_files(texts))}
    assert marked == set(RULES)
