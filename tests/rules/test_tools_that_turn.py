"""A tool that is missing is a warning; the tool of other fasteners is an error."""

from __future__ import annotations

import pytest

from authoring.diagnostics.diagnostic import Severity
from tests.rules.overlay import findings, overlay

EQUIPMENT = """\
items:
  drop-box: {name: drop box}
fasteners:
  level-plug: {name: level plug, count: 1, thread: M18, fills: [box-oil], turned-with: [spanner], tightened: Fast.}
  stop-screw: {name: stop screw, count: 1, thread: M8 x 1.25, on: drop-box, turned-with: [key], tightened: Fast.}
"""
STOCK = """\
tools:
  spanner: {name: 27 mm ring spanner}
  key: {name: hexagon key}
  tray: {name: parts tray}
"""


@pytest.mark.parametrize(
    ("turned", "listed", "told"),
    [
        ("level-plug", "tray", {"level-plug": Severity.WARNING}),
        ("level-plug", "key", {"level-plug": Severity.ERROR}),
        ("level-plug", "key, spanner", {}),
        ("level-plug, stop-screw", "key", {"level-plug": Severity.WARNING}),
        ("level-plug, stop-screw", "tray", {"level-plug": Severity.WARNING, "stop-screw": Severity.WARNING}),
    ],
)
def test_the_tool_of_other_fasteners_is_an_error(turned: str, listed: str, told: dict[str, Severity]) -> None:
    """It is one only where the step turns none of those."""
    named = " and the ".join(f"[{name}]" for name in turned.split(", "))
    step = f"- step: Tighten the {named}.\n        with: [{listed}]\n        do: [{{tighten: [{turned}]}}]\n"
    procedure = f"sections:\n  - title: Tighten\n    steps:\n      {step}"
    found = findings(overlay([("equipment", EQUIPMENT), ("stock", STOCK), ("procedure", procedure)]).files)
    unfit = [one for one in found if one.rule == "tool-unfit"]
    assert {one.message.split('"')[1]: one.severity for one in unfit} == told
