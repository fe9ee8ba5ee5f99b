"""A small library with conditions at several heights, and for whom its findings hold."""

from __future__ import annotations

from authoring.pipeline import check
from tests.rules.overlay import overlay

EQUIPMENT = """\
features:
  brake: {name: parking brake, tell: Look behind the rear wheel., values: {drum: drum brake, disc: disc brake}}
  axle: {name: axle, tell: Read the plate., values: {narrow: narrow axle, middle: middle axle, wide: wide axle}}
"""

DISC, DRUM = "brake: disc", "brake: drum"
BOTH = "brake: [drum, disc]"


def told(rule: str, *blocks: tuple[str, str]) -> list[str]:
    """Return for which vehicles each finding of a rule holds, in the order of the report."""
    equipment = () if any(kind == "equipment" for kind, _ in blocks) else (("equipment", EQUIPMENT),)
    checked = check(overlay([*equipment, *blocks]).files, [])
    return [one.fitments for one in checked.findings if one.rule == rule]


def stepped(covers: str = "", section: str = "", step: str = "") -> str:
    """Return a procedure whose one tip holds a caution, below conditions at three heights."""
    heights = zip(("covers", "    when", "        when"), (covers, section, step), strict=True)
    top, around, own = (f"{key}: {{{when}}}\n" if when else "" for key, when in heights)
    return f"""\
{top}sections:
  - title: Clean
{around}    steps:
      - do: [{{clean: drop-box}}]
{own}        tip: Careful! It is hot.
"""
