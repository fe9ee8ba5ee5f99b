"""The drawings of a booklet whose library is the sound base with a few keys replaced."""

from __future__ import annotations

from collections.abc import Mapping

from authoring.booklet.markup import said
from authoring.booklet.step_parts import Drawing, Step, StepPart, TorqueCallout
from authoring.diagnostics.diagnostic import Severity
from authoring.pipeline import check, compose
from tests.rules.overlay import overlay

READING = frozenset({"unknown-key", "missing-key", "wrong-type", "wrong-value", "bad-quantity", "unknown-name"})
BOLTS = """\
fasteners:
  level-plug: {name: level plug, count: 1, thread: M18 x 1.5, on: drop-box,
    torque: {value: 42 ± 4 N·m, source: plate, at: line 4}}
"""
TIGHTEN = """\
sections:
  - title: Close
    steps:
      - step: Tighten it.
        do:
          - tighten: %s
"""


def parts(selection: Mapping[str, str], **files: str) -> list[StepPart]:
    """Return every part of every step; what keeps a library from being printed is a fault of the test."""
    checked = check(overlay(list(files.items())).files, [])
    broken = [one for one in checked.findings if one.severity is Severity.ERROR and one.rule in READING]
    assert broken == []
    book = compose(checked, "FL-110", selection)
    steps = [block for chapter in book.chapters for block in chapter.blocks if isinstance(block, Step)]
    return [part for step in steps for part in step.parts]


def drawings(selection: Mapping[str, str] | None = None, **files: str) -> list[Drawing]:
    """Return the drawings of the booklet whose equipment, stock and procedure have these keys."""
    return [one for one in parts(selection or {}, **files) if isinstance(one, Drawing)]


def group(name: str, count: int, more: str) -> str:
    """Return a group of bolts of M8 as a line of the equipment file."""
    torque = "torque: {value: 22 ± 2 N·m, source: plate, at: line 5}"
    return f"  {name}: {{name: {name.replace('-', ' ')}, count: {count}, thread: M8, on: drop-box, {torque}, {more}}}\n"


def tightened(*groups: str, what: str = "lid-bolts") -> list[Drawing]:
    """Return the drawings of a step that tightens some groups."""
    return drawings(equipment=BOLTS + "".join(groups), procedure=TIGHTEN % what)


def order_line(count: int, more: str) -> str:
    """Return what the torque of a group of lid bolts says under "Order"."""
    found = parts({}, equipment=BOLTS + group("lid-bolts", count, more), procedure=TIGHTEN % "lid-bolts")
    lines = [text for one in found if isinstance(one, TorqueCallout) for label, text in one.lines if label == "Order"]
    return " / ".join(said(text).replace("\u00a0", " ") for text in lines)
