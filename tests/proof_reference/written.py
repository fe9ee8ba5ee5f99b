"""A random library as the text of its files: one line for each thing, a few lines for each step."""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from tests.proof_reference.machine import Machine

Group = dict[str, Any]

MAIN = "RW-100"
"""The number of the procedure that carries out the others."""

_SHOP = """\
shop: Fennel Lane Plant Workshop
units: {torque: [N·m], volume: [L], time: [min]}
people:
  mara: {name: Mara Quill, role: senior technician, may: [write]}
  tobi: {name: Tobias Renn, role: workshop lead, may: [write, approve]}
sources:
  bench-book: {title: Fennel Lane bench book, edition: "3, 2026", kind: shop}
retention: In the folder of the machine.
"""

_STOCK = """\
stock: Stores
parts:
  new-filter: {name: new filter, number: RW-P-1}
  new-gear: {name: new gear, number: RW-P-2}
  new-pump: {name: new pump, number: RW-P-3}
  thin-ring: {name: thin ring, number: RW-P-4}
  thick-ring: {name: thick ring, number: RW-P-5}
consumables:
  grease: {name: grease, take: a dab, disposal: oily-waste bin}
"""

_REVISIONS = [
    {"revision": "A", "date": "2026-03-14", "author": "mara", "approver": "tobi", "reason": "First issue."},
]


def library(machine: Machine, procedures: list[Group]) -> dict[str, bytes]:
    """Return the files of a library by name: shop, stock, equipment and each procedure under its number."""
    files = {"shop.yaml": _SHOP, "stock.yaml": _STOCK, "equipment.yaml": _equipment(machine)}
    files |= {file_of(one["procedure"]): procedure(one) for one in procedures}
    return {name: text.encode() for name, text in files.items()}


def file_of(number: str) -> str:
    """Return the name of the file that a procedure stands in."""
    return f"{number}.yaml"


def procedure(told: Group) -> str:
    """Return one procedure as YAML, each action on a line of its own."""
    lines = [f"{key}: {json.dumps(value)}" for key, value in told.items() if key != "sections"]
    lines += ["sections:"]
    for section in told["sections"]:
        lines += _listed("  ", section, "steps")
        for step in section["steps"]:
            lines += _step("      ", step)
    lines += [f"revisions: {json.dumps(_REVISIONS)}"]
    return "\n".join(lines) + "\n"


def _step(indent: str, step: Group) -> Iterator[str]:
    if "either" in step:
        yield from _listed(indent, step, "either")
        for method in step["either"]:
            yield from _step(indent + "    ", method)
    else:
        yield from _listed(indent, step, "do")
        for action in step["do"]:
            yield f"{indent}    - {json.dumps(action)}"


def _listed(indent: str, group: Group, last: str) -> Iterator[str]:
    """Yield an entry of a list whose key `last` holds a list that follows."""
    lines = [f"{key}: {json.dumps(value)}" for key, value in group.items() if key != last] + [f"{last}:"]
    for number, line in enumerate(lines):
        yield f"{indent}{'  ' if number else '- '}{line}"


def _equipment(machine: Machine) -> str:
    features = {
        name: {"name": name, "tell": "Look at it.", "values": {value: value for value in values}}
        for name, values in machine.features.items()
    }
    lines = ["equipment: hob", "name: Hob site dumper", "viewpoint: seen from the seat", "features:"]
    lines += [f"  {name}: {json.dumps(one)}" for name, one in features.items()]
    lines += [f"never: {json.dumps(machine.never)}"] if machine.never else []
    for heading, things in (
        ("items", machine.items),
        ("fasteners", machine.fasteners),
        ("fluids", machine.fluids),
    ):
        lines += [f"{heading}:"]
        lines += [f"  {name}: {json.dumps({'name': name.replace('-', ' '), **one})}" for name, one in things.items()]
    lines += ["values:", "  first-fill: {name: first fill, value: 1.2 L, source: bench-book, at: page 12}"]
    return "\n".join(lines) + "\n"
