"""Which machines and ways a finding about the states of things names."""

from __future__ import annotations

import pytest

from tests.rules.overlay import findings, overlay

DRUM = " for a machine with parking brake: drum brake."

EQUIPMENT = """\
items:
  drop-box: {name: drop box}
  cover: {name: cover, mass: {value: 40 kg, source: plate, at: line 9}}
  lever: {name: lever, positions: {free: free, braked: braked}}
fasteners:
  level-plug: {name: level plug, count: 1, thread: M18 x 1.5, on: drop-box, tightened: By hand.}
  bolts: {name: cover bolts, count: 4, thread: M8 x 1.25, on: cover, tightened: By hand.}
"""

TOLD = {
    "unheld-when-freed": ("persons: 1", ["{do: [{support: cover}], when: {brake: disc}}", "{do: [{remove: bolts}]}"]),
    "fastened-to-nothing": (
        "needs: {bolts: removed}",
        [
            "{do: [{remove: cover}]}",
            "{do: [{fit: cover}], when: {brake: disc}}",
            "{do: [{start: bolts}]}",
            "{do: [{tighten: bolts}]}",
        ],
    ),
    "discarded-while-on": ("persons: 1", ["{do: [{remove: bolts}], when: {brake: disc}}", "{do: [{discard: bolts}]}"]),
    "left-otherwise": ("needs: {lever: free}", ["{do: [{set: {what: lever, position: braked}}], when: DRUM}"]),
    "leaves-contradicted": (
        "leaves: {lever: free}",
        ["{do: [{set: {what: lever, position: free}}]}", "{do: [{set: {what: lever, position: braked}}], when: DRUM}"],
    ),
}


@pytest.mark.parametrize("rule", TOLD)
def test_only_the_machines_concerned_are_named(rule: str) -> None:
    """What happens on machines with the drum brake alone is told of these alone, in words and as data."""
    top, steps = TOLD[rule]
    lines = "\n".join(f"      - {step.replace('DRUM', '{brake: drum}')}" for step in steps)
    procedure = f"{top}\nsections:\n  - title: Work\n    steps:\n{lines}\n"
    found = findings(overlay([("equipment", EQUIPMENT), ("procedure", procedure)]).files)
    mine = [one for one in found if one.rule == rule]
    assert [one.message[-len(DRUM) :] for one in mine] == [DRUM]
    assert [one.fitments for one in mine] == ["parking brake: drum brake"]
