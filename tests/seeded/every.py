"""Every kind of fault, in the order of the table."""

from __future__ import annotations

from collections.abc import Iterator

from tests.seeded.demo import Demo
from tests.seeded.kinds import (
    checkpoints,
    conditions,
    left_out_actions,
    machine,
    manner,
    names,
    order,
    quantities,
    safety,
    sides,
    vehicles,
)
from tests.seeded.variant import Kind, Variant

_FILES = (order, left_out_actions, conditions, checkpoints, safety, names, sides, vehicles, quantities, machine, manner)

KINDS: dict[str, Kind] = {name: kind for file in _FILES for name, kind in file.KINDS.items()}
assert len(KINDS) == sum(len(file.KINDS) for file in _FILES), "two kinds have one name"


def variants(demo: Demo) -> Iterator[tuple[str, Variant]]:
    """Yield every variant of the demo library with the name of its kind."""
    for name, kind in KINDS.items():
        for variant in kind(demo):
            yield name, variant
