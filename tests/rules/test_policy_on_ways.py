"""The shop's policy where a way leads back, or through another procedure."""

from __future__ import annotations

import pytest

from authoring.pipeline import check
from tests.rules.overlay import overlay
from tests.rules.test_policy import EQUIPMENT, SHOP

GOING_BACK = """\
hazards: none
values:
  cool: {name: temperature of the exhaust, value: at most 40 °C, source: plate, at: line 9}
sections:
  - title: Wipe
    steps:
      - step: Measure the [exhaust].
        do:
          - measure: {what: exhaust, value: cool, outcomes: [{found: Cool., then: go-on}, {found: Hot., then: stop}]}
        safety: [hot-exhaust]
        with: [gauntlets]
      - id: again
        step: Clean the [exhaust].
        do: [{clean: exhaust}]
      - do: [{run: engine}]
      - step: Clean the [drop-box].
        do:
          - clean: drop-box
          - inspect:
              what: drop-box
              outcomes:
                - {found: It is dry., then: go-on}
                - {found: It drips., then: go-to, to: again, at-most: 2, else: Ask the workshop lead.}
      - do: [{stop: engine}]
"""
ENGINE = EQUIPMENT + "  engine: {name: engine}\n"


def unmet_at(procedure: str, other: str = "") -> list[str]:
    """Return what is found to be unmet where there is an engine, by the step's text."""
    files = [("shop", SHOP), ("equipment", ENGINE), ("procedure", procedure)]
    told = check(overlay([*files, *([("other", other)] if other else [])]).files, []).findings
    lines = overlay(files).files["procedure.yaml"].decode().splitlines()
    return [lines[one.span.line - 1].strip() for one in told if one.rule == "policy-unmet"]


def test_a_way_back_is_asked_again() -> None:
    """What was cool in the first round is hot in the second, once the engine has run between the two."""
    assert unmet_at(GOING_BACK) == ["do: [{clean: exhaust}]"]
    assert unmet_at(GOING_BACK.replace("go-to, to: again, at-most: 2, else: Ask the workshop lead.", "stop")) == []
    assert unmet_at(GOING_BACK.replace("[{run: engine}]", "[{mark: drop-box}]")) == []


WARMING = """\
procedure: FL-120
title: Warm the engine up
equipment: hob
job: Dirt hides a leak.
audience: Apprentice in the second year, under a technician.
persons: 1
time: 10 min
conditions: none
hazards: none
sections:
  - title: Run
    steps:
      - do: [{run: engine}]
      - do: [{stop: engine}]
trial: none
revisions:
  - {revision: A, date: 2026-03-14, author: mara, approver: tobi, reason: First issue.}
"""


@pytest.mark.parametrize(
    "between",
    [
        pytest.param("      - do: [{carry-out: FL-120}]\n        step: Carry out [FL-120].\n", id="carried out"),
        pytest.param(
            "      - step: Look at the [drop-box].\n"
            "        do: [{inspect: {what: drop-box, outcomes: [{found: Dry., then: go-on}, "
            "{found: Wet., then: do, to: FL-120}]}}]\n",
            id="led to by an outcome",
        ),
    ],
)
def test_what_another_procedure_leaves_behind_counts(between: str) -> None:
    """An engine that ran in what is carried out has warmed the exhaust; one that did not run leaves it cool."""
    begin, end = GOING_BACK.split("      - id: again\n")
    procedure = begin + between + "      - id: again\n" + end.split("      - do: [{run")[0]
    assert unmet_at(procedure, WARMING) == ["do: [{clean: exhaust}]"]
