"""Write a library whose one procedure is as large as they get: 40 steps, 15 figures, 60 KB of YAML.

    python -m tests.bench.make_library FOLDER

The gear train of the Sorrel site loader is our own invention, and so is every value of it.
It has nine stages alike; each is opened, measured, closed and tightened.
"""

from __future__ import annotations

import math
import sys
from pathlib import Path
from string import Template

from tests.bench import stage_texts

NUMBER = "FL-900"
STAGES = ("first", "second", "third", "fourth", "fifth", "sixth", "seventh", "eighth", "ninth")
DRAWN_INSIDE = STAGES[:6]
"""The stages whose gear has a figure of its own, beside that of the cover that every stage has."""

BOLTS = 6

SHOP = """\
shop: Fennel Lane Plant Workshop
signal-words: ansi
units:
  torque: [N·m, lbf·ft]
  length: [mm, in]
people:
  orla: {name: Orla Penhale, role: senior technician, may: [write]}
  devan: {name: Devan Marsh, role: workshop lead, may: [write, approve]}
emergency:
  - Call the first-aider from the telephone at the roller door.
retention: In the job folder of the machine, until it is sold.
safety:
  rolling:
    harm: person
    severity: serious
    likelihood: could
    hazard: The parking brake holds nothing while a stage of the train is open.
    consequence: The loader rolls and crushes you against the bay wall.
    avoidance: Leave the [chocks] in place until the battery is back on.
    sign: crushing
"""

STOCK_HEAD = """\
stock: Fennel Lane stores
tools:
  chocks: {name: wheel chocks, place: rack beside the roller door}
  ratchet: {name: ratchet}
  socket-13: {name: 13 mm socket}
  parts-tray: {name: parts tray}
  dial-gauge: {name: dial gauge, place: measuring drawer}
  torque-wrench: {name: torque wrench, place: "cabinet 1, upper drawer"}
consumables:
  rag: {name: lint-free rag, disposal: lidded bin for oily waste, take: two}
parts:
"""

EQUIPMENT_HEAD = """\
equipment: sorrel
name: Sorrel site loader
sources:
  plate-notes: {title: "Sorrel site loader, notes to the data plate", edition: "issue 4, 2021", kind: maker}
"""
ITEM_HEAD = """\
items:
  engine: {name: engine}
  wheels: {name: rear wheels}
  battery-isolator: {name: battery isolator, place: behind the left footboard}
"""

PROCEDURE_HEAD = f"""\
procedure: {NUMBER}
title: Measure the gear train
equipment: sorrel
job: >-
  The gears of the train wear one by one, and a worn gear breaks the next one.
  Do this job when the train whines, and at every fourth service.
audience: Technician, or apprentice in the third year with a technician at the loader.
persons: 1
time: 300 min
conditions:
  - The loader stands empty on a level floor.
  - The gear train is cool enough to hold a hand on.
hazards: [rolling]
"""
PREPARE = """\
sections:
  - title: Prepare
    steps:
      - step: Stop the [engine] and turn off the [battery-isolator].
        do:
          - stop: engine
          - isolate: battery-isolator
        why: A starter that turns by mistake turns the whole train with it.
      - step: Chock the [wheels] with the [chocks].
        safety: [rolling]
        with: [chocks]
        do:
          - support: wheels
      - step: Clean the side of the train around the [first-cover] with the [rag].
        with: [rag]
        do:
          - clean: first-cover
        tip: Wipe downwards, and turn the [rag] as soon as it is grey.
"""
CLOSE = """\
  - title: Close
    steps:
      - step: Release the [wheels] and switch on the [battery-isolator].
        safety: [rolling]
        with: [chocks]
        do:
          - release: wheels
          - restore: battery-isolator
trial: none
revisions:
  - {revision: A, date: 2026-09-14, author: orla, approver: devan, reason: First issue.}
"""


def make_library(folder: Path) -> Path:
    """Write the library into an empty or missing folder, and return the file of its one procedure."""
    (folder / "figures").mkdir(parents=True, exist_ok=True)
    for stage in STAGES:
        _write(folder / "figures" / f"{stage}-outside.svg", _drawing(teeth=0))
    for stage in DRAWN_INSIDE:
        _write(folder / "figures" / f"{stage}-inside.svg", _drawing(teeth=60))
    _write(folder / "shop.yaml", SHOP)
    _write(folder / "stock.yaml", STOCK_HEAD + _each(stage_texts.STOCK_STAGE))
    equipment = EQUIPMENT_HEAD + ITEM_HEAD + _each(stage_texts.ITEM) + "fasteners:\n" + _each(stage_texts.FASTENER)
    _write(folder / "sorrel.yaml", equipment)
    return _write(folder / f"{NUMBER}.yaml", _procedure())


def _procedure() -> str:
    parts = [PROCEDURE_HEAD, "values:\n", _each(stage_texts.VALUE), "safety:\n", _each(stage_texts.MESSAGE)]
    parts += ["figures:\n", _each(stage_texts.COVER_FIGURE), _each(stage_texts.GEAR_FIGURE, DRAWN_INSIDE)]
    return "".join([*parts, PREPARE, _each(stage_texts.SECTION), CLOSE])


def _each(template: Template, stages: tuple[str, ...] = STAGES) -> str:
    return "".join(
        template.substitute(
            stage=stage,
            place=STAGES.index(stage) + 1,
            bolts=BOLTS,
            inside=f"        figures: [{stage}-inside]\n" if stage in DRAWN_INSIDE else "",
        )
        for stage in stages
    )


def _drawing(*, teeth: int) -> str:
    """Return a round cover with its bolts, or a gear with this many teeth, as SVG."""
    count, radius = (teeth, 92.0) if teeth else (BOLTS, 80.0)
    size = 3 if teeth else 9
    marks = [
        f'<circle cx="{100 + radius * math.sin(turn):.1f}" cy="{100 - radius * math.cos(turn):.1f}" r="{size}"/>'
        for turn in (2 * math.pi * place / count for place in range(count))
    ]
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" width="200" height="200" viewBox="0 0 200 200" fill="none" '
        f'stroke="black">\n<circle cx="100" cy="100" r="90"/>\n{chr(10).join(marks)}\n</svg>\n'
    )


def _write(path: Path, text: str) -> Path:
    path.write_text(text, encoding="utf-8")
    return path


if __name__ == "__main__":
    sys.stdout.write(f"{make_library(Path(sys.argv[1]))}\n")
