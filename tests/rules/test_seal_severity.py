"""How grave it is that a seal is not renewed: an error for what is crushed once, a warning for the rest."""

from __future__ import annotations

from authoring.diagnostics.diagnostic import Severity
from tests.rules.overlay import findings, overlay

EQUIPMENT = """items:
  drop-box: {name: drop box}
  lid: {name: lid, seals-with: [plug-ring, gasket]}
"""
STOCK = """parts:
  plug-ring: {name: sealing ring, number: FL-P-014, one-time: true}
  gasket: {name: gasket, number: FL-P-016}
"""
PROCEDURE = """sections:
  - title: Lid
    steps:
      - do: [{remove: lid}]
      - do: [{fit: lid}]
"""


def test_a_part_for_one_time_is_an_error_and_any_other_a_warning() -> None:
    """Each of two seals that are not renewed is told with its own severity."""
    files = overlay([("equipment", EQUIPMENT), ("stock", STOCK), ("procedure", PROCEDURE)]).files
    told = {one.message: one.severity for one in findings(files) if one.rule == "seal-not-renewed"}
    begin = '"lid" goes on again, and "'
    end = '", which seals it, was not renewed since it came off.'
    assert told == {f"{begin}plug-ring{end}": Severity.ERROR, f"{begin}gasket{end}": Severity.WARNING}
