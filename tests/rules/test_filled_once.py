"""A filling that is too much in two ways is told by one rule for each machine."""

from __future__ import annotations

from collections.abc import Sequence

import pytest

from tests.rules.overlay import findings, overlay

RULES = {"filled-when-full", "fills-do-not-add-up", "fluids-mixed"}
BOX = """\
items:
  drop-box: {name: drop box}
fluids:
  box-oil:
    name: drop-box oil
    kind: gear oil
    in: drop-box
    capacity: {value: 1.20 ± 0.05 L, source: bench-book, at: page 12}
    disposal: used-oil tank
  frost-oil:
    name: frost oil
    kind: thin gear oil
    in: drop-box
    disposal: used-oil tank
    when: {brake: disc}
"""
REFILL = "values:\n  refill: {name: refill amount, value: 1.1 L, source: bench-book, at: page 9}\n"
DRAIN = "do: [{drain: box-oil}]"
POUR = "do: [{fill: {what: box-oil, amount: refill}}]"
LEVEL = "do: [{top-up: box-oil}]"
DISC = "parking brake: disc brake"
DRUM = "parking brake: drum brake"


def told(steps: Sequence[str]) -> list[tuple[str, str]]:
    """Return the rules that speak of the last of these steps, and for which machines."""
    lines = "".join(f"      - {{{step}}}\n" for step in steps)
    example = overlay([("equipment", BOX), ("procedure", f"{REFILL}sections:\n  - title: Fill\n    steps:\n{lines}")])
    last = example.files["procedure.yaml"].decode().count("\n")
    found = [one for one in findings(example.files) if one.rule in RULES and one.span.line == last]
    return sorted((one.rule, one.fitments) for one in found)


@pytest.mark.parametrize(
    ("steps", "expected"),
    [
        ([DRAIN, POUR, POUR], [("fills-do-not-add-up", "")]),
        ([DRAIN, POUR, LEVEL, POUR], [("filled-when-full", "")]),
        (
            [DRAIN, POUR, f"when: {{brake: disc}}, {LEVEL}", POUR],
            [("filled-when-full", DISC), ("fills-do-not-add-up", DRUM)],
        ),
        ([POUR], [("filled-when-full", DRUM), ("fluids-mixed", DISC)]),
        ([POUR, POUR], [("filled-when-full", DRUM), ("fills-do-not-add-up", DISC)]),
        (["do: [{drain: frost-oil}]", POUR, POUR], [("fills-do-not-add-up", "")]),
    ],
)
def test_each_machine_hears_it_once(steps: Sequence[str], expected: list[tuple[str, str]]) -> None:
    """What is full is not summed up as well, what is of another kind is not full, and no machine is left out."""
    assert told(steps) == expected
